"""The common ways of proof views: a draft that is entered, saved ones to look at, findings."""

from collections.abc import Sequence
from pathlib import Path
from typing import Any, ClassVar, Generic, TypeVar

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.desk.prove.proofs import KeptFinding, Proof, PutProof, TakenProof, findings, proofs
from changeover.quantities import how_many
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.dates import day_text
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.proof.bench_words import where_of
from changeover.window.proof.draft import Draft
from changeover.window.proof.findings import FindingCards
from changeover.window.proof.note_field import NoteField
from changeover.window.proof.saved import ProofSide
from changeover.window.proof.view import ProofView

Entered = TypeVar("Entered")
TABLES = "Tables (*.csv *.txt);;All files (*)"


class EnteredView(ProofView, Generic[Entered]):
    """A view in which a proof is entered as a draft, or a saved one looked at.

    A subclass says its ``kind`` and ``what`` it is called, and fills in the methods that raise.
    """

    kind: ClassVar[Proof]
    what: ClassVar[str]
    files: ClassVar[bool] = True
    prints: ClassVar[bool] = True

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.draft: Draft[Entered] = Draft(door, self.empty())
        self.entering, self.chosen = False, 0
        self.saved: tuple[TakenProof, ...] = ()
        self.known: tuple[KeptFinding, ...] = ()
        self._planter = ""
        self.side = ProofSide(self.what, files=self.files, prints=self.prints)
        self.cards = FindingCards(door, outlook)
        self.note = NoteField(self.draft, lambda: self.entering)
        self.draft.changed.connect(lambda _changed: self.show_entered())
        self.side.enter.connect(self.enter)
        self.side.save.connect(self.save)
        self.side.discard.connect(self.discard)
        self.side.import_wanted.connect(self.import_file)
        self.side.printed.connect(self.print_report)
        self.side.chosen.connect(self.choose)

    def empty(self) -> Entered:
        """Return a proof with nothing in it."""
        raise NotImplementedError

    def fresh(self) -> Entered:
        """Return what a new proof begins with."""
        raise NotImplementedError

    def read_back(self, proof: TakenProof) -> Entered:
        """Return the readings of a saved proof. Raises Refusal."""
        raise NotImplementedError

    def edit(self) -> PutProof:
        """Return the edit that saves the draft. Raises Refusal."""
        raise NotImplementedError

    def show_entered(self) -> None:
        """Show the proof that is in view."""
        raise NotImplementedError

    def start(self) -> None:
        """Put the keyboard where entering begins."""

    def imported(self, path: Path) -> Entered:
        """Return the draft with the readings of a file. Raises Refusal."""
        raise NotImplementedError

    def printed(self, folder: Path) -> Path:
        """Print the proof that is in view. Raises Refusal."""
        raise NotImplementedError

    @property
    def entered(self) -> Entered:
        """The proof in view: the draft, or the saved one that was chosen."""
        if self.entering or not self.saved:
            return self.draft.value
        return self.read_back(self.saved[self.chosen])

    @property
    def taken(self) -> str:
        """When the proof in view was taken, empty for the draft."""
        return "" if self.entering or not self.saved else self.saved[self.chosen].taken

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        planter = self.outlook.planter
        if planter != self._planter:
            self._planter, self.chosen, self.entering = planter, 0, False
            self.draft.begin(self.empty())
        self.saved = self.read(proofs, planter, self.kind)
        self.known = self.read(findings, planter, self.kind)
        self.chosen = min(self.chosen, max(0, len(self.saved) - 1))
        self.side.show_saved(self.saved, self.chosen)
        self.cards.show_findings(self.known, lambda one: where_of(self.outlook.board, one))
        self.show_entered()

    def enter(self) -> None:
        """Begin another proof, or go on with the one that was left."""
        if not self.entering:
            self.entering = True
            if self.draft.value == self.empty():
                self.draft.begin(self.fresh())
        self.show_entered()
        self.start()

    def discard(self) -> None:
        """Leave what is being entered; it stays until it is saved."""
        self.entering = False
        self.show_entered()

    def save(self) -> None:
        """Save the draft with what fell short in it."""
        self.note.take()
        self.chosen = 0
        if attempt(self.door, lambda: self.draft.save(self.edit, self.empty())):
            self.entering = False
            self.show_entered()

    def choose(self, number: int) -> None:
        """Show another saved proof, by its number in the list."""
        self.chosen = number
        self.show_entered()

    def import_file(self) -> None:
        """Take the readings of a file into the draft."""
        path = self.asking.choose_file(f"Import a {self.what}", TABLES)
        if path is None:
            return
        self.enter()
        value = attempt(self.door, lambda: self.imported(path))
        if value is not None:
            self.draft.push(value)

    def print_report(self) -> None:
        """Print the proof in view into a folder of the person's choice."""
        folder = self.asking.choose_folder("Folder for the report")
        path = None if folder is None else attempt(self.door, lambda: self.printed(folder))
        if path is not None:
            self.asking.tell(f"The report lies in {folder}.", path.name)

    def say_state(self, rows: int, extra: Sequence[str] = ()) -> None:
        """Say behind the title what is in view."""
        if self.entering:
            self.say_about(f"a {self.what} being entered, {how_many(rows, 'row')} so far")
        elif self.saved:
            one = self.saved[self.chosen]
            told = [self.what, day_text(one.taken), how_many(rows, "row"), *extra]
            self.say_about(", ".join(told))
        else:
            self.say_about(f"no {self.what} yet")

    @property
    def lot(self) -> str | None:
        """The number of the lot that comes next, None while none is chosen."""
        lot = self.outlook.board.lot
        return lot.number if lot is not None else None

    def put_together(self, *widgets: QWidget, note_after: int = 1) -> None:
        """Stack widgets to the left of the side panel, in one scrolled column.

        The note comes after the first ones, ``note_after`` of them.
        """
        inside, scroll, column = QWidget(), QScrollArea(), QVBoxLayout()
        inside.setObjectName("surface")
        inside.setLayout(column)
        column.setContentsMargins(0, 0, 16, 16)
        column.setSpacing(8)
        for widget in (*widgets[:note_after], self.note, *widgets[note_after:]):
            column.addWidget(widget)
        column.addStretch()
        scroll.setWidget(inside)
        scroll.setWidgetResizable(True)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        both: Any = QHBoxLayout(self)
        both.setContentsMargins(0, 0, 0, 0)
        both.setSpacing(0)
        both.addWidget(scroll, 1)
        both.addWidget(self.side)
