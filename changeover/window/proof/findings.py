"""Findings as cards: what fell short, the evidence, ranked advice, and a button to make it work."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout, QWidget

from changeover.desk.prove.proofs import FindingState, KeptFinding, MakeTask
from changeover.desk.prove.tasks import title_of
from changeover.proof.findings import Finding, Weight
from changeover.window.door import Door
from changeover.window.marks import Mark
from changeover.window.notice import MarkLabel
from changeover.window.outlook import Outlook
from changeover.window.words import button, label

NONE_OPEN = "No open findings here."
FIRST = 2  # advice shown before the rest is asked for


class FindingCard(QFrame):
    """One finding; ``push`` makes it a task or takes it off the worklist."""

    def __init__(
        self, kept: KeptFinding, where: str, outlook: Outlook, push: Callable[[MakeTask], object]
    ) -> None:
        super().__init__()
        self.kept, self._push = kept, push
        self.setProperty("look", "ground-card")
        watch = kept.finding.weight is Weight.WATCH
        mark = MarkLabel(Mark.UNKNOWN if watch else Mark.ATTENTION, outlook)
        words, ends, whole = QVBoxLayout(), QVBoxLayout(), QHBoxLayout(self)
        words.setSpacing(3)
        words.addWidget(label(f"{where}: {title_of(kept)}", "strong", wrap=True))
        words.addWidget(label(f"{kept.finding.evidence}.", wrap=True))
        self._advice(words)
        self.task = button("", clicked=self.turn)
        self.show_state(kept)
        ends.addWidget(self.task)
        ends.addStretch()
        whole.setContentsMargins(12, 10, 12, 10)
        whole.setSpacing(12)
        whole.addWidget(mark, 0, Qt.AlignmentFlag.AlignTop)
        whole.addLayout(words, 1)
        whole.addLayout(ends)

    def show_state(self, kept: KeptFinding) -> None:
        """Say whether it is on the worklist."""
        self.kept = kept
        on = kept.state is FindingState.TASK
        self.task.setText("On the worklist ✓" if on else "Make it a task")
        self.task.setToolTip("Take it off the worklist again" if on else "Put it on the worklist")

    def turn(self) -> None:
        """Put the finding on the worklist, or take it off."""
        on = self.kept.state is FindingState.TASK
        self._push(MakeTask(self.kept.planter, self.kept.number, task=not on))

    def _advice(self, words: QVBoxLayout) -> None:
        lines = advice_lines(self.kept.finding)
        for text in lines[:FIRST]:
            words.addWidget(label(text, "source", wrap=True))
        rest = [label(text, "source", wrap=True) for text in lines[FIRST:]]
        for one in rest:
            one.hide()
            words.addWidget(one)
        if rest:
            more = button(f"{len(rest)} more to look at", "quiet")
            more.setCheckable(True)
            for one in rest:
                more.toggled.connect(one.setVisible)
            words.addWidget(more, 0, Qt.AlignmentFlag.AlignLeft)


class FindingCards(QWidget):
    """The open findings of one sort of proof, one card each."""

    def __init__(self, door: Door, outlook: Outlook) -> None:
        super().__init__()
        self._door, self._outlook = door, outlook
        self.cards: dict[int, FindingCard] = {}
        self.title, self.empty = label("Findings", "title"), label(NONE_OPEN, "soft")
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(8)
        self._column.addWidget(self.title)
        self._column.addWidget(self.empty)

    def show_findings(
        self, found: Sequence[KeptFinding], where: Callable[[KeptFinding], str]
    ) -> None:
        """Show findings; ``where`` says the place of each, such as ``Row 11, meter 07``."""
        if [one.number for one in found] != list(self.cards):
            self._rebuild(found, where)
        for one in found:
            self.cards[one.number].show_state(one)
        self.empty.setVisible(not found)
        self.title.setText(f"Findings ({len(found)})" if found else "Findings")

    def _rebuild(self, found: Sequence[KeptFinding], where: Callable[[KeptFinding], str]) -> None:
        for card in self.cards.values():
            card.hide()
            card.deleteLater()
        self.cards = {
            one.number: FindingCard(one, where(one), self._outlook, self._door.push)
            for one in found
        }
        for card in self.cards.values():
            self._column.addWidget(card)


def advice_lines(finding: Finding) -> tuple[str, ...]:
    """Return the advice of a finding, ranked, each with its source and its caution."""
    lines, said = [], ""
    for number, one in enumerate(finding.advice, start=1):
        caution = f"\n{one.caution}" if one.caution and one.caution != said else ""
        said = one.caution
        lines.append(f"{number}.  {one.text} ({one.source}){caution}")
    return tuple(lines)
