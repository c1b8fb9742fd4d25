"""The clean-out log in every file, and its signatures on paper."""

from dataclasses import replace
from pathlib import Path

from openpyxl import load_workbook
from pypdf import PdfReader

from changeover.files.csv_sheets import write_csv_sheets
from changeover.files.printed_sheet import write_printed_sheet
from changeover.files.sheet import SheetLogLine
from changeover.files.workbook import HEAD_ROW, write_workbook
from tests.files.sheets import switch_sheet

LINE = SheetLogLine(
    "2026-05-04 07:12",
    "Ana",
    "rows 1–8",
    "Open meter",
    "lot H-9",
    "lot S-114",
    ("Brush the disc pocket", "Vacuum the housing out"),
    "lot H-9",
)
SEEN = replace(LINE, who="Cleo", inspection=True, steps=(), into="")
SHEET = replace(switch_sheet(), log=(LINE, SEEN), log_missing=("Sweep the floor: planter",))


def test_the_log_is_printed_with_what_is_missing_and_room_to_sign(tmp_path: Path) -> None:
    path = write_printed_sheet(SHEET, tmp_path / "w.pdf")
    text = " ".join(" ".join(page.extract_text().split()) for page in PdfReader(path).pages)
    for words in ("Clean-out log", "lot H-9 → lot S-114", "Brush the disc pocket", "Cleo"):
        assert words in text
    assert "Not done: Sweep the floor: planter" in text
    assert "Inspected by" in text


def test_the_workbook_has_a_sheet_for_the_log(tmp_path: Path) -> None:
    page = load_workbook(write_workbook(SHEET, tmp_path / "w.xlsx"))["Clean-out log"]
    done, seen, missing = [[c.value for c in row] for row in page.iter_rows(min_row=HEAD_ROW + 1)]
    assert done[:4] == ["2026-05-04 07:12", "Ana", "done", "rows 1–8"]
    assert done[7] == "Brush the disc pocket\nVacuum the housing out"
    assert (seen[1], seen[2]) == ("Cleo", "inspected")
    assert (missing[2], missing[4]) == ("not done", "Sweep the floor: planter")


def test_the_log_is_a_csv_file_of_its_own(tmp_path: Path) -> None:
    paths = write_csv_sheets(SHEET, tmp_path, "w")
    assert paths[-1].name == "w-clean-out-log.csv"
    assert "lot H-9" in paths[-1].read_text(encoding="utf-8-sig")


def test_a_log_of_many_lines_breaks_over_pages(tmp_path: Path) -> None:
    long = replace(SHEET, tasks=(), log=(LINE,) * 120)
    path = write_printed_sheet(long, tmp_path / "w.pdf")
    assert len(PdfReader(path).pages) > 3
