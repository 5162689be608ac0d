"""Reads across fields for the person who reviews the record."""
