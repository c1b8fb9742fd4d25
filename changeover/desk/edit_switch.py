"""Editing a switch: choosing what comes next, ticking off, signing off, saving setups."""

from collections.abc import Iterable
from types import MappingProxyType

from changeover.desk.board import board_of
from changeover.desk.changed import Changed
from changeover.desk.edit_rows import words_of
from changeover.desk.edits import (
    AbandonSwitch,
    ChooseNext,
    CloseSwitch,
    PutOwnWork,
    ReopenSwitch,
    RestoreSwitch,
    SaveSetup,
    TickTask,
    WithdrawSetup,
)
from changeover.desk.effects import Effect, effect
from changeover.desk.jobs import field_job
from changeover.desk.move_parts import move_parts
from changeover.desk.plan_switch import WorkView, view_of
from changeover.desk.prove.tasks import FINDING, acknowledge, refuse_tick
from changeover.desk.tables import crops
from changeover.planter.places import Place
from changeover.planter.setup import Cell, Setup, Value
from changeover.quantities import Quantity, Refusal, Units
from changeover.seed.seed_size import seed_size
from changeover.store.journal import differing
from changeover.store.refusals import Conflict
from changeover.store.switches import ABANDONED, CLOSED
from changeover.store.unit_of_work import UnitOfWork
from changeover.store.values import OpenSwitch, SavedSetup, Side
from changeover.switch.tasks import Task, Tick

_ALL = (Changed.NEXT, Changed.TICKS, Changed.AS_FOUND, Changed.TARGET)


def choose_next(work: UnitOfWork, edit: ChooseNext) -> Effect:
    """Choose what comes next; begins a switch when none is open. Raises Refusal, Conflict."""
    work.lots.get(edit.job.lot)
    field_job(work, edit.job)
    switch = work.switches.open(edit.planter)
    standing = switch.job if switch is not None else None
    if standing not in (edit.before, edit.job):
        texts = differing(edit.job, standing, edit.before)
        raise Conflict(f"What comes next on {edit.planter}", *texts, standing)
    if switch is None:
        as_found = work.cells.read(edit.planter, Side.AS_FOUND)
        work.switches.begin(edit.planter, OpenSwitch(edit.job, as_found, work.when))
        return effect(AbandonSwitch(edit.planter), *_ALL)
    work.switches.choose(edit.planter, edit.job)
    inverse = ChooseNext(edit.planter, switch.job, before=edit.job)
    return effect(inverse, *_ALL)


def abandon(work: UnitOfWork, edit: AbandonSwitch) -> Effect:
    """Give the open switch up; what is set stays. Raises Refusal when none is open."""
    switch = work.switches.require(edit.planter)
    work.switches.end(edit.planter, ABANDONED, work.when)
    return effect(RestoreSwitch(edit.planter, switch), *_ALL)


def restore(work: UnitOfWork, edit: RestoreSwitch) -> Effect:
    """Bring an abandoned switch back. Raises Refusal when another one is open."""
    work.switches.restore(edit.planter, edit.switch)
    return effect(AbandonSwitch(edit.planter), *_ALL)


def tick(work: UnitOfWork, edit: TickTask) -> Effect:
    """Tick a task off or take ticks back; as-found cells and shelf follow. Raises Refusal."""
    refuse_tick(edit.task)
    switch = work.switches.require(edit.planter)
    board = board_of(work, edit.planter, edit.units, proposal=False)
    if edit.values is None:
        task = _task(view_of(work, board), edit)
        values = _values(task, edit.places, done=edit.done)
    else:
        values = dict(edit.values)
    moved = _tick(work, edit, switch) if edit.done else _untick(work, edit, switch)
    words = words_of(work, edit.planter)
    old = work.cells.set(edit.planter, Side.AS_FOUND, values, words=words)
    if edit.done:
        moved_on = {
            cell: was
            for cell, was in old.items()
            if was not in (switch.before.get(cell), values[cell])
        }
        work.switches.go_from(edit.planter, moved_on)
    swaps = move_parts(work, edit, switch.started, old, values)
    inverse = TickTask(
        edit.planter,
        edit.task,
        tuple(dict.fromkeys(one.place for one in moved)),
        done=not edit.done,
        units=edit.units,
        values=old,
        ticks=() if edit.done else moved,
        swaps={cell: swap.back() for cell, swap in swaps.items()},
    )
    shelf = (Changed.SHELF,) if swaps else ()
    return effect(inverse, Changed.TICKS, Changed.AS_FOUND, *shelf)


def _tick(work: UnitOfWork, edit: TickTask, switch: OpenSwitch) -> tuple[Tick, ...]:
    """Tick at the places that are not ticked yet; an inverse brings its own ticks."""
    standing = {one.place for one in switch.ticks if _family(one.task) == _family(edit.task)}
    moved = edit.ticks or tuple(
        Tick(edit.task, place, work.who, work.when)
        for place in edit.places
        if place not in standing
    )
    work.switches.tick(edit.planter, moved)
    return moved


def _untick(work: UnitOfWork, edit: TickTask, switch: OpenSwitch) -> tuple[Tick, ...]:
    """Take back the ticks of the task's family at its places."""
    moved = tuple(
        one
        for one in switch.ticks
        if one.place in edit.places and _family(one.task) == _family(edit.task)
    )
    work.switches.untick(edit.planter, moved)
    return moved


def _family(task: str) -> str:
    """Return the part of a task's key under which its ticks hold, whatever the plan."""
    return task.partition("/")[0]


def put_own_work(work: UnitOfWork, edit: PutOwnWork) -> Effect:
    """Put a task or a split of one's own; the plan with it must hold. Raises Refusal, Conflict."""
    work.own_work.put(edit.planter, edit.value, edit.before)
    view_of(work, board_of(work, edit.planter, Units.US, proposal=False))
    inverse = PutOwnWork(edit.planter, edit.before, before=edit.value)
    return effect(inverse, Changed.TICKS)


def close(work: UnitOfWork, edit: CloseSwitch) -> Effect:
    """Sign the open switch off and save its setup. Raises Refusal while a task is open."""
    work.switches.require(edit.planter)
    board = board_of(work, edit.planter, edit.units, proposal=False)
    view = view_of(work, board)
    _refuse_open_tasks(view, edit.planter)
    stay = acknowledge(work, edit.planter, dict(edit.acknowledged), proved=edit.proved)
    job = board.next_job
    saved = _saved(
        work,
        edit.planter,
        edit.name,
        board.as_found,
        lot=job.lot if job is not None else None,
        field=job.field if job is not None else None,
        note="; ".join((*([edit.note] if edit.note else []), *stay)),
        proved=edit.proved,
        signed=True,
    )
    work.setups.add(saved)
    work.switches.end(edit.planter, CLOSED, work.when)
    target = board.target.values
    work.cells.replace(edit.planter, Side.TARGET, {})
    inverse = ReopenSwitch(edit.planter, edit.name, MappingProxyType(dict(target)), edit)
    return effect(inverse, *_ALL, Changed.SETUPS, Changed.PROOFS)


def reopen(work: UnitOfWork, edit: ReopenSwitch) -> Effect:
    """Take a signing-off back. Raises Refusal when another switch is open."""
    work.switches.reopen(edit.planter)
    work.setups.withdraw(edit.planter, edit.name, withdrawn=True)
    work.cells.replace(edit.planter, Side.TARGET, edit.target)
    for number, _words in edit.closing.acknowledged:
        work.findings.acknowledge(edit.planter, number, "")
    return effect(edit.closing, *_ALL, Changed.SETUPS, Changed.PROOFS)


def save_setup(work: UnitOfWork, edit: SaveSetup) -> Effect:
    """Save the as-found setup under a name. Raises Refusal for a name that is taken or empty."""
    as_found = work.cells.read(edit.planter, Side.AS_FOUND)
    saved = _saved(
        work,
        edit.planter,
        edit.name,
        as_found,
        lot=edit.lot,
        field=edit.field,
        note=edit.note,
        proved=edit.proved,
        signed=False,
    )
    work.setups.add(saved)
    return effect(WithdrawSetup(edit.planter, edit.name), Changed.SETUPS)


def withdraw_setup(work: UnitOfWork, edit: WithdrawSetup) -> Effect:
    """Withdraw a saved setup or bring it back. Raises Refusal."""
    work.setups.withdraw(edit.planter, edit.name, withdrawn=edit.withdrawn)
    inverse = WithdrawSetup(edit.planter, edit.name, withdrawn=not edit.withdrawn)
    return effect(inverse, Changed.SETUPS)


def _task(view: WorkView, edit: TickTask) -> Task:
    try:
        task = view.worklist.task(edit.task)
    except KeyError as error:
        raise Refusal(
            f"{edit.planter}: the task “{edit.task}” is no longer on the worklist; look again."
        ) from error
    for place in edit.places:
        if place not in task.places:
            raise Refusal(f"{task.title}: {place.label} is not part of it; choose another.")
    return task


def _values(task: Task, places: Iterable[Place], *, done: bool) -> dict[Cell, Value | None]:
    changes = (change for place in places for change in task.changes.get(place, ()))
    return {change.cell: change.after if done else change.before for change in changes}


def _refuse_open_tasks(view: WorkView, planter: str) -> None:
    for task in (*view.progress.open_safety, *view.worklist.tasks):
        still = [place.label for place in view.progress.left(task)]
        if still and not task.key.startswith(FINDING):
            more = f" and {len(still) - 1} more" if len(still) > 1 else ""
            raise Refusal(
                f"{planter} cannot be signed off: “{task.title}” is open at {still[0]}{more}; "
                "do it and tick it off first."
            )
    for change in view.difference.changes.values():
        name = next(s.name for s in view.board.settings if s.key == change.cell.setting)
        raise Refusal(
            f"{planter} cannot be signed off: {name.lower()} at {change.cell.place.label} is not "
            "at its target; set it and tick it off, or correct what it is set to."
        )


def _saved(
    work: UnitOfWork,
    planter: str,
    name: str,
    setup: Setup,
    *,
    lot: str | None,
    field: str | None,
    note: str,
    proved: str,
    signed: bool,
) -> SavedSetup:
    crop, diameter = _crop_and_size(work, lot)
    return SavedSetup(
        name=name,
        planter=planter,
        setup=setup,
        saved=work.when,
        who=work.who,
        lot=lot,
        crop=crop,
        field=field,
        note=note,
        proved=proved,
        seed_diameter=diameter,
        signed=signed,
    )


def _crop_and_size(work: UnitOfWork, number: str | None) -> tuple[str | None, Quantity | None]:
    if number is None:
        return None, None
    lot = work.lots.get(number)
    crop = crops().get(lot.crop)
    size = seed_size(lot, crop) if crop is not None else None
    return lot.crop, size.diameter if size is not None and size.measured else None
