"""Spacing tests are typed row by row in either way, judged in both conventions, and printed."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from PySide6.QtCore import Qt

from changeover.desk.prove.proofs import Proof, proofs
from changeover.desk.prove.spacing import spacing_of
from changeover.quantities import Q
from changeover.window.proof.spacing import SpacingView
from changeover.window.proof.spacing_words import POSITIONS
from tests.window.on_demo import OnDemo, on_demo

VECTOR = "18 20 22 19 17 2 20 41 18 21 23 19 20 6 14 40 22 18 61 20 19 21 17 20 24 18 22 20 19 21"


@pytest.fixture
def spacing(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, SpacingView) as put:
        put.page.enter()
        entry = put.page.entry
        entry.target.setText("20 cm")
        entry.target.setModified(True)
        entry.take_conditions()
        entry.unit.setCurrentText("cm")
        yield put


def type_figures(qtbot: Any, entry: Any, text: str) -> None:
    entry.figures.clear()
    qtbot.keyClicks(entry.figures, text)
    qtbot.keyClick(entry.figures, Qt.Key.Key_Return)


def test_a_row_is_judged_while_it_is_typed_and_taken_by_enter(spacing: OnDemo, qtbot: Any) -> None:
    entry = spacing.page.entry
    type_figures(qtbot, entry, VECTOR)
    assert spacing.page.judged.overall.counts == (2, 25, 2, 1, 0)
    assert entry.row.text() == "2"
    qtbot.keyClicks(entry.figures, "20 20 5")
    assert "Row 2: 3 spacings, 66.7 % single" in entry.says.text()


def test_both_conventions_are_shown_and_labelled(spacing: OnDemo, qtbot: Any) -> None:
    type_figures(qtbot, spacing.page.entry, VECTOR)
    model = spacing.page.model
    assert model.index(0, 3).data() == "83.3 %"
    assert "Shares of all spacings" in spacing.page.explained.text()
    spacing.page.show_convention(POSITIONS)
    assert model.index(0, 3).data() == "81.2 %"
    assert "where a seed should lie" in spacing.page.explained.text()


def test_places_on_the_tape_become_spacings(spacing: OnDemo, qtbot: Any) -> None:
    spacing.page.entry.sort.setCurrentIndex(1)
    type_figures(qtbot, spacing.page.entry, "0 20 41 60")
    assert spacing.page.entered.rows[1].magnitude.tolist() == [20, 21, 19]
    type_figures(qtbot, spacing.page.entry, "0 20 10")
    assert "Row 2: Position 3 (10) lies behind position 2 (20)" in spacing.page.entry.says.text()
    assert list(spacing.page.entered.rows) == [1]


def test_undo_takes_one_row_back(spacing: OnDemo, qtbot: Any) -> None:
    type_figures(qtbot, spacing.page.entry, VECTOR)
    spacing.door.stack.undo()
    assert spacing.page.entered.rows == {}


def test_a_test_is_saved_with_its_limits_and_a_poor_row_found(spacing: OnDemo, qtbot: Any) -> None:
    spacing.page.entry.take_provincial()
    type_figures(qtbot, spacing.page.entry, " ".join(["20", "41"] * 60))
    spacing.page.save()
    kept = spacing_of(proofs(spacing.store, spacing.outlook.planter, Proof.SPACING)[0])
    assert kept.limits.source.text.startswith("DB32/T 1023-2007")
    assert len(spacing.page.cards.cards) == 1
    spacing.door.stack.undo()
    assert len(spacing.page.draft.value.rows) == 1
    assert spacing.page.cards.cards == {}


def test_intervals_are_reckoned_behind_the_window(spacing: OnDemo, qtbot: Any) -> None:
    type_figures(qtbot, spacing.page.entry, VECTOR)
    with qtbot.waitSignal(spacing.page.work.done, timeout=10_000):
        spacing.page.reckon()
    each, whole = spacing.page.intervals
    assert 1 in each
    assert 0.83 in whole.quality_of_feed_by_spacings
    type_figures(qtbot, spacing.page.entry, VECTOR)
    assert spacing.page.intervals is None


def test_reckoning_intervals_can_be_stopped(spacing: OnDemo, qtbot: Any) -> None:
    many = {row: Q(np.full(3000, 20.0), "cm") for row in range(1, 25)}
    spacing.page.draft.push(type(spacing.page.entered)(Q(20.0, "cm"), many))
    with qtbot.waitSignal(spacing.page.work.failed, timeout=10_000) as told:
        spacing.page.reckon()
        spacing.page.reckon()
    assert "stopped" in told.args[0]
    assert spacing.page.intervals is None


def test_a_file_is_imported_and_the_report_printed(spacing: OnDemo, tmp_path: Path) -> None:
    path = tmp_path / "tape.csv"
    path.write_text("row,position (cm)\n1,0\n1,20\n1,61\n", encoding="utf-8")
    spacing.answers.folder = path
    spacing.page.import_file()
    assert spacing.page.entered.rows[1].magnitude.tolist() == [20, 41]
    spacing.answers.folder = tmp_path
    spacing.page.print_report()
    (printed,) = tmp_path.glob("spacing-*.pdf")
    assert printed.read_bytes().startswith(b"%PDF")


def test_the_histogram_follows_the_chosen_row(spacing: OnDemo, qtbot: Any) -> None:
    type_figures(qtbot, spacing.page.entry, VECTOR)
    type_figures(qtbot, spacing.page.entry, "20 20 20")
    spacing.page.table.selectRow(2)
    assert spacing.page.histogram.measures.n == 3
    assert spacing.page.of.text() == "Row 2"


def test_the_model_is_sound(spacing: OnDemo, qtbot: Any, qtmodeltester: Any) -> None:
    type_figures(qtbot, spacing.page.entry, VECTOR)
    qtmodeltester.check(spacing.page.model)
