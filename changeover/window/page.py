"""The base of every page: what it wants to hear of, and how it is told."""

from collections.abc import Callable, Iterator, Mapping
from typing import Any, ClassVar, Concatenate, ParamSpec, Protocol, TypeVar

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QDialog, QWidget

from changeover.desk.changed import Changed
from changeover.window.asking import Asking
from changeover.window.door import Door
from changeover.window.outlook import Outlook

EVERYTHING = frozenset(Changed)
_P = ParamSpec("_P")
_T = TypeVar("_T")


class Read(Protocol):
    """Calls a function of the desk with the store as its first argument."""

    def __call__(
        self, job: Callable[Concatenate[Any, _P], _T], *args: _P.args, **kwargs: _P.kwargs
    ) -> _T: ...


class Page(QWidget):
    """One page of the window.

    ``wants`` names the kinds of data shown; ``refresh`` reads them again and is given what
    changed (everything when the planter or the units are others). ``page_wanted`` asks for
    another page by its key.
    """

    page_wanted = Signal(str)

    wants: ClassVar[frozenset[Changed]] = EVERYTHING

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__()
        self.setObjectName("page")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.read, self.door, self.outlook, self.asking = read, door, outlook, asking

    def refresh(self, changed: frozenset[Changed]) -> None:
        """Read and show again what the page shows."""
        raise NotImplementedError

    def stops(self) -> tuple[QWidget, ...]:
        """The places that F6 goes round on this page."""
        return (self,)

    def more_to_see(self) -> Iterator[tuple[str, QWidget]]:
        """Show one by one what else of this page is worth a picture: a name, and what to take.

        What was shown for a picture is put away when the next one is asked for.
        """
        yield from ()

    def dialogs_to_see(
        self, jobs: Mapping[str, Callable[[], object]]
    ) -> Iterator[tuple[str, QWidget]]:
        """Open dialogs one by one for their pictures: by a name, the job that opens each.

        A job that opens none here, such as a flush without two lots, is passed over.
        """
        for name, open_one in jobs.items():
            before = set(self._open_dialogs())
            open_one()
            for dialog in [one for one in self._open_dialogs() if one not in before][-1:]:
                yield name, dialog
            for dialog in self._open_dialogs()[::-1]:
                if dialog not in before:
                    dialog.reject()

    def _open_dialogs(self) -> list[QDialog]:
        return [one for one in self.findChildren(QDialog) if one.isVisible()]

    def recolour(self) -> None:
        """Take on the colours of the outlook; the style sheet is already set."""
        self.update()
