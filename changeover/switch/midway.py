"""Where the work of a switch starts from once part of it is done and the plan has changed."""

from collections.abc import Iterable

from changeover.planter.entry import same_value
from changeover.planter.settings import Setting
from changeover.planter.setup import Cell, Setup, Value


def start_of(before: Setup, as_found: Setup, target: Setup, settings: Iterable[Setting]) -> Setup:
    """Return the setup from which each cell goes to its target.

    A cell that is at its target keeps what stood there ``before``, when the switch began or when
    work on it was last ticked off, so that work done stays on the list. A cell that is not goes
    from what is there now: what was ticked off for an earlier plan, or set right by hand, is
    what comes off next.
    """
    by_key = {setting.key: setting for setting in settings}
    moved: dict[Cell, Value | None] = {}
    for cell, wanted in target.values.items():
        setting, now = by_key.get(cell.setting), as_found.get(cell)
        if setting is None or setting.record_only or same_value(setting, now, wanted):
            continue
        if not same_value(setting, now, before.get(cell)):
            moved[cell] = now
    return before.with_values(moved) if moved else before
