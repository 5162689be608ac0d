"""A day at a stall: what was sold, brought back and taken."""
