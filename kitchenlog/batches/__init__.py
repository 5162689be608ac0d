"""One run of one recipe version: the sheet of each batch and the table to find batches."""
