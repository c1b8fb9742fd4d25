"""Tuning vacuum from bench runs: fitted curves, table of levels, and advice."""
