"""The CSV files: what a spreadsheet reads back, and no formula from text."""

import csv
import io
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from changeover.files.csv_sheets import csv_bytes, write_csv_sheets
from changeover.files.formula_guard import clean_text, starts_formula
from changeover.files.tables import Column, Table
from tests.files.sheets import hostile_sheet, switch_sheet

SHEET = switch_sheet()


def read(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


def test_tasks_kit_and_settings_are_a_file_each(tmp_path: Path) -> None:
    paths = write_csv_sheets(SHEET, tmp_path, "long-acre")
    assert [path.name for path in paths] == [
        "long-acre-tasks.csv",
        "long-acre-kit.csv",
        "long-acre-settings.csv",
    ]
    tasks, kit, settings = map(read, paths)
    assert [row["Task"] for row in tasks] == [task.title for task in SHEET.tasks]
    assert {row["Part"]: row["Short"] for row in kit} == {
        "low": "1",
        "S56": "0",
        "C30": "",
        "tall": "",
    }
    low = next(row for row in kit if row["Part"] == "low")
    assert (low["On the shelf"], low["On the shelf, to inspect"]) == ("23", "7")
    assert len(settings) == len(SHEET.settings)


def test_figures_are_plain_with_a_point(tmp_path: Path) -> None:
    settings = read(write_csv_sheets(SHEET, tmp_path, "w")[2])
    depth = next(row for row in settings if row["Setting"] == "Depth")
    assert (depth["As found"], depth["Target"], depth["Unit"]) == ("2.25", "1.5", "in")
    rate = next(row for row in settings if row["Setting"] == "Seed rate")
    assert (rate["As found"], rate["Target"]) == ("32000.0", "140000.0")


def test_hostile_text_is_guarded_in_every_file(tmp_path: Path) -> None:
    for path in write_csv_sheets(hostile_sheet("=cmd|' /C calc'!A1"), tmp_path, "w"):
        values = [value for row in read(path) for value in row.values()]
        assert not [value for value in values if starts_formula(value)]
        assert "'=cmd|' /C calc'!A1" in values


@given(st.lists(st.text(max_size=20), min_size=1, max_size=5))
def test_every_text_is_read_back_guarded(texts: list[str]) -> None:
    columns = tuple(Column(str(number), 5) for number in range(len(texts)))
    written = csv_bytes(Table("T", columns, (tuple(texts),))).decode("utf-8-sig")
    (_, row) = csv.reader(io.StringIO(written, newline=""))
    for text, value in zip(texts, row, strict=True):
        assert not starts_formula(value)
        assert value.removeprefix("'") == clean_text(text).removeprefix("'")


def test_a_negative_figure_stays_a_figure() -> None:
    table = Table("T", (Column("a", 5),), ((-1.5,),))
    assert csv_bytes(table).decode("utf-8-sig") == "a\r\n-1.5\r\n"
