"""The shelf page: kinds of parts and how many lie where."""
