"""The price lists: imported whole from CSV or a workbook, looked at line by line."""

from datetime import date

from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout
from typing_extensions import override

from changeover.desk.appraise import PriceBook, import_prices, price_books
from changeover.desk.changed import Changed
from changeover.desk.shop_edits import PutPrices
from changeover.proof.money import minutes_text, money, rate_text
from changeover.proof.price_book import PriceLine
from changeover.quantities import how_many
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.door import Door
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Page, Read
from changeover.window.words import button, label

KINDS = "Price lists (*.csv *.xlsx)"
EXPLAINS = (
    "A price list is a table with the columns code, text, price and currency; if wanted also tax "
    "(percent), part (the part of the wear inspection that the line mends), each row and minutes. "
    "The code labour is the price of an hour. Nothing is built in, and nothing is guessed."
)
EMPTY = "No price list is there yet: import one to reckon parts and labour of an appraisal by it."
COLUMNS: tuple[Column[PriceLine], ...] = (
    Column("Code", lambda one: one.code),
    Column("Text", lambda one: one.text, wide=True),
    Column("Price", lambda one: money(one.amount, one.currency), number=True),
    Column("Mends", lambda one: one.part, wide=True),
    Column("Each row", lambda one: str(one.each) if one.part else "", number=True),
    Column("Labour", lambda one: minutes_text(one.minutes) if one.part else "", number=True),
)


class PricesView(Page):
    """Imports, shows and removes price lists."""

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.chosen: ChoiceBox[str] = ChoiceBox("Price list")
        self.books: tuple[PriceBook, ...] = ()
        self.model: ListModel[PriceLine] = ListModel(COLUMNS, door, outlook)
        self.view, self.says = ListView(self.model, "Prices"), label("", "soft", wrap=True)
        line, column = QHBoxLayout(), QVBoxLayout(self)
        self.chosen.setFixedWidth(230)
        self.chosen.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        line.addWidget(self.chosen)
        line.addWidget(self.says, 1)
        self.gone = button("Remove", "quiet", self.remove)
        line.addWidget(self.gone)
        line.addWidget(button("Import a price list…", "main", self.take_in))
        column.setContentsMargins(0, 0, 24, 16)
        column.setSpacing(10)
        column.addLayout(line)
        column.addWidget(label(EXPLAINS, "soft", wrap=True))
        column.addWidget(self.view, 1)
        column.addStretch(0)
        self.chosen.currentIndexChanged.connect(lambda _n: self._show())

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        self.books = self.read(price_books)
        self.chosen.offer([(one.name, one.name) for one in self.books])
        self._show()

    def take_in(self) -> None:
        """Ask for a file and import it whole; a bad one is named by line and column."""
        path = self.asking.choose_file("Import a price list", KINDS)
        if path is None:
            return
        today = date.today()  # noqa: DTZ011
        edit = attempt(self.door, lambda: self.read(import_prices, path, today))
        if edit is not None and self.door.push(edit) and edit.value is not None:
            self.chosen.choose(edit.value.name)

    def remove(self) -> None:
        """Remove the chosen list, after asking; one that is in use is refused."""
        book = self._book()
        if book is not None and self.asking.confirm(
            f"Remove the price list “{book.name}”?", "Undo brings it back."
        ):
            self.door.push(PutPrices(None, before=book))

    def _book(self) -> PriceBook | None:
        return next((one for one in self.books if one.name == self.chosen.chosen), None)

    def _show(self) -> None:
        book = self._book()
        self.model.show_rows(book.lines if book is not None else ())
        self.says.setText(EMPTY if book is None else book_words(book))
        for shown in (self.chosen, self.gone, self.view):
            shown.setVisible(book is not None)


def book_words(book: PriceBook) -> str:
    """Say of what day a price list is, its currencies, tax and labour."""
    hour = book.labour
    labour = f"labour {money(hour.amount, hour.currency)} an hour" if hour else "no labour rate"
    currencies = " and ".join(book.currencies)
    return (
        f"{book.on.isoformat()}, {currencies} before tax, tax {rate_text(book.tax)}, {labour}, "
        f"{how_many(len(book.lines), 'line')}"
    )
