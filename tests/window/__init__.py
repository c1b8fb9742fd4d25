"""Tests of the window, page by page, with invented planters and a desk kept in memory."""
