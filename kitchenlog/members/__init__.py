"""Cooperatives, their members, roles, devices and join codes, and the door they come in by."""
