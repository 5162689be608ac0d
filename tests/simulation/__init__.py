"""Phones, a server and a shaky network between them, replayed from one seed."""
