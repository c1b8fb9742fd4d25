"""What the whole window looks at: planter, its board, units and colours."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, Signal

from changeover.quantities import Units
from changeover.window.theme import DARK, LIGHT, Tokens

ReadBoard = Callable[[str, Units], Any]


class Outlook(QObject):
    """The planter, units and colours in view; emits ``moved`` when one of the first two changes.

    ``board`` is read when first asked for and kept until ``forget`` is called.
    """

    moved = Signal()
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
        self._board: Any = None
        self.planter, self.units, self.tokens = planter, units, tokens

    @property
    def board(self) -> Any:
        """The board of the planter in view. Raises Refusal when it cannot be read."""
        if self._board is None:
            self._board = self._read_board(self.planter, self.units)
        return self._board

    def forget(self) -> None:
        """Read the board again when it is next asked for."""
        self._board = None

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
