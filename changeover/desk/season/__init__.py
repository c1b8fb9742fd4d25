"""The season at the desk: plan, lines to read, seed, parts, costs and fixed jobs."""
