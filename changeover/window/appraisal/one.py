"""One appraisal: values, work and margin over the rows, with the form and photos beside them."""

from dataclasses import replace
from datetime import date

from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from changeover.desk.appraise import (
    AppraisalView,
    KeptAppraisal,
    appraisal_view,
    appraisals,
    attach,
    inspections,
    photo,
    price_books,
    remove,
)
from changeover.desk.changed import Changed
from changeover.desk.print_appraisal import value_lines, write_report
from changeover.desk.shop_edits import PutAppraisal, PutPhoto
from changeover.quantities import Refusal
from changeover.window.appraisal.form import AppraisalForm
from changeover.window.appraisal.photos import KINDS, PhotoList, read_photo
from changeover.window.appraisal.words import (
    RowLine,
    margin_words,
    row_lines,
    unpriced_words,
    work_words,
)
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.caution import CautionBar
from changeover.window.door import Door
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Page, Read
from changeover.window.words import button, label

EMPTY = (
    "No appraisal of this planter yet. Inspect it on the page Proof, under wear; import a price "
    "list under prices; then begin an appraisal here: the latest inspection is taken."
)
COLUMNS: tuple[Column[RowLine], ...] = (
    Column("Row", lambda one: one.name, number=True),
    Column("Condition", lambda one: one.condition, loud=lambda one: one.loud),
    Column("What brings it to standard", lambda one: one.work, wide=True),
    Column("Parts", lambda one: one.parts, number=True),
    Column("Labour", lambda one: one.labour, number=True),
    Column("Sum with tax", lambda one: one.total, number=True),
)
SIDE_WIDTH = 286


class OneView(Page):
    """Begins, changes, prints and removes appraisals of the planter in view."""

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.view: AppraisalView | None = None
        self.chosen: ChoiceBox[str] = ChoiceBox("Appraisal")
        self.paper: ChoiceBox[str] = ChoiceBox("Paper", [("A4", "A4"), ("Letter", "Letter")])
        self.model: ListModel[RowLine] = ListModel(COLUMNS, door, outlook)
        self.rows, self.missing = ListView(self.model, "Rows appraised"), CautionBar(outlook)
        self.form, self.empty = AppraisalForm(), label(EMPTY, "soft", wrap=True)
        self.photos = PhotoList(lambda digest: self.read(photo, self._kept(), digest).content)
        self.cards = {name: _Card(name) for name in ("As found", "Work", "Reconditioned", "Margin")}
        self.print_button = button("Print for the customer…", "main", self.print_report)
        self.missing.setMinimumHeight(36)
        self.side, self.gone = QScrollArea(), button("Remove", "quiet", self.remove)
        self.form.edited.connect(self._change)
        self.form.refused.connect(door.refused)
        self.chosen.currentIndexChanged.connect(lambda _n: self._show())
        self._lay_out()

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        kept = self.read(appraisals, self.outlook.planter)
        self.chosen.offer([(f"{one.name}, {one.on.isoformat()}", one.name) for one in kept])
        self._show()

    def begin(self) -> None:
        """Ask for a name and begin an appraisal by the latest price list."""
        name = self.asking.ask_text("A new appraisal", "Name, such as the customer's:")
        if name is None:
            return
        books = self.read(price_books)
        kept = attempt(
            self.door,
            lambda: KeptAppraisal(
                self.outlook.planter,
                name.strip(),
                date.today(),  # noqa: DTZ011
                prices=books[0].name if books else "",
                currency=books[0].prices().currency if books else "USD",
            ),
        )
        if kept is not None and self.door.push(PutAppraisal(kept)):
            self.chosen.choose(kept.name)

    def remove(self) -> None:
        """Remove the appraisal with its photos, after asking; undo brings it back."""
        kept = self.view.kept if self.view is not None else None
        if kept is not None and self.asking.confirm(
            f"Remove the appraisal “{kept.name}”?", "Its photos go with it. Undo brings it back."
        ):
            self.door.push(self.read(remove, kept))

    def attach(self) -> None:
        """Ask for a photo and attach it, with its file's name as its words."""
        path = self.asking.choose_file("Attach a photo", KINDS) if self.view else None
        view = self.view
        if path is None or view is None:
            return
        edit = attempt(self.door, lambda: attach(view, path.stem, read_photo(path)))
        if edit is not None:
            self.door.push(edit)

    def name_photo(self) -> None:
        """Ask for other words for the chosen photo."""
        digest = self.photos.chosen
        if digest is None:
            return
        before = self.read(photo, self._kept(), digest)
        words = self.asking.ask_text("The photo", "What it shows:", before.caption)
        if words is not None and words.strip() and words.strip() != before.caption:
            self.door.push(PutPhoto(replace(before, caption=words.strip()), before=before))

    def take_off(self) -> None:
        """Take the chosen photo off; undo brings it back."""
        digest = self.photos.chosen
        if digest is not None:
            self.door.push(PutPhoto(None, before=self.read(photo, self._kept(), digest)))

    def print_report(self) -> None:
        """Ask for a folder and write the report there."""
        view = self.view
        if view is None:
            return
        if view.appraised is None:
            self.door.refused.emit(view.says)
            return
        folder = self.asking.choose_folder("Folder for the report")
        if folder is None:
            return
        paper, units = self.paper.chosen or "A4", self.outlook.units
        path = attempt(self.door, lambda: self.read(write_report, view, folder, paper, units))
        if path is not None:
            self.asking.tell(f"The report is written: {path.name}", str(path.parent))

    def _kept(self) -> KeptAppraisal:
        if self.view is None:
            raise Refusal("No appraisal is chosen; begin one.")
        return self.view.kept

    def _change(self, wanted: KeptAppraisal) -> None:
        if self.view is not None and not self.door.push(
            PutAppraisal(wanted, before=self.view.kept)
        ):
            self._show()

    def _show(self) -> None:
        name, planter = self.chosen.chosen, self.outlook.planter
        self.view = self.read(appraisal_view, planter, name) if name else None
        shown = (
            self.rows,
            self.side,
            self.paper,
            self.print_button,
            self.gone,
            *self.cards.values(),
        )
        for one in shown:
            one.setVisible(self.view is not None)
        self.empty.setVisible(self.view is None)
        self.chosen.setVisible(bool(self.chosen.values))
        self.missing.setVisible(False)
        if self.view is not None:
            self._show_view(self.view)

    def _show_view(self, view: AppraisalView) -> None:
        self.form.show_kept(
            view.kept, self.read(inspections, view.kept.planter), self.read(price_books)
        )
        self.photos.show_photos(view.photos)
        self.model.show_rows(row_lines(view))
        missing = (view.says,) if view.says else unpriced_words(view.appraised)
        self.missing.show_lines(missing)
        values = dict(value_lines(view.appraised)) if view.appraised is not None else {}
        for name in ("As found", "Reconditioned"):
            self.cards[name].show_words(values.get(name, "–"), "your own value")
        self.cards["Work"].show_words(*work_words(view.appraised))
        self.cards["Margin"].show_words(*margin_words(view.appraised))

    def _lay_out(self) -> None:
        head, figures, column = QHBoxLayout(), QHBoxLayout(), QVBoxLayout()
        for box, width in ((self.chosen, 230), (self.paper, 88)):
            box.setFixedWidth(width)
            box.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        head.addWidget(self.chosen)
        head.addWidget(button("New appraisal…", clicked=self.begin))
        head.addWidget(self.gone)
        head.addStretch()
        head.addWidget(self.paper)
        head.addWidget(self.print_button)
        figures.setSpacing(8)
        for card in self.cards.values():
            figures.addWidget(card, 1)
        column.setContentsMargins(0, 0, 12, 12)
        column.setSpacing(10)
        column.addLayout(head)
        column.addWidget(self.empty)
        column.addLayout(figures)
        column.addWidget(self.missing)
        column.addWidget(self.rows, 1)
        body = QHBoxLayout(self)
        body.setContentsMargins(0, 0, 0, 0)
        body.setSpacing(0)
        body.addLayout(column, 1)
        body.addWidget(self._side())
        column.addStretch(0)

    def _side(self) -> QScrollArea:
        inside, column, line = QWidget(), QVBoxLayout(), QHBoxLayout()
        inside.setObjectName("side")
        inside.setLayout(column)
        column.setContentsMargins(16, 14, 14, 14)
        column.setSpacing(10)
        column.addWidget(self.form)
        column.addWidget(label("Photos", "title"))
        column.addWidget(self.photos, 1)
        line.addWidget(button("Attach…", clicked=self.attach))
        line.addWidget(button("Words…", clicked=self.name_photo))
        line.addWidget(button("Take off", "quiet", self.take_off))
        column.addLayout(line)
        self.side.setObjectName("side")
        self.side.setFixedWidth(SIDE_WIDTH)
        self.side.setWidgetResizable(True)
        self.side.setWidget(inside)
        return self.side


class _Card(QFrame):
    """One figure with its name and what it is made of."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setProperty("look", "ground-card")
        self.figure, self.detail = label("–", "title"), label(look="soft", wrap=True)
        self.detail.setMinimumHeight(28)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 8, 12, 8)
        column.setSpacing(2)
        column.addWidget(label(name, "heading"))
        column.addWidget(self.figure)
        column.addWidget(self.detail)

    def show_words(self, figure: str, detail: str) -> None:
        """Show a figure and the words below it."""
        self.figure.setText(figure)
        self.detail.setText(detail)
