"""The crew timetable: a general solver of work with precedences, resources, states and runs."""
