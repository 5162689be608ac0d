"""Drills and the record of skill of one member."""
