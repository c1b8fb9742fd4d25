"""The fleet: every planter of a store with what it is set to, what comes next and how far it is."""

from dataclasses import dataclass

from changeover.desk.board import Board, board_of
from changeover.quantities import Quantity, Units
from changeover.store.opening import Store
from changeover.switch.difference import RowState, difference


@dataclass(frozen=True)
class PlanterLine:
    """One planter in the fleet list; ``rows_ready`` is None when no switch is open.

    It counts among ``rows_in_use``, those that are not locked up.
    """

    name: str
    rows: int
    row_spacing: Quantity
    now: str
    next: str
    rows_ready: int | None
    rows_in_use: int


def planter_names(store: Store) -> tuple[str, ...]:
    """Return the names of the planters in a store, sorted."""
    with store.read() as work:
        return work.planters.names()


def first_planter(store: Store, *wanted: str) -> str:
    """Return the planter to begin with: the one whose open switch was worked on last.

    Where no switch is open it is the first of ``wanted`` that is there, else the first by name;
    empty when there is none.
    """
    with store.read() as work:
        names, busy = work.planters.names(), work.switches.last_worked_on()
    there = (name for name in (busy or "", *wanted, *names) if name in names)
    return next(there, "")


def planter_lines(store: Store, units: Units = Units.US) -> tuple[PlanterLine, ...]:
    """Return one line for each planter, sorted by name."""
    with store.read() as work:
        boards = [board_of(work, name, units, proposal=False) for name in work.planters.names()]
    return tuple(_line(board) for board in boards)


def rows_ready(board: Board) -> tuple[int, int]:
    """Return how many rows are at their target, and how many are in use, not locked up."""
    gap = difference(board.planter, board.settings, board.as_found, board.target)
    states = [gap.row_state(row) for row in board.planter.row_numbers]
    used = [state for state in states if state is not RowState.LOCKED]
    return used.count(RowState.READY), len(used)


def _line(board: Board) -> PlanterLine:
    planter = board.planter
    ready, used = rows_ready(board)
    return PlanterLine(
        planter.name,
        planter.rows,
        planter.row_spacing,
        board.label_now,
        board.label_next,
        ready if board.next_job is not None else None,
        used,
    )
