"""Pure calculation: no framework, clock, chance or machine. Each file has a twin in
frontend/src/calc with the same function names in the same order, but for the ..._tables, which
there are tables of constants, and export_tables, which writes the phone's tables."""
