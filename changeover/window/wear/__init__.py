"""The wear inspection: readings of parts by row, limits and findings."""
