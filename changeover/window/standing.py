"""How a board stands: which cells differ from their target, and the mark of each row."""

from collections.abc import Mapping
from functools import cached_property

from changeover.desk.board import Board
from changeover.planter.setup import Cell
from changeover.switch.difference import Difference, RowState, difference, locked_rows
from changeover.window.marks import Mark

_MARKS = {
    RowState.READY: Mark.READY,
    RowState.WORK: Mark.WORK,
    RowState.UNKNOWN: Mark.UNKNOWN,
    RowState.LOCKED: Mark.LOCKED,
}


class Standing:
    """The difference of as found and target of one board, reckoned when first asked for."""

    def __init__(self, board: Board) -> None:
        self.board = board

    @cached_property
    def difference(self) -> Difference:
        board = self.board
        return difference(board.planter, board.settings, board.as_found, board.target)

    @cached_property
    def differing(self) -> frozenset[Cell]:
        """Every cell whose value as found is not its target."""
        return frozenset(self.difference.changes)

    @cached_property
    def marks(self) -> Mapping[int, Mark]:
        """The mark of every row, from the left."""
        return {row: self._mark(row, state) for row, state in self.difference.states.items()}

    @cached_property
    def locked_now(self) -> frozenset[int]:
        """The rows that are locked up as found."""
        return locked_rows(self.board.planter, self.board.as_found)

    @property
    def ready(self) -> int:
        """The count of rows in use with nothing left to do."""
        return sum(mark is Mark.READY for mark in self.marks.values())

    @property
    def in_use(self) -> int:
        """The count of rows that are not locked up."""
        return sum(mark is not Mark.LOCKED for mark in self.marks.values())

    @property
    def to_do(self) -> int:
        return self.in_use - self.ready

    @cached_property
    def rows_known(self) -> frozenset[int]:
        """The rows of which anything at all is entered as found."""
        cells = self.board.as_found.values
        return frozenset(cell.place.row for cell in cells if cell.place.row)

    def _mark(self, row: int, state: RowState) -> Mark:
        if state is not RowState.READY:
            return _MARKS[state]
        if row in self.locked_now:
            return Mark.LOCKED
        return Mark.READY if row in self.rows_known else Mark.UNKNOWN
