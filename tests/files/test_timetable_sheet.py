"""The printed timetable names every person and stint, and is whole or not there."""

from datetime import date
from pathlib import Path

import pytest
from pypdf import PdfReader

from changeover.files.sheet import SheetPlace
from changeover.files.timetable_lines import PersonSheet, StintLine, TimetableSheet
from changeover.files.timetable_sheet import write_timetable_sheet
from changeover.quantities import Refusal

LINE = StintLine(
    420, 500, "7:00-8:20", "Open meter, disc C30 → S56", "meters 1-2",
    (SheetPlace("1"), SheetPlace("2", done=True)), "power off · seed vacuum",
)  # fmt: skip
SHEET = TimetableSheet(
    "Long Acre 24",
    "Soybean lot S-114",
    "shortest possible: 1 h 20 min, proven",
    (PersonSheet("Ann", (LINE,)), PersonSheet("Bo", ())),
    ("Engine off, key out.",),
    date(2026, 5, 4),
)


def texts(path: Path) -> list[str]:
    return [page.extract_text() for page in PdfReader(path).pages]


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_an_overview_and_one_page_for_each_person_with_work(tmp_path: Path, paper: str) -> None:
    pages = texts(write_timetable_sheet(SHEET, tmp_path / "t.pdf", paper=paper))
    assert len(pages) == 2
    assert "shortest possible: 1 h 20 min, proven" in pages[0]
    assert all(word in pages[0] for word in ("Ann", "Bo", "meters 1-2", "Engine off"))
    assert all(word in pages[1] for word in ("7:00-8:20", "disc C30 → S56", "seed vacuum"))


def test_an_empty_timetable_and_other_paper_are_refused(tmp_path: Path) -> None:
    empty = TimetableSheet("Bar", "", "", (PersonSheet("Ann", ()),), (), date(2026, 5, 4))
    with pytest.raises(Refusal, match="no work to print"):
        write_timetable_sheet(empty, tmp_path / "t.pdf")
    with pytest.raises(Refusal, match="Paper “A3”"):
        write_timetable_sheet(SHEET, tmp_path / "t.pdf", paper="A3")
    assert list(tmp_path.iterdir()) == []
