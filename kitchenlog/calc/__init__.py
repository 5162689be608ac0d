"""Pure calculation: no framework, clock, chance or machine. Each file has a twin in
frontend/src/calc with the same function names in the same order."""
