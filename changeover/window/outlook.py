"""What the whole window looks at: planter, its board, units and colours."""

from dataclasses import replace
from typing import Protocol

from PySide6.QtCore import QObject, QThreadPool, QTimer, Signal

from changeover.desk.board import Board
from changeover.desk.changed import Changed
from changeover.desk.edits import SetCells, Side
from changeover.quantities import Refusal, Units
from changeover.seed.reasons import Proposal
from changeover.window.background import Background
from changeover.window.standing import Standing
from changeover.window.theme import DARK, LIGHT, Tokens

CELLS_ONLY = frozenset({Changed.AS_FOUND, Changed.TARGET, Changed.TICKS})
ELSEWHERE = frozenset({Changed.CREW, Changed.SEASON, Changed.JOBS})
LOOK_UP_SOON_MS, LOOK_UP_LATER_MS = 80, 250


class ReadBoard(Protocol):
    """Reads the board of a planter, with or without the look-up."""

    def __call__(self, planter: str, units: Units, *, proposal: bool) -> Board: ...


class Outlook(QObject):
    """The planter, units and colours in view.

    ``moved`` is emitted when another planter or other units are chosen, ``looked_up`` when the
    proposal has come or was refused, ``recoloured`` when the colours changed. ``board`` is read
    when first asked for and kept until ``forget`` or ``note`` says that it is old; its proposal
    follows a moment later, so that nobody waits for it.
    """

    moved = Signal()
    looked_up = Signal()
    recoloured = Signal()
    refused = Signal(str)

    def __init__(
        self,
        read_board: ReadBoard,
        planter: str = "",
        units: Units = Units.US,
        tokens: Tokens = LIGHT,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._read_board = read_board
        self._board: Board | None = None
        self._proposal: Proposal | None = None
        self._standing: Standing | None = None
        self._timer = QTimer(self, singleShot=True)
        self._timer.timeout.connect(self._look_up_behind)
        self._behind = QThreadPool(self)
        self._behind.setMaxThreadCount(1)
        self._search = Background(self, self._behind)
        self._search.done.connect(self._take)
        self._search.failed.connect(self.refused)
        self._age = 0
        self.planter, self.units, self.tokens = planter, units, tokens

    @property
    def board(self) -> Board:
        """The board of the planter in view. Raises Refusal when it cannot be read."""
        if self._board is None:
            board = self._read_board(self.planter, self.units, proposal=False)
            self._board = replace(board, proposal=self._proposal)
            if board.lot is not None and not self._timer.isActive():
                self._timer.start(LOOK_UP_SOON_MS)
        return self._board

    @property
    def standing(self) -> Standing:
        """How the board stands: what differs and the mark of each row."""
        if self._standing is None or self._standing.board is not self.board:
            self._standing = Standing(self.board)
        return self._standing

    def note(self, changed: frozenset[Changed], edit: object = None) -> None:
        """Bring the board up to date after an edit.

        Set cells are put into the board that is there; where more than a target has changed,
        the look-up is done again a little later, so that nothing blocks the hand that types.
        """
        if changed <= ELSEWHERE:
            return
        if self._board is None or not changed <= CELLS_ONLY:
            self.forget()
            return
        earlier, self._board = self._board, None
        self._age += 1
        if isinstance(edit, SetCells) and edit.planter == self.planter:
            self._board = with_cells(earlier, edit)
            if edit.side is Side.TARGET:
                return
        self._timer.start(LOOK_UP_LATER_MS)

    def forget(self) -> None:
        """Read the board and look its proposal up again when it is next asked for."""
        self._board = self._proposal = None
        self._age += 1
        self._timer.stop()

    def look_up(self) -> None:
        """Read the board with its proposal now; where that is refused, say so and go on without."""
        self._timer.stop()
        try:
            full = self._read_board(self.planter, self.units, proposal=True)
        except Refusal as refusal:
            self.refused.emit(str(refusal))
        else:
            self._take((self._age, full))

    def rest(self) -> None:
        """Wait until nothing is being read any more, as before the store is closed."""
        self._timer.stop()
        self._behind.waitForDone()

    def _look_up_behind(self) -> None:
        """Read the board with its proposal on another thread, so that the window stays free."""
        read, planter, units, age = self._read_board, self.planter, self.units, self._age
        self._search.start(lambda _stop, _report: (age, read(planter, units, proposal=True)))

    def _take(self, found: tuple[int, Board]) -> None:
        """Show what was read, unless the board has changed since the reading began."""
        age, full = found
        if age != self._age:
            return
        same = self._board is not None and self._board.planter == full.planter
        planter = self._board.planter if same and self._board is not None else full.planter
        self._board, self._proposal = replace(full, planter=planter), full.proposal
        self.looked_up.emit()

    def show_planter(self, name: str) -> None:
        if name != self.planter:
            self.planter = name
            self.forget()
            self.moved.emit()

    def show_units(self, units: Units) -> None:
        if units is not self.units:
            self.units = units
            self.forget()
            self.moved.emit()

    def show_tokens(self, tokens: Tokens) -> None:
        if tokens != self.tokens:
            self.tokens = tokens
            self.recoloured.emit()

    def turn_lights(self) -> None:
        """Change from light to dark or back."""
        self.show_tokens(LIGHT if self.tokens is DARK else DARK)


def with_cells(board: Board, edit: SetCells) -> Board:
    """Return a board as it stands once an edit of cells is carried out."""
    if edit.side is Side.AS_FOUND:
        return replace(board, as_found=board.as_found.with_values(edit.values))
    return replace(board, target=board.target.with_values(edit.values))
