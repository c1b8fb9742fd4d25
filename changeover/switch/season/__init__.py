"""The season: jobs over several planters with change times that depend on their order."""
