"""Proving a planter: readings as entered or from files, verdicts, findings, and saving them."""
