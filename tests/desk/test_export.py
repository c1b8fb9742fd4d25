"""The worklist goes out as workbook, CSV and printed sheets, all in one folder."""

import csv
from dataclasses import replace

import pytest
from openpyxl import load_workbook

from changeover.desk.door import apply
from changeover.desk.edits import PutPlanter
from changeover.desk.export import write_view, write_worklist
from changeover.desk.plan_switch import work_view_for
from changeover.quantities import Refusal
from changeover.store.values import NextJob

BAR = "Old Fiddle 24"


@pytest.fixture
def written(demo, tmp_path) -> dict[str, list[object]]:
    found: dict[str, list[object]] = {}
    for path in write_worklist(demo, BAR, tmp_path):
        found.setdefault(path.suffix, []).append(path)
    return found


def test_every_kind_of_file_is_written(written) -> None:
    counts = {suffix: len(paths) for suffix, paths in written.items()}
    assert counts == {".xlsx": 1, ".csv": 4, ".pdf": 2}
    assert all(path.stat().st_size > 100 for paths in written.values() for path in paths)


def test_the_workbook_holds_tasks_kit_settings_and_cautions(written) -> None:
    book = load_workbook(written[".xlsx"][0])
    assert book.sheetnames == ["Tasks", "Kit", "Settings", "Cautions", "Clean-out log"]
    book.close()


def test_the_csv_names_the_rows_of_the_meters(written) -> None:
    tasks = next(path for path in written[".csv"] if "tasks" in path.name)
    with tasks.open(encoding="utf-8-sig", newline="") as file:
        lines = list(csv.reader(file))
    assert any("C30 → S56" in " ".join(line) for line in lines)


def test_an_unsaved_plan_can_be_written_too(demo, tmp_path) -> None:
    view = work_view_for(demo, "Penny Twelve", NextJob("B-22", "Crow Strip"))
    paths = write_view(view, tmp_path, ("A4",))
    assert [path.suffix for path in paths].count(".pdf") == 1


def test_without_work_there_is_nothing_to_write(demo, tmp_path) -> None:
    with pytest.raises(Refusal, match="no work to write down"):
        write_worklist(demo, "Penny Twelve", tmp_path)


def test_a_missing_folder_is_named(demo, tmp_path) -> None:
    with pytest.raises(Refusal, match="gone"):
        write_worklist(demo, BAR, tmp_path / "gone")


def test_a_long_name_still_makes_a_file(demo, tmp_path) -> None:
    with demo.read() as work:
        planter = work.planters.get(BAR)
    renamed = replace(planter, name=("Long/Name " * 6).strip())
    apply(demo, PutPlanter(renamed, planter), "Ada")
    names = [path.name for path in write_worklist(demo, renamed.name, tmp_path)]
    assert names[0] == "worklist-long-name-long-name-long-name-y-208.xlsx"
