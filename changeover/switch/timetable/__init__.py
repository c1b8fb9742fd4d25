"""The crew timetable: a general solver of work with precedences, resources, states and runs."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from changeover.switch.timetable.solve import (
        Activity,
        Limits,
        Mode,
        Person,
        Progress,
        SearchStatus,
        Stint,
        Timetable,
        WhatIf,
        Work,
        timetable,
        walk_of,
        what_if,
    )

__all__ = [
    "Activity",
    "Limits",
    "Mode",
    "Person",
    "Progress",
    "SearchStatus",
    "Stint",
    "Timetable",
    "WhatIf",
    "Work",
    "timetable",
    "walk_of",
    "what_if",
]


def __getattr__(name: str) -> object:
    """Import the solver only when one of its names is asked for, which keeps start-up quick."""
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from changeover.switch.timetable import solve

    found: object = getattr(solve, name)
    return found
