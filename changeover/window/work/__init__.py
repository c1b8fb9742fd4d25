"""The work page: task cards, ticking off, kit, flush and signing off."""
