"""The workbook: real types, widths, frozen header, print set-up, and no formula from text."""

import errno
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import Workbook, load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from changeover.files.formula_guard import clean_text
from changeover.files.workbook import HEAD_ROW, put, write_workbook
from changeover.quantities import Refusal
from tests.files.sheets import hostile_sheet, switch_sheet

SHEET = switch_sheet()
EVIL = '=HYPERLINK("http://x","y")'


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Workbook:
    path = tmp_path_factory.mktemp("book") / "w.xlsx"
    return load_workbook(write_workbook(SHEET, path))


def column(page: Worksheet, name: str) -> list[object]:
    heads = [cell.value for cell in page[HEAD_ROW]]
    number = heads.index(name) + 1
    return [page.cell(row, number).value for row in range(HEAD_ROW + 1, page.max_row + 1)]


def test_there_is_a_sheet_each_for_tasks_kit_settings_and_cautions(book: Workbook) -> None:
    assert book.sheetnames == ["Tasks", "Kit", "Settings", "Cautions"]
    assert column(book["Tasks"], "Task") == [task.title for task in SHEET.tasks]


def test_figures_are_numbers_and_the_day_is_a_date(book: Workbook) -> None:
    assert all(isinstance(value, int) for value in column(book["Tasks"], "No."))
    assert all(isinstance(value, int | float) for value in column(book["Tasks"], "Minutes"))
    assert column(book["Kit"], "Short") == [1, 0, None, None]
    assert column(book["Kit"], "On the shelf, to inspect") == [7, 0, None, None]
    assert book["Tasks"]["C2"].value.date() == SHEET.made_on


def test_quantities_are_figures_with_their_unit_beside(book: Workbook) -> None:
    page = book["Settings"]
    rows = zip(
        column(page, "Place"),
        column(page, "Setting"),
        column(page, "As found"),
        column(page, "Target"),
        column(page, "Unit"),
        column(page, "Differs"),
        strict=True,
    )
    kept = {row[:2]: row[2:] for row in rows}
    assert kept["fan 1", "Vacuum"] == (18, 12, "inH₂O", "yes")
    assert kept["row 3", "Depth"] == (2.25, 1.5, "in", "yes")
    assert kept["row 3", "Disc"] == ("C30", "S56", None, "yes")
    assert kept["row 3", "Singulator"] == ("1/2", "open", None, "yes")


@pytest.mark.parametrize("name", ["Tasks", "Kit", "Settings", "Cautions"])
def test_each_sheet_is_set_up_to_read_and_to_print(book: Workbook, name: str) -> None:
    page = book[name]
    assert page.freeze_panes == f"A{HEAD_ROW + 1}"
    assert page.print_title_rows == f"${HEAD_ROW}:${HEAD_ROW}"
    assert (page.page_setup.fitToWidth, page.page_setup.fitToHeight) == (1, 0)
    assert page.sheet_properties.pageSetUpPr.fitToPage
    assert "page &P of &N" in page.oddFooter.right.text
    assert all(dimension.width >= 5 for dimension in page.column_dimensions.values())


def test_tasks_print_across_and_on_the_paper_asked_for(tmp_path: Path) -> None:
    book = load_workbook(write_workbook(SHEET, tmp_path / "w.xlsx", paper="Letter"))
    setup = book["Tasks"].page_setup
    assert (setup.orientation, str(setup.paperSize)) == ("landscape", "1")


def test_text_that_looks_like_a_formula_stays_text(tmp_path: Path) -> None:
    book = load_workbook(write_workbook(hostile_sheet(EVIL), tmp_path / "w.xlsx"))
    cells = [cell for page in book for row in page.iter_rows() for cell in row]
    assert not [cell.coordinate for cell in cells if cell.data_type == "f"]
    assert len([cell for cell in cells if cell.value == EVIL]) >= 10
    assert all(cell.quotePrefix for cell in cells if cell.value == EVIL)


@given(st.text(min_size=1, max_size=30))
def test_no_text_becomes_a_formula_a_number_or_an_error(text: str) -> None:
    cell = Workbook().active["A1"]
    put(cell, text)
    assert (cell.data_type, cell.value) == ("s", clean_text(text))


def test_a_full_disk_leaves_neither_workbook_nor_half_a_zip_file(tmp_path, monkeypatch) -> None:
    def full(_path: Path, _content: bytes) -> int:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(Refusal, match="the disk is full"):
        write_workbook(SHEET, tmp_path / "w.xlsx")
    assert list(tmp_path.iterdir()) == []
