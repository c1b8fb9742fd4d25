"""From readings at bench and in field to verdicts and what to do."""
