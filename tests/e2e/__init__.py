"""Flows in a real browser, against the real processes of a server that can be killed."""
