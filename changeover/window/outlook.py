"""What the whole window looks at: planter, its board, units and colours."""

from dataclasses import replace
from typing import Protocol

from PySide6.QtCore import QObject, QTimer, Signal

from changeover.desk.board import Board
from changeover.desk.changed import Changed
from changeover.quantities import Units
from changeover.window.standing import Standing
from changeover.window.theme import DARK, LIGHT, Tokens

CELLS_ONLY = frozenset({Changed.AS_FOUND, Changed.TARGET, Changed.TICKS})
LOOK_UP_AFTER_MS = 250


class ReadBoard(Protocol):
    """Reads the board of a planter, with or without the look-up."""

    def __call__(self, planter: str, units: Units, *, proposal: bool) -> Board: ...


class Outlook(QObject):
    """The planter, units and colours in view.

    ``moved`` is emitted when another planter or other units are chosen, ``looked_up`` when the
    proposal was read again after edits, ``recoloured`` when the colours changed. ``board`` is
    read when first asked for and kept until ``forget`` or ``note`` says that it is old.
    """

    moved = Signal()
    looked_up = Signal()
    recoloured = Signal()

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
        self._earlier: Board | None = None
        self._standing: Standing | None = None
        self._timer = QTimer(self, singleShot=True, interval=LOOK_UP_AFTER_MS)
        self._timer.timeout.connect(self._look_up)
        self.planter, self.units, self.tokens = planter, units, tokens

    @property
    def board(self) -> Board:
        """The board of the planter in view. Raises Refusal when it cannot be read."""
        if self._board is None:
            self._board = self._read()
        return self._board

    @property
    def standing(self) -> Standing:
        """How the board stands: what differs and the mark of each row."""
        if self._standing is None or self._standing.board is not self.board:
            self._standing = Standing(self.board)
        return self._standing

    def note(self, changed: frozenset[Changed]) -> None:
        """Let the board be read again; after mere cells the look-up follows a little later."""
        quick = self._board if changed <= CELLS_ONLY else None
        self.forget()
        if quick is not None and quick.proposal is not None:
            self._earlier = quick
            self._timer.start()

    def forget(self) -> None:
        """Read the board again, with its proposal, when it is next asked for."""
        self._board = self._earlier = None
        self._timer.stop()

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

    def _read(self) -> Board:
        if self._earlier is None:
            return self._read_board(self.planter, self.units, proposal=True)
        board = self._read_board(self.planter, self.units, proposal=False)
        return replace(board, proposal=self._earlier.proposal)

    def _look_up(self) -> None:
        self.forget()
        self.looked_up.emit()
