"""Use cases, one module for each job of a person: all that joins store and calculation."""
