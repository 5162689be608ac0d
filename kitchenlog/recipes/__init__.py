"""Recipes in numbered versions: the sheet of each recipe."""
