"""What members practise: the sheet of each reader."""
