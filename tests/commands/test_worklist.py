"""``changeover worklist`` writes the work to files and says the same on standard output."""

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook

from changeover.__main__ import main
from changeover.bundled import bundled

Answer = Callable[..., dict[str, Any]]

JOB = ("--planter", "Penny Twelve", "--lot", "Y-208", "--field", "Otter Flat")


def test_every_file_is_written(store: str, tmp_path: Path, answer: Answer) -> None:
    answered = answer("worklist", store, *JOB, "--out", str(tmp_path / "new" / "folder"))
    written = {Path(name).suffix for name in answered["files"]}
    assert written == {".xlsx", ".csv", ".pdf"}
    assert all(Path(name).stat().st_size > 100 for name in answered["files"])


def test_the_workbook_has_the_same_tasks(store: str, tmp_path: Path, answer: Answer) -> None:
    answered = answer("worklist", store, *JOB, "--out", str(tmp_path))
    (path,) = (name for name in answered["files"] if name.endswith(".xlsx"))
    page = load_workbook(path).worksheets[0]
    cells = {cell.value for row in page.iter_rows() for cell in row}
    assert {task["title"] for task in answered["tasks"]} <= cells


def test_clean_out_comes_before_the_swaps(store: str, tmp_path: Path, answer: Answer) -> None:
    tasks = answer("worklist", store, *JOB, "--out", str(tmp_path))["tasks"]
    numbers = {task["key"]: task["number"] for task in tasks}
    assert all(numbers[key] < task["number"] for task in tasks for key in task["needs"])
    tank = next(task for task in tasks if task["kind"] == "clean" and task["at"] == "tank")
    swaps = [task["number"] for task in tasks if task["parts_in"]]
    assert swaps
    assert tank["number"] < min(swaps)


def test_one_opening_of_a_meter_covers_its_work(store: str, tmp_path: Path, answer: Answer) -> None:
    tasks = answer("worklist", store, *JOB, "--out", str(tmp_path))["tasks"]
    at_meters = [t for t in tasks if t["at"] == "meter" and t["kind"] == "set"]
    rows = [place for task in at_meters for place in task["places"]]
    assert len(rows) == len(set(rows))
    assert sum(task["minutes"]["value"] for task in tasks) > 0


def test_only_changes_are_work(store: str, tmp_path: Path, answer: Answer) -> None:
    tasks = answer("worklist", store, *JOB, "--out", str(tmp_path))["tasks"]
    changes = [change for task in tasks for change in task["changes"]]
    assert changes
    assert all(change["from"] != change["to"] for change in changes)


def test_the_store_stays_as_it_was(store: str, tmp_path: Path, answer: Answer) -> None:
    first = answer("worklist", store, *JOB, "--out", str(tmp_path))
    assert answer("worklist", store, *JOB, "--out", str(tmp_path)) == first


def test_text_for_people(store: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["worklist", store, *JOB, "--out", str(tmp_path)]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].startswith("Tasks")
    assert sum(line.startswith("Written: ") for line in lines) == len(
        list(tmp_path.glob("worklist-*"))
    )


def test_a_file_in_the_way_of_the_folder_is_refused(
    store: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "taken").write_text("mine")
    assert main(["worklist", store, *JOB, "--out", str(tmp_path / "taken")]) == 2
    assert capsys.readouterr().err.count("\n") == 1
    assert (tmp_path / "taken").read_text() == "mine"


def test_clean_out_bags_and_supply_go_with_it(store: str, tmp_path: Path, answer: Answer) -> None:
    answered = answer("worklist", store, *JOB, "--out", str(tmp_path))
    cleaned = [tank for one in answered["clean_out"] for tank in one["tanks"]]
    assert len(cleaned) == len(set(cleaned)) == 12
    bagged = sum(part["count"] for bag in answered["bags"] for part in bag["parts"])
    assert bagged == sum(line["needed"] for line in answered["kit"])
    assert all(bag["person"] is None for bag in answered["bags"])
    mine = {one["part"]: one for one in answered["supply"] if one["planter"] == "Penny Twelve"}
    assert {line["part"] for line in answered["kit"]} == set(mine)
    for one in mine.values():
        assert one["needed"] == one["short"] + sum(s["count"] for s in one["sources"])


def test_with_a_crew_each_bag_has_its_person(store: str, tmp_path: Path, answer: Answer) -> None:
    crew = ("--crew", "Ann, Bo", "--at", "7:00")
    answered = answer("worklist", store, *JOB, "--out", str(tmp_path), *crew)
    assert {bag["person"] for bag in answered["bags"]} <= {"Ann", "Bo"}
    assert [one["name"] for one in answered["timetable"]["persons"]] == ["Ann", "Bo"]
    assert answered["timetable"]["begin"] == "7:00"


@pytest.fixture
def locked(tmp_path: Path) -> Iterator[str]:
    """Give a read-only store in a read-only folder."""
    yard = tmp_path / "yard"
    yard.mkdir()
    file = shutil.copyfile(bundled("demo.sqlite"), yard / "demo.sqlite")
    file.chmod(0o444)
    yard.chmod(0o555)
    yield str(file)
    yard.chmod(0o755)


def test_a_read_only_store_gives_its_worklist_and_proposal(
    locked: str, store: str, tmp_path: Path, answer: Answer
) -> None:
    assert answer("proposal", locked, *JOB) == answer("proposal", store, *JOB)
    answered = answer("worklist", locked, *JOB, "--out", str(tmp_path / "out"))
    assert {Path(name).suffix for name in answered["files"]} == {".xlsx", ".csv", ".pdf"}
    assert answered["tasks"] == answer("worklist", store, *JOB, "--out", str(tmp_path))["tasks"]
    assert [one.name for one in Path(locked).parent.iterdir()] == ["demo.sqlite"]


def test_text_kit_and_supply_say_the_same_shortage(
    store: str, tmp_path: Path, answer: Answer, capsys: pytest.CaptureFixture[str]
) -> None:
    answered = answer("worklist", store, *JOB, "--out", str(tmp_path))
    line = next(one for one in answered["kit"] if one["part"] == "S56")
    others = [one for one in answered["supply"] if one["part"] == "S56"]
    assert line["short"] + sum(one["short"] for one in line["others"]) == 12
    assert sum(one["short"] for one in others) == 12
    assert main(["worklist", store, *JOB, "--out", str(tmp_path)]) == 0
    said = next(t for t in capsys.readouterr().out.splitlines() if t.startswith("Short of parts"))
    assert "12 × S56 (23 to inspect, Old Fiddle 24 needs 15 too: 12 short)" in said


def test_text_and_json_number_the_tasks_in_the_order_of_work(
    store: str, tmp_path: Path, answer: Answer, capsys: pytest.CaptureFixture[str]
) -> None:
    tasks = answer("worklist", store, *JOB, "--out", str(tmp_path))["tasks"]
    assert main(["worklist", store, *JOB, "--out", str(tmp_path)]) == 0
    lines = [t.split(maxsplit=1) for t in capsys.readouterr().out.splitlines() if t[:3].strip()]
    said = [(int(first), rest) for first, rest in lines if first.isdecimal()]
    assert [number for number, _ in said] == [task["number"] for task in tasks]
    assert all(rest.startswith(task["title"]) for (_, rest), task in zip(said, tasks, strict=True))
