"""Everything that Qt draws; no rule of the trade."""
