"""What kinds of data an edit changed, so that each page decides whether to read again."""

from enum import StrEnum


class Changed(StrEnum):
    """One kind of data that pages show."""

    PLANTERS = "planters"
    SETTINGS = "settings"
    AS_FOUND = "as found"
    TARGET = "target"
    NEXT = "next"
    TICKS = "ticks"
    SHELF = "shelf"
    PARTS = "parts"
    LOTS = "lots"
    FIELDS = "fields"
    JOBS = "jobs"
    SETUPS = "setups"
    METERS = "meters"
    MANUAL = "manual"
    TIMES = "times"
    PROOFS = "proofs"
    PRICES = "prices"
    WEAR_LIMITS = "wear limits"
    APPRAISALS = "appraisals"
    CREW = "crew"
    SEASON = "season"
