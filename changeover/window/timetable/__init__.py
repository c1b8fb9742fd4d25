"""The crew's timetable: drawn by person, its lanes, and the crew's form."""
