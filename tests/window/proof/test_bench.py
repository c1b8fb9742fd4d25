"""Bench runs are entered by keyboard row after row, judged at once, undone and saved."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication

from changeover.desk.bench_runs import run_of
from changeover.desk.prove.proofs import Proof, proofs
from changeover.window.proof.bench import BenchView
from tests.window.on_demo import OnDemo, on_demo


@pytest.fixture
def bench(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, BenchView) as put:
        put.page.enter()
        for field in (put.page.entry.skip_most, put.page.entry.double_most):
            field.setText("3 %")
            field.setModified(True)
        put.page.entry.take_conditions()
        yield put


def type_row(qtbot: Any, entry: Any, *texts: str) -> None:
    """Type the fields of a row, Enter after each; the row is proposed and kept when empty."""
    for field, text in zip(entry.strip.fields, texts, strict=False):
        if text:
            field.selectAll()
            qtbot.keyClicks(field, text)
        qtbot.keyClick(field, Qt.Key.Key_Return)


def saved(bench: OnDemo) -> Any:
    return run_of(proofs(bench.store, bench.outlook.planter, Proof.BENCH)[0])


def test_rows_are_typed_one_after_another_and_judged_at_once(bench: OnDemo, qtbot: Any) -> None:
    entry = bench.page.entry
    type_row(qtbot, entry, "", "500", "2", "1")
    assert (entry.row.text(), entry.cells.text(), entry.skips.text()) == ("2", "500", "")
    type_row(qtbot, entry, "", "", "60", "1")
    assert [line.skips for line in bench.page.run.lines] == [2, 60]
    assert "Row 2 falls short" in entry.says.text()
    assert bench.page.plot.plot.attention == {2}


def test_the_row_being_typed_is_judged_before_it_is_taken(bench: OnDemo, qtbot: Any) -> None:
    entry = bench.page.entry
    entry.cells.setText("500")
    qtbot.keyClicks(entry.skips, "60")
    assert "falls short" in entry.says.text()
    assert bench.page.run.lines == ()


def test_a_meter_can_be_named_and_events_listed(bench: OnDemo, qtbot: Any) -> None:
    entry = bench.page.entry
    for field, text in zip(entry.strip.fields, ("OF-03", "250", "", "", "12s 68s 9d"), strict=True):
        field.setText(text)
    entry.take()
    (line,) = bench.page.run.lines
    assert (line.meter, line.skips, line.doubles) == ("OF-03", 2, 1)


def test_undo_takes_one_row_back_and_redo_brings_it_again(bench: OnDemo, qtbot: Any) -> None:
    type_row(qtbot, bench.page.entry, "", "500", "2", "1")
    bench.door.stack.undo()
    assert bench.page.run.lines == ()
    bench.door.stack.redo()
    assert len(bench.page.run.lines) == 1


def test_what_cannot_be_is_said_and_not_taken(bench: OnDemo, qtbot: Any) -> None:
    type_row(qtbot, bench.page.entry, "99", "500", "2", "1")
    assert "neither a row" in bench.page.entry.says.text()
    assert bench.page.run.lines == ()


def test_a_run_is_saved_with_its_findings_and_undo_brings_the_draft_back(
    bench: OnDemo, qtbot: Any
) -> None:
    type_row(qtbot, bench.page.entry, "", "500", "60", "1")
    bench.page.save()
    assert saved(bench).lines[0].skips == 60
    assert saved(bench).limits.skip_most == 0.03
    assert len(bench.page.cards.cards) == 1
    assert not bench.page.entering
    bench.door.stack.undo()
    assert bench.page.cards.cards == {}
    assert bench.page.draft.value.lines[0].skips == 60


def test_a_finding_is_made_a_task_by_its_button(bench: OnDemo, qtbot: Any) -> None:
    type_row(qtbot, bench.page.entry, "", "500", "60", "1")
    bench.page.save()
    (card,) = bench.page.cards.cards.values()
    qtbot.mouseClick(card.task, Qt.MouseButton.LeftButton)
    assert "On the worklist" in card.task.text()
    bench.door.stack.undo()
    assert card.task.text() == "Make it a task"


def test_cells_of_the_table_are_edited_and_a_row_is_taken_out(bench: OnDemo, qtbot: Any) -> None:
    type_row(qtbot, bench.page.entry, "", "500", "2", "1")
    model, table = bench.page.entry.model, bench.page.entry.table
    assert model.setData(model.index(0, 3), "7")
    assert bench.page.run.lines[0].skips == 7
    assert not model.setData(model.index(0, 3), "900")
    assert "more than the 500 cells" in bench.refused[-1]
    table.selectRow(0)
    qtbot.keyClick(table, Qt.Key.Key_Delete)
    assert bench.page.run.lines == ()


def test_a_block_is_pasted(bench: OnDemo) -> None:
    QGuiApplication.clipboard().setText("1\t250\t2\t1\n2\t250\t3\t0\n")
    bench.page.entry.paste()
    assert [line.row for line in bench.page.run.lines] == [1, 2]


def test_a_file_is_imported(bench: OnDemo, tmp_path: Path) -> None:
    path = tmp_path / "run.csv"
    path.write_text("row,cells,skips,doubles\n3,250,4,1\n", encoding="utf-8")
    bench.answers.folder = path
    bench.page.import_file()
    assert [line.row for line in bench.page.run.lines] == [3]


def test_the_report_is_printed(bench: OnDemo, qtbot: Any, tmp_path: Path) -> None:
    type_row(qtbot, bench.page.entry, "", "500", "60", "1")
    bench.page.print_report()
    (path,) = tmp_path.glob("bench-*.pdf")
    assert path.read_bytes().startswith(b"%PDF")


def test_the_model_is_sound(bench: OnDemo, qtbot: Any, qtmodeltester: Any) -> None:
    type_row(qtbot, bench.page.entry, "", "500", "2", "1")
    qtmodeltester.check(bench.page.entry.model)


def test_the_shown_run_is_chosen_and_the_meter_tells_its_history(bench: OnDemo, qtbot: Any) -> None:
    for skips in ("2", "3"):
        bench.page.enter()
        type_row(qtbot, bench.page.entry, "1", "500", skips, "1")
        bench.page.save()
    bench.page._choose(1)
    assert bench.page.run.lines[0].skips == 2
    serial = bench.page.run.lines[0].meter
    bench.page._show_meter(serial)
    lines = bench.page.side.history.text().splitlines()
    assert lines[-3].endswith("skips 0.6 %, doubles 0.2 %")
    assert lines[-2].startswith("Skips")
