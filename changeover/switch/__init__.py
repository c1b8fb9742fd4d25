"""From two setups and two lots to the work: difference, clean-out, tasks, timetable, season."""
