"""Lots and where they stand: lot sheets, and the tables stock is added up from."""
