"""The printed timetable names every person and stint, and is whole or not there."""

from dataclasses import replace
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


def test_a_sheet_begins_with_the_cautions_and_tells_the_steps_of_each_task(tmp_path: Path) -> None:
    clean = replace(LINE, title="Clean out tank", steps=("open the gate", "vacuum the sump"))
    sheet = replace(SHEET, persons=(PersonSheet("Ann", (clean,)),))
    page = texts(write_timetable_sheet(sheet, tmp_path / "t.pdf"))[1]
    order = [page.index(word) for word in ("Ann", "Engine off", "Clean out", "open the", "sump")]
    assert order == sorted(order)


def test_long_work_breaks_between_tasks_and_leaves_the_cautions_whole(tmp_path: Path) -> None:
    every = tuple(replace(LINE, title=f"Task {n} x", steps=(f"step {n} y",)) for n in range(30))
    cautions = tuple(f"Caution {n}." for n in range(8))
    sheet = replace(SHEET, persons=(PersonSheet("Ann", every),), cautions=cautions)
    pages = texts(write_timetable_sheet(sheet, tmp_path / "t.pdf"))[1:]
    assert len(pages) > 2
    assert all(f"Caution {n}." in pages[0] for n in range(8))
    for n in range(30):
        (page,) = [page for page in pages if f"Task {n} x" in page]
        assert f"step {n} y" in page


def test_a_bar_too_short_for_its_words_bears_the_number_of_its_task(tmp_path: Path) -> None:
    short = replace(LINE, begin=500, end=503, short="furrow 1-13", number=19)
    sheet = replace(SHEET, persons=(PersonSheet("Ann", (LINE, short)), PersonSheet("Bo", ())))
    page = texts(write_timetable_sheet(sheet, tmp_path / "t.pdf"))[0].replace("\u00a0", " ")
    assert "Ann: 19 furrow 1-13" in page
    assert "…" not in page
