"""Labels, lot pages and exports: what leaves the kitchen on paper."""
