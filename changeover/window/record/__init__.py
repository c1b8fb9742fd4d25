"""The record page: saved setups, comparison of any two, and history."""
