"""The Trade-in page: an appraisal is begun, typed, pictured and printed; two stand side by side."""

from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QImage

from changeover.desk.appraise import appraisals, price_books, remove
from changeover.desk.shop_edits import PutAppraisal, PutPrices
from changeover.window.appraisal.page import TradeInPage
from changeover.window.appraisal.photos import read_photo
from changeover.window.page import EVERYTHING
from tests.desk.trade_in import DAY, FIDDLE, KEPT, MAGPIE, PENNY, inspect, kept, price_file
from tests.window.on_demo import OnDemo, on_demo


@pytest.fixture
def trade(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    """Give the page with an appraisal of Penny Twelve that has three worn rows."""
    with on_demo(qtbot, tmp_path, TradeInPage, PENNY) as put:
        kept(put.store, tmp_path)
        put.page.refresh(EVERYTHING)
        put.page.one.chosen.choose("spring")
        put.page.prices.chosen.choose("shop")
        yield put


@pytest.fixture
def empty(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    """Give the page on a planter that was neither inspected nor appraised."""
    with on_demo(qtbot, tmp_path, TradeInPage, FIDDLE) as put:
        yield put


class OneFile:
    """Answers that choose one file."""

    def __init__(self, put: OnDemo, path: Path) -> None:
        put.page.one.asking = put.page.prices.asking = self
        self.path, self.told = path, list[str]()

    def choose_file(self, _title: str, _kinds: str) -> Path:
        return self.path


def picture(path: Path, width: int = 400, height: int = 300) -> Path:
    image = QImage(width, height, QImage.Format.Format_RGB32)
    image.fill(QColor("#446688"))
    assert image.save(str(path))
    return path


def kept_now(put: OnDemo) -> Any:
    return next(one for one in appraisals(put.store, PENNY) if one.name == "spring")


def names(put: OnDemo) -> set[str]:
    return {one.name for one in appraisals(put.store, PENNY)}


def type_in(put: OnDemo, field: str, text: str) -> None:
    line = getattr(put.page.one.form, field)
    line.setText(text)
    line.editingFinished.emit()


def test_the_models_are_sound(trade: OnDemo, qtmodeltester: Any) -> None:
    for view in (trade.page.one, trade.page.beside, trade.page.prices):
        qtmodeltester.check(view.model)


def test_rows_are_listed_with_mark_word_work_and_sum(trade: OnDemo) -> None:
    rows = trade.page.one.model.rows
    assert [one.name for one in rows if one.loud] == ["3", "7", "11"]
    assert (rows[2].condition, rows[2].work) == ("✕ replace", "2 × Opener disc (D-15)")
    assert (rows[2].total, rows[0].condition) == ("171.41 USD", "✓ good")
    assert trade.page.one.cards["Work"].figure.text() == "514.24 USD"


def test_the_dealers_values_give_the_margin_and_are_undone(trade: OnDemo) -> None:
    type_in(trade, "as_found", "40,000")
    type_in(trade, "reconditioned", "42 000.50")
    assert kept_now(trade).reconditioned == Decimal("42000.50")
    assert trade.page.one.cards["Margin"].figure.text() == "1\u202f519.90 USD"
    trade.door.stack.undo()
    assert kept_now(trade).reconditioned is None
    assert trade.page.one.form.reconditioned.text() == ""


@pytest.mark.parametrize("text", ["41,5", "lots", "-3", "1e9"])
def test_an_amount_that_is_none_is_refused_and_never_guessed(trade: OnDemo, text: str) -> None:
    type_in(trade, "as_found", text)
    assert "is not an amount" in trade.refused[-1]
    assert kept_now(trade).as_found is None


def test_an_untouched_amount_keeps_its_digits(trade: OnDemo) -> None:
    before = kept_now(trade)
    exact = Decimal("40000.125")
    trade.door.push(PutAppraisal(type(before)(**{**vars(before), "as_found": exact}), before))
    type_in(trade, "currency", "EUR")
    assert (kept_now(trade).as_found, kept_now(trade).currency) == (exact, "EUR")


def test_a_currency_that_is_none_is_refused(trade: OnDemo) -> None:
    type_in(trade, "currency", "dollars")
    assert "three letters" in trade.refused[-1]
    assert kept_now(trade).currency == "USD"


def test_an_appraisal_is_begun_by_name_and_removed_with_its_photos(
    trade: OnDemo, tmp_path: Path
) -> None:
    trade.answers.texts = ["for Bea"]
    trade.page.one.begin()
    assert trade.page.one.view.kept.name == "for Bea"
    OneFile(trade, picture(tmp_path / "row 3.jpg"))
    trade.page.one.attach()
    trade.page.one.asking = trade.answers
    trade.page.one.remove()
    assert "for Bea" not in names(trade)
    trade.door.stack.undo()
    trade.page.one.chosen.choose("for Bea")
    assert trade.page.one.photos.count() == 1


def test_without_an_appraisal_the_page_says_how_to_begin(empty: OnDemo) -> None:
    assert empty.page.one.empty.isVisibleTo(empty.page.one)
    empty.answers.texts = ["  "]
    empty.page.one.begin()
    assert "has no name" in empty.refused[-1]
    empty.page.one.print_report()
    assert appraisals(empty.store, FIDDLE) == ()


def test_where_there_is_nothing_to_choose_the_page_says_so_and_what_to_do(
    qtbot: Any, tmp_path: Path
) -> None:
    with on_demo(qtbot, tmp_path, TradeInPage, FIDDLE) as put:
        for one in appraisals(put.store):
            put.door.push(remove(put.store, one))
        for book in price_books(put.store):
            put.door.push(PutPrices(None, before=book))
        put.page.refresh(EVERYTHING)
        one, beside, prices = put.page.one, put.page.beside, put.page.prices
        assert not one.chosen.isVisibleTo(one)
        assert not beside.one.isVisibleTo(beside)
        assert not prices.chosen.isVisibleTo(prices)
        assert "there is none yet. Choose a planter above" in beside.says.text()
        assert "No price list is there yet: import one" in prices.says.text()
        assert "begin an appraisal here" in one.empty.text()


def test_of_one_appraisal_alone_it_is_said_which_it_is(trade: OnDemo) -> None:
    for one in appraisals(trade.store):
        if one.name != "spring":
            trade.door.push(remove(trade.store, one))
    trade.page.refresh(EVERYTHING)
    beside = trade.page.beside
    assert "there is one: Penny Twelve, spring" in beside.says.text()
    assert not beside.choices.isVisibleTo(beside)


def test_what_is_missing_is_said_in_place(empty: OnDemo) -> None:
    empty.answers.texts = ["for Bea"]
    empty.page.one.begin()
    assert "has no wear inspection" in empty.page.one.missing.words.text()
    inspect(empty.store, FIDDLE, 3)
    empty.page.refresh(EVERYTHING)
    empty.page.one.form.prices.choose("")
    assert "no price list is chosen" in empty.page.one.missing.words.text()


def test_photos_are_attached_worded_and_taken_off(trade: OnDemo, tmp_path: Path) -> None:
    one = trade.page.one
    OneFile(trade, picture(tmp_path / "row 3.jpg"))
    one.attach()
    assert one.photos.item(0).text() == "row 3"
    one.asking = trade.answers
    one.photos.setCurrentRow(0)
    trade.answers.texts = ["Row 3, disc worn"]
    one.name_photo()
    assert one.view.photos[0].caption == "Row 3, disc worn"
    one.take_off()
    assert one.photos.count() == 0
    trade.door.stack.undo()
    assert one.photos.item(0).text() == "Row 3, disc worn"


def test_a_large_photo_is_made_smaller_and_stays_in_shape(qapp: Any, tmp_path: Path) -> None:
    content = read_photo(picture(tmp_path / "large.jpg", 4000, 3000))
    image = QImage.fromData(content)
    assert (image.width(), image.height()) == (2000, 1500)
    assert content.startswith(b"\xff\xd8\xff")


@pytest.mark.parametrize("name", ["notes.jpg", "photo.bmp", "none.png"])
def test_what_is_no_photo_is_refused(trade: OnDemo, tmp_path: Path, name: str) -> None:
    if name == "notes.jpg":
        (tmp_path / name).write_text("no photo")
    elif name == "photo.bmp":
        picture(tmp_path / name)
    OneFile(trade, tmp_path / name)
    trade.page.one.attach()
    assert name in trade.refused[-1]
    assert trade.page.one.view.photos == ()


def test_the_report_is_printed_to_a_folder(trade: OnDemo, tmp_path: Path) -> None:
    trade.page.one.paper.choose("Letter")
    trade.page.one.print_report()
    assert (tmp_path / "appraisal-penny-twelve-spring-letter.pdf").stat().st_size > 1000
    assert "The report is written" in trade.answers.told[-1]


def test_another_price_list_is_chosen_in_the_form(trade: OnDemo, tmp_path: Path) -> None:
    path = price_file(tmp_path).rename(tmp_path / "dear.csv")
    path.write_text(path.read_text().replace("61.35", "100"), encoding="utf-8")
    OneFile(trade, path)
    trade.page.prices.take_in()
    trade.page.one.form.prices.choose("dear")
    assert trade.page.one.view.appraised.totals[0].parts == Decimal(600)


def test_a_bad_price_list_is_named_by_line_and_nothing_is_imported(
    trade: OnDemo, tmp_path: Path
) -> None:
    before = price_books(trade.store)
    OneFile(trade, price_file(tmp_path, "X,x,much,USD,7,,,"))
    trade.page.prices.take_in()
    assert "shop.csv: line 5, column 3 (price)" in trade.refused[-1]
    assert price_books(trade.store) == before


def test_prices_say_currency_tax_and_labour(trade: OnDemo) -> None:
    says = trade.page.prices.says.text()
    for words in ("USD before tax", "tax 7 %", "labour 90.00 USD an hour", "3 lines"):
        assert words in says


def test_a_price_list_in_use_is_not_removed(trade: OnDemo) -> None:
    trade.page.prices.remove()
    assert "is used in the appraisal spring" in trade.refused[-1]
    before = trade.page.one.view.kept
    trade.door.push(PutAppraisal(type(KEPT)(**{**vars(before), "prices": ""}), before))
    trade.page.prices.remove()
    assert "shop" not in [one.name for one in price_books(trade.store)]
    trade.door.stack.undo()
    assert isinstance(trade.door.latest, PutPrices)


def choose_two(trade: OnDemo) -> None:
    trade.door.push(PutAppraisal(type(KEPT)(MAGPIE, "spring", DAY, prices="shop")))
    beside = trade.page.beside
    beside.one.choose((PENNY, "spring"))
    beside.other.choose((MAGPIE, "spring"))


def test_one_appraisal_is_not_enough(trade: OnDemo) -> None:
    for planter, name in ((PENNY, "spring sale"), (MAGPIE, "spring sale")):
        found = next(one for one in appraisals(trade.store, planter) if one.name == name)
        trade.door.push(PutAppraisal(None, before=found))
    assert "Two appraisals are needed" in trade.page.beside.says.text()
    assert trade.page.beside.model.rows == ()


def test_two_planters_stand_side_by_side(trade: OnDemo, tmp_path: Path) -> None:
    inspect(trade.store, MAGPIE, 2)
    choose_two(trade)
    model = trade.page.beside.model
    heads = [model.headerData(n, Qt.Orientation.Horizontal) for n in (1, 2)]
    assert heads == [PENNY, MAGPIE]
    assert ("Work, sum with tax", "514.24 USD", "171.41 USD") in model.rows
    assert trade.page.beside.says.text() == "Penny Twelve takes more work in USD."


def test_both_are_printed_side_by_side(trade: OnDemo, tmp_path: Path) -> None:
    inspect(trade.store, MAGPIE, 2)
    choose_two(trade)
    trade.page.beside.print_both()
    written = sorted(path.name for path in tmp_path.glob("appraisal-penny-twelve-spring-*.pdf"))
    assert [name[-7:] for name in written] == ["-a4.pdf", "ter.pdf"]
    assert "The report is written" in trade.answers.told[-1]


def test_one_that_cannot_be_reckoned_says_why(trade: OnDemo) -> None:
    choose_two(trade)
    before = next(one for one in appraisals(trade.store, MAGPIE) if one.name == "spring")
    early = type(KEPT)(**{**vars(before), "on": date(2024, 1, 1)})
    trade.door.push(PutAppraisal(early, before))
    assert "Magpie 31 has no wear inspection" in trade.page.beside.says.text()
    assert trade.page.beside.model.rows == ()
