"""The kits of all planters with work, and a planter's own among them."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from changeover.desk.board import board_of
from changeover.desk.plan_switch import WorkView, view_of
from changeover.quantities import Units
from changeover.store.opening import Store
from changeover.store.proof_values import FindingState
from changeover.store.unit_of_work import UnitOfWork
from changeover.store.values import NextJob, Side
from changeover.switch.difference import difference
from changeover.switch.kit import kit_of
from changeover.switch.shared_kit import shared_kit
from changeover.switch.supply import PlannedSwitch, Supply, supply
from changeover.switch.tasks import Kit


def today_or(day: date | None) -> date:
    """Return a day, or that on the wall when none is given."""
    return day if day is not None else date.today()  # noqa: DTZ011 -- the calendar on the wall


def shared_work_view(
    store: Store, planter: str, units: Units = Units.US, today: date | None = None
) -> WorkView:
    """Return the work of a planter, its kit with what other planters' switches leave it.

    Raises Refusal when the store has no planter of that name.
    """
    with store.read() as work:
        view = view_of(work, board_of(work, planter, units, proposal=False))
        if not view.kit.lines:
            return view
        kits = planned_switches(work, today_or(today), {planter: view.kit})
        return with_shared_kit(view, supply(kits, work.shelf.all(), {}))


def with_shared_kit(view: WorkView, met: tuple[Supply, ...]) -> WorkView:
    """Return a view with its kit among those of other planters, from how all are met."""
    return replace(view, kit=shared_kit(view.kit, view.board.planter.name, met))


def planned_switches(
    work: UnitOfWork, today: date, kits: Mapping[str, Kit]
) -> tuple[PlannedSwitch, ...]:
    """Return the switch of every planter with one open or with a target set, with its kit.

    Its day is the first of its job, or today. ``kits`` are those known, by planter.
    """
    return tuple(
        PlannedSwitch(name, day_of(_job(work, name), today), made)
        for name in work.planters.names()
        if (made := kits[name] if name in kits else open_kit(work, name)) is not None
    )


def day_of(job: NextJob | None, today: date) -> date:
    """Return the day of a switch for a job: its first, not before today."""
    first = job.first_day if job is not None else None
    return max(today, first) if first is not None else today


def open_kit(work: UnitOfWork, planter: str) -> Kit | None:
    """Return what a planter still needs and releases; None without a target or a repair.

    It is read off the difference and the findings to work on alone: no work is planned for it,
    and the names of the parts and the shelf are left out.
    """
    target, repairs = work.cells.read(planter, Side.TARGET), _repairs(work, planter)
    if not target.values:
        return kit_of((), (), (), repairs) if repairs else None
    as_found = work.cells.read(planter, Side.AS_FOUND)
    left = difference(work.planters.get(planter), work.settings.all(), as_found, target)
    return kit_of((one for one in left.changes.values() if one.part), (), (), repairs)


def _repairs(work: UnitOfWork, planter: str) -> Counter[str]:
    """Return the parts that go on for the findings that were made a task."""
    found: Counter[str] = Counter()
    for one in work.findings.of(planter):
        if one.state is FindingState.TASK:
            found.update({part.part: part.count for part in one.parts})
    return found


def _job(work: UnitOfWork, planter: str) -> NextJob | None:
    switch = work.switches.open(planter)
    return switch.job if switch is not None else None
