"""The trade-in page: planters appraised, compared and reported."""
