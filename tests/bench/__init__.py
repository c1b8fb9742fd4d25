"""Benchmarks, printed as ratios from one run and never asserted: ``python -m tests.bench``."""
