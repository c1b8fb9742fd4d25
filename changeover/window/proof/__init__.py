"""The proof page and its kinds: bench, spacing, depth, drive, and what was taken before."""
