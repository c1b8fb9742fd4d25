"""The Proof page: one pill for each sort of proof, its view below."""

from collections.abc import Iterator, Sequence
from typing import ClassVar

from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.window.asking import Asking
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.page import EVERYTHING, Page, Read
from changeover.window.pages import PageLine
from changeover.window.proof.kinds import PROOFS
from changeover.window.proof.view import ProofView
from changeover.window.words import Elided, label, pill


class ProofPage(Page):
    """The frame of all proofs; a view is made when its pill is first chosen.

    Only the view that is shown reads again; the others do so when they are next shown.
    """

    wants: ClassVar[frozenset[Changed]] = EVERYTHING

    def __init__(
        self,
        read: Read,
        door: Door,
        outlook: Outlook,
        asking: Asking,
        lines: Sequence[PageLine] = PROOFS,
    ) -> None:
        super().__init__(read, door, outlook, asking)
        self.lines = {line.key: line for line in lines}
        self.views: dict[str, ProofView] = {}
        self._stale: dict[str, frozenset[Changed]] = {}
        self.stack, self.pills = QStackedWidget(), QButtonGroup(self)
        self.about = Elided("", "soft")
        head = QHBoxLayout()
        head.setSpacing(8)
        head.addWidget(label("Proof", "page-title"))
        head.addWidget(self.about, 1)
        for number, line in enumerate(lines):
            chosen = pill(line.title)
            self.pills.addButton(chosen, number)
            head.addWidget(chosen)
        self.pills.idClicked.connect(lambda number: self.show_view(list(self.lines)[number]))
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 16, 0, 0)
        column.setSpacing(10)
        head.setContentsMargins(0, 0, 24, 0)
        column.addLayout(head)
        column.addWidget(self.stack, 1)
        self.shown = next(iter(self.lines))

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        for key, view in self.views.items():
            if changed & view.wants:
                self._stale[key] = self._stale.get(key, frozenset()) | changed
        self.show_view(self.shown)

    @override
    def stops(self) -> tuple[QWidget, ...]:
        view = self.views.get(self.shown)
        return (self,) if view is None else view.stops()

    @override
    def recolour(self) -> None:
        super().recolour()
        for view in self.views.values():
            view.recolour()

    @override
    def more_to_see(self) -> Iterator[tuple[str, QWidget]]:
        first, *others = self.lines
        for key in others:
            self.show_view(key)
            yield key, self.window()
        self.show_view(first)

    def show_view(self, key: str) -> ProofView:
        """Show one sort of proof, as it stands now."""
        view = self.views.get(key) or self._make(key)
        self.shown = key
        self.pills.button(list(self.lines).index(key)).setChecked(True)
        changed = self._stale.pop(key, frozenset())
        if changed:
            view.refresh(changed)
        self.stack.setCurrentWidget(view)
        self._tell(key, view.about)
        return view

    def _make(self, key: str) -> ProofView:
        made = self.lines[key].load()(self.read, self.door, self.outlook, self.asking)
        assert isinstance(made, ProofView)
        made.about_changed.connect(lambda words: self._tell(key, words))
        self.views[key] = made
        self._stale[key] = EVERYTHING
        self.stack.addWidget(made)
        return made

    def _tell(self, key: str, words: str) -> None:
        if key == self.shown:
            self.about.setText(words)
