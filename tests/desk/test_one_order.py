"""One order and one numbering of the tasks on paper, in files and without the window."""

import csv
from pathlib import Path

import pytest
from openpyxl import load_workbook
from pypdf import PdfReader

from changeover.commands.worklist import worklist_json
from changeover.desk.export import write_view
from changeover.desk.plan_switch import WorkView, work_view
from changeover.store.opening import Store


@pytest.fixture
def view(demo: Store) -> WorkView:
    return work_view(demo, "Old Fiddle 24")


@pytest.fixture
def files(view: WorkView, tmp_path: Path) -> list[Path]:
    return list(write_view(view, tmp_path))


def said(view: WorkView) -> list[tuple[int, str]]:
    return [(task["number"], task["title"]) for task in worklist_json(view)["tasks"]]


def test_the_json_follows_the_order_of_work(view: WorkView) -> None:
    assert said(view) == list(enumerate((t.title for t in view.worklist.tasks), start=1))


def test_csv_and_workbook_number_the_tasks_alike(view: WorkView, files: list[Path]) -> None:
    path = next(f for f in files if f.name.endswith("tasks.csv") or "task" in f.stem)
    with path.open(encoding="utf-8-sig", newline="") as lines:
        rows = [row for row in csv.reader(lines) if row and row[0].isdigit()]
    titles = [title for _, title in said(view)]
    assert [(int(row[0]), next(c for c in row if c in titles)) for row in rows] == said(view)
    book = load_workbook(next(f for f in files if f.suffix == ".xlsx"))
    cells = [[c.value for c in row] for row in book.worksheets[0].iter_rows()]
    there = [row for row in cells if isinstance(row[0], int) and set(row) & set(titles)]
    found = [(row[0], next(c for c in row if c in titles)) for row in there]
    assert found == said(view)


def test_the_printed_sheet_numbers_the_tasks_alike(view: WorkView, files: list[Path]) -> None:
    reader = PdfReader(next(f for f in files if f.name.endswith("a4.pdf")))
    text = bare("".join(page.extract_text() for page in reader.pages))
    found = [text.index(bare(f"{number}. {title}")[:20]) for number, title in said(view)]
    assert found == sorted(found)


def bare(text: str) -> str:
    return "".join(text.split())
