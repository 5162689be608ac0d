"""Kinds of entry, their bodies, parse-or-refuse, wire versions. Pure: no framework or clock."""
