"""The planter as drawn from behind, and the pages and forms that describe it."""
