"""The season page: the calendar of jobs by planter, and what stands beside it."""
