"""The store as the window sees it: read with the functions of the desk, changed by edits alone."""

from collections.abc import Callable
from typing import Any

from changeover.desk.board import Board, read_board
from changeover.desk.opening import Store
from changeover.quantities import Units
from changeover.window.door import Edit, Outcome


class DeskLink:
    """Gives the desk's functions the store, so that no page ever holds it."""

    def __init__(self, store: Store, who: str) -> None:
        self._store, self._who = store, who

    def read(self, job: Callable[..., Any], *args: Any, **kwargs: Any) -> Any:
        return job(self._store, *args, **kwargs)

    def read_board(self, planter: str, units: Units, *, proposal: bool) -> Board:
        return read_board(self._store, planter, units, proposal=proposal)

    def apply(self, edit: Edit) -> Outcome:
        from changeover.desk.door import apply

        return apply(self._store, edit, self._who)  # type: ignore[arg-type]
