"""The planter as a value: machine, rows, groups, settings and the setup that holds them."""
