"""Changeover takes a planter set for one crop to a planter proven right for the next."""

__version__ = "0.1.0"
