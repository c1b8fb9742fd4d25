"""Tests of the planter as a value."""
