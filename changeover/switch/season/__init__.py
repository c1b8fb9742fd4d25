"""The season: jobs over several planters with change times that depend on their order."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from changeover.switch.season.solve import (
        YARD,
        Fixed,
        Limits,
        Order,
        Progress,
        Season,
        SeasonJob,
        SeasonPlan,
        SeasonPlanter,
        SeasonStatus,
        Slot,
        season_plan,
    )

__all__ = [
    "YARD",
    "Fixed",
    "Limits",
    "Order",
    "Progress",
    "Season",
    "SeasonJob",
    "SeasonPlan",
    "SeasonPlanter",
    "SeasonStatus",
    "Slot",
    "season_plan",
]


def __getattr__(name: str) -> object:
    """Import the solver only when one of its names is asked for, which keeps start-up quick."""
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from changeover.switch.season import solve

    found: object = getattr(solve, name)
    return found
