"""The read API, and its description for other programs."""
