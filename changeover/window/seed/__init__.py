"""The seed page: next lot, field and job, and the proposal forming beside them."""
