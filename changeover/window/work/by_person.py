"""The worklist by person: each one's stints in the order of time, to tick off by row."""

from collections.abc import Mapping
from types import MappingProxyType

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from changeover.desk.who_does_what import CrewPlan
from changeover.planter.places import Place
from changeover.switch.timetable.model import Stint
from changeover.window.outlook import Outlook
from changeover.window.words import label
from changeover.window.work.task_card import TaskCard
from changeover.window.work.task_layout import DESK, Sizes
from changeover.window.work.task_words import TaskWords, task_words

NO_PLAN = "Nothing is shared out yet. Enter the crew beside, and share the work out."
NO_NUMBERS: Mapping[str, int] = MappingProxyType({})


class ByPerson(QWidget):
    """Cards under each person's name; emits ``ticked(key, places, done)`` as a card does."""

    ticked = Signal(str, object, bool)

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook, self._sizes = outlook, DESK
        self.setObjectName("surface")
        self.plan: CrewPlan | None = None
        self.cards: list[tuple[Stint, TaskCard]] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(24, 4, 16, 24)
        self._column.setSpacing(6)
        self.show_plan(None)

    def show_plan(self, plan: CrewPlan | None, numbers: Mapping[str, int] = NO_NUMBERS) -> None:
        """Show another plan; what is done follows with ``show_done``.

        ``numbers`` are those of the tasks on the worklist, by key.
        """
        self.plan, self._numbers = plan, numbers
        self._empty()
        if plan is None:
            self._column.addWidget(label(NO_PLAN, "soft", wrap=True))
        else:
            for name in plan.names:
                self._add_person(plan, name)
        self._column.addStretch()

    def show_done(self, done: Mapping[str, frozenset[Place]], *, only_open: bool = False) -> None:
        """Show at which places each stint is done."""
        for stint, card in self.cards:
            here = frozenset(card.words.places) & done.get(stint.activity, frozenset())
            card.show_task(card.words, here)
            card.setVisible(not (only_open and card.whole))

    def set_sizes(self, sizes: Sizes) -> None:
        """Take on desk or yard sizes."""
        self._sizes = sizes
        for _, card in self.cards:
            card.set_sizes(sizes)

    def recolour(self) -> None:
        """Paint the cards anew."""
        for _, card in self.cards:
            card.update()

    def _add_person(self, plan: CrewPlan, name: str) -> None:
        stints = plan.timetable.by(name)
        self._column.addSpacing(8)
        self._column.addWidget(label(name, "title"))
        if not stints:
            self._column.addWidget(label("nothing to do", "soft"))
        for stint in stints:
            card = TaskCard(_words(plan, stint, self._numbers), self._outlook, self._sizes)
            card.ticked.connect(self.ticked)
            self.cards.append((stint, card))
            self._column.addWidget(card)

    def _empty(self) -> None:
        self.cards.clear()
        while self._column.count():
            item = self._column.takeAt(0)
            if item is not None and (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()


def _words(plan: CrewPlan, stint: Stint, numbers: Mapping[str, int]) -> TaskWords:
    """Return the words of a card for a stint: its hours stand where the minutes would."""
    words = task_words(plan.task(stint), numbers.get(stint.activity))
    return TaskWords(
        words.key,
        words.title,
        words.places,
        words.chips,
        words.where,
        plan.from_to(stint),
        words.details,
    )
