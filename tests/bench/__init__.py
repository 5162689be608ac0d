"""Speed, as ratios within one run: `make bench`. Nothing is a test here, and nothing mocked."""
