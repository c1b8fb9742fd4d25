"""The demo's two seasons: each event of the text carried out through the door."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from changeover.desk.board import Board, read_board
from changeover.desk.demo import proofs as demo_proofs
from changeover.desk.demo import runs as demo_runs
from changeover.desk.demo import texts
from changeover.desk.do_work import tick_places
from changeover.desk.door import apply
from changeover.desk.edits import (
    ChooseNext,
    CloseSwitch,
    PutMeters,
    SaveSetup,
    SetCells,
    SetShelf,
    Several,
    Side,
)
from changeover.desk.meters import meters, move_meter
from changeover.desk.plan_switch import work_view
from changeover.planter.parts import Condition, ShelfCount
from changeover.planter.places import Place
from changeover.planter.settings import WorkPlace, standard
from changeover.planter.setup import Cell, Value
from changeover.quantities import Units
from changeover.store.opening import Store
from changeover.store.values import NextJob
from changeover.switch.tasks import Task, TaskKind

Event = Mapping[str, Any]
Setups = Mapping[str, Any]


def enter(store: Store, event: Event, setups: Setups) -> None:
    """Enter a setup as found, seed in the tanks or hoppers included."""
    board, cells = _setup(store, event, setups)
    _set(store, board, Side.AS_FOUND, cells, event)


def put_at(store: Store, event: Event, _setups: Setups) -> None:
    """Set cells as found at some places."""
    board = read_board(store, event["planter"], proposal=False)
    cells = texts.cells(board.planter, board.settings, {}, event["at_place"])
    _set(store, board, Side.AS_FOUND, cells, event)


def save(store: Store, event: Event, _setups: Setups) -> None:
    """Save the as-found setup."""
    edit = SaveSetup(
        event["planter"],
        event["name"],
        proved=event["proved"],
        lot=event["lot"],
        field=event["field"],
    )
    apply(store, edit, event["who"])


def choose(store: Store, event: Event, setups: Setups) -> None:
    """Choose what comes next and set the target."""
    board, cells = _setup(store, event, setups)
    job = texts.made(NextJob, event)
    why = event.get("why", "")
    apply(store, ChooseNext(board.planter.name, job, why=why), event["who"])
    _set(store, board, Side.TARGET, cells, event)


def switch(store: Store, event: Event, setups: Setups) -> None:
    """Go through a whole switch: choose, do every task, sign off."""
    choose(store, event, setups)
    planter = setups[event["setup"]]["planter"]
    _tick(store, planter, event["who"], lambda _task: True, lambda _place: True)
    close = CloseSwitch(planter, event["name"], proved=event["proved"])
    apply(store, close, event["who"])


def tick(store: Store, event: Event, _setups: Setups) -> None:
    """Tick off the tasks of some kinds, at one place of work and some rows if the text says so."""
    kinds = {TaskKind(kind) for kind in event["kinds"]}
    where = WorkPlace(event["work_place"]) if "work_place" in event else None
    low, high = event.get("rows", (1, 0))
    _tick(
        store,
        event["planter"],
        event["who"],
        lambda task: task.kind in kinds and where in (None, task.work_place),
        lambda place: not high or (place.row is not None and low <= place.row <= high),
    )


def hours(store: Store, event: Event, _setups: Setups) -> None:
    """Add a season's hours to the meters of each planter."""
    for planter, more in event["hours"].items():
        before = meters(store, planter)
        after = tuple(replace(meter, hours=meter.hours + more) for meter in before)
        apply(store, PutMeters(after, before=before, why=event["why"]), event["who"])


def move(store: Store, event: Event, _setups: Setups) -> None:
    """Let the meters of two rows change places."""
    planter = event["planter"]
    first, second = event["rows"]
    serial = next(meter.serial for meter in meters(store, planter) if meter.row == first)
    edit = move_meter(store, serial, planter, second)
    apply(store, replace(edit, why=event["why"]), event["who"])


def look_over(store: Store, event: Event, _setups: Setups) -> None:
    """Look over some of the parts that wait to be inspected: so many are good, so many worn."""
    with store.read() as work:
        shelf = {(one.part, one.condition): one for one in work.shelf.all()}
    edits = []
    for condition in (Condition.GOOD, Condition.WORN):
        for part, count in event.get(condition, {}).items():
            edits.append(_more(shelf, part, Condition.INSPECT, -count))
            edits.append(_more(shelf, part, condition, count))
    apply(store, Several(tuple(edits), why=event["why"]), event["who"])


def _more(
    shelf: dict[tuple[str, Condition], ShelfCount], part: str, condition: Condition, more: int
) -> SetShelf:
    before = shelf[part, condition]
    after = shelf[part, condition] = replace(before, count=before.count + more)
    return SetShelf(after, before=before)


EVENTS: Mapping[str, Callable[[Store, Event, Setups], None]] = {
    "enter": enter,
    "set": put_at,
    "save": save,
    "choose": choose,
    "switch": switch,
    "tick": tick,
    "hours": hours,
    "move": move,
    "look over": look_over,
    "inspect": demo_proofs.inspect,
    "gauges": demo_proofs.read_gauges,
    "prices": demo_proofs.take_prices,
    "appraise": demo_proofs.appraise,
    "bench": demo_runs.bench,
    "dig": demo_runs.dig,
    "measure": demo_runs.measure,
}


def _setup(store: Store, event: Event, setups: Setups) -> tuple[Board, dict[Cell, Value]]:
    """Return the board and the cells of the event's setup with its lot in every tank."""
    setup = setups[event["setup"]]
    board = read_board(store, setup["planter"], proposal=False)
    at = dict(setup.get("at", {}))
    for row in sorted(board.planter.split_rows if "between" in setup else ()):
        at[str(Place.of_row(row))] = setup["between"]
    cells = texts.cells(board.planter, board.settings, setup["values"], at)
    for meter in board.meters:
        cell = Cell("hub_spacing", Place.of_row(meter.row or 0))
        cells[cell] = texts.above_zero(setup["values"]["hub_above_zero"], meter)
    for place in board.planter.places(standard("seed").scope):
        cells[Cell("seed", place)] = event["lot"]
    return board, cells


def _set(store: Store, board: Board, side: Side, cells: Mapping[Cell, Value], event: Event) -> None:
    standing = board.as_found if side is Side.AS_FOUND else board.target
    before = {cell: standing.get(cell) for cell in cells}
    why = event.get("why", "")
    apply(store, SetCells(board.planter.name, side, cells, before, why=why), event["who"])


def _tick(
    store: Store,
    planter: str,
    who: str,
    wanted: Callable[[Task], bool],
    here: Callable[[Place], bool],
) -> None:
    """Tick wanted tasks off in the order of work."""
    view = work_view(store, planter, Units.US)
    for task in view.worklist.tasks:
        places = [place for place in view.progress.left(task) if here(place)]
        if places and wanted(task):
            apply(store, tick_places(view, task, places), who)
