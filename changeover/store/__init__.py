"""Tables, the unit of work, history and backup of one store."""
