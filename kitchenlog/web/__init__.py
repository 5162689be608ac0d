"""Serves the built app, its headers, the health page, and `manage.py serve`."""
