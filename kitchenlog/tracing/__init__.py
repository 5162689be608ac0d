"""Where goods came from and went, across lots, batches, sources and recipients."""
