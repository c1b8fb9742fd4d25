"""Records: saved setups, comparing any two, and the history of every change."""

from dataclasses import dataclass

from changeover.desk.history_units import in_units
from changeover.planter.setup import Setup
from changeover.quantities import Units
from changeover.store.opening import Store
from changeover.store.values import HistoryLine, SavedSetup, Side
from changeover.switch.difference import Difference, difference

__all__ = [
    "NOW",
    "Compared",
    "HistoryLine",
    "SavedSetup",
    "compare",
    "history",
    "setups",
]

NOW = "now"


@dataclass(frozen=True)
class Compared:
    """Two setups of one planter side by side, and the cells in which they differ."""

    one: Setup
    other: Setup
    difference: Difference


def setups(store: Store, planter: str) -> tuple[SavedSetup, ...]:
    """Return the saved setups of a planter, latest first, withdrawn ones left out."""
    with store.read() as work:
        return work.setups.of(planter)


def compare(store: Store, planter: str, one: str, other: str) -> Compared:
    """Compare two saved setups by name; ``now`` stands for the as-found setup.

    Raises Refusal for a name that the planter has no setup of.
    """
    with store.read() as work:
        machine = work.planters.get(planter)
        settings = work.settings.all()
        pair = [
            work.cells.read(planter, Side.AS_FOUND)
            if name == NOW
            else work.setups.get(planter, name).setup
            for name in (one, other)
        ]
    return Compared(pair[0], pair[1], difference(machine, settings, pair[0], pair[1]))


def history(
    store: Store, planter: str | None = None, limit: int = 500, units: Units = Units.US
) -> tuple[HistoryLine, ...]:
    """Return the latest changes, newest first, of one planter or (None) of the whole store.

    Quantities are shown in ``units``, whatever they were entered in.
    """
    with store.read() as work:
        return in_units(work.history.latest(planter, limit), work.settings.all(), units)
