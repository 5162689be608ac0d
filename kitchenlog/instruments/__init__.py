"""What measures: the sheet of each instrument."""
