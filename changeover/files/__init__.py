"""Workbooks, comma-separated text, printed sheets and task data, written and read."""
