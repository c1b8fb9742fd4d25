"""Tuning in the window: counts typed, pasted or opened, fitted, drawn, and taken as the target."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QItemSelectionModel
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget

from changeover.desk.board import read_board
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.quantities import Q, Refusal, Units
from changeover.seed.bench_counts import Reading
from changeover.seed.tuning_advice import Verdict
from changeover.window.seed.page import SeedPage
from changeover.window.tuning.figures import runs_of, tuning_figures
from changeover.window.tuning.plot import levels_shown, percent_shown, ticks
from changeover.window.tuning.rows import copied, pasted, read_run, read_runs_typed, rows_of
from changeover.window.tuning.view import TuningDialog, TuningView
from tests.window.on_demo import OnDemo, on_demo

COUNTS = ((8.0, 60, 1), (10.0, 25, 4), (12.0, 9, 9), (15.0, 2, 25), (18.0, 1, 60))
PASTED = "row\tvacuum\tcells\tskips\tdoubles\n7\t8\t300\t30\t1\n7\t18\t300\t0\t24\n"


class Here:
    """Does at once what a pool would do elsewhere."""

    def start(self, job: Any) -> None:
        job()


@pytest.fixture
def seed(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, SeedPage) as put:
        yield put


@pytest.fixture
def view(seed: OnDemo, qtbot: Any) -> TuningView:
    made = TuningView(seed.door, seed.outlook, seed.answers, Here())
    qtbot.addWidget(made)
    return made


def runs(meter: str = "1", position: str = "") -> tuple[Reading, ...]:
    return tuple(
        Reading(meter, Q(level, "inH2O"), 500, skips, doubles, position)
        for level, skips, doubles in COUNTS
    )


def fitted(view: TuningView, qtbot: Any, *every: Reading) -> None:
    view.show_runs(every)
    view.refit()
    qtbot.waitUntil(lambda: view.tuned is not None and not view.take.text().startswith("Counts"))


def test_an_empty_table_says_what_to_do(view: TuningView) -> None:
    assert "type or paste counts" in view.verdict.text()
    assert not view.take.isEnabled()


def test_counts_are_fitted_and_said(view: TuningView, qtbot: Any) -> None:
    fitted(view, qtbot, *runs("1"), *runs("2"))
    assert view.advice.verdict is Verdict.FOUND
    assert view.head.text().startswith("Best 12.")
    assert "Gain over the present level" in view.below.text()
    assert view.which.count() == 3
    assert view.plot.figures.best == pytest.approx(12.0, abs=1.0)


def test_the_best_level_becomes_the_target_of_a_fan_and_undo_takes_it_back(
    view: TuningView, seed: OnDemo, qtbot: Any
) -> None:
    cells = [Cell("vacuum", Place(Scope.FAN, f"fan {n}")) for n in (1, 2)]
    before = [seed.outlook.board.target.get(cell) for cell in cells]
    fitted(view, qtbot, *runs())
    view.fans.setCurrentIndex(2)
    view.take_target()
    target = read_board(seed.store, "Old Fiddle 24", proposal=False).target
    assert target.get(cells[0]) == before[0]
    assert target.get(cells[1]).to("inH2O").magnitude == pytest.approx(12.2, abs=0.6)
    assert "Target is" in view.take.text()
    seed.door.stack.undo()
    after = read_board(seed.store, "Old Fiddle 24", proposal=False).target
    assert [after.get(cell) for cell in cells] == before


def test_one_level_cannot_decide_and_says_which_to_try(view: TuningView, qtbot: Any) -> None:
    fitted(view, qtbot, runs()[0])
    assert "one level only" in view.head.text()
    assert "Next level to try: 10.0 inH₂O" in view.below.text()
    assert not view.take.isEnabled()


def test_a_wrong_count_is_said_with_its_line(view: TuningView, qtbot: Any) -> None:
    view.show_runs((*runs(), runs()[0]))
    view.model.setData(view.model.index(2, 3), "600")
    qtbot.waitUntil(lambda: "Line 3" in view.verdict.text())
    assert "more than the 500 cells" in view.verdict.text()
    assert view.model.wrong(2)
    assert not view.model.wrong(1)


def choose_row(view: TuningView, row: int) -> None:
    """Choose one row whatever keys an earlier test has left pressed."""
    flags = QItemSelectionModel.SelectionFlag
    there = view.model.index(row, 0)
    view.table.selectionModel().select(there, flags.ClearAndSelect | flags.Rows)


def test_a_block_from_a_spreadsheet_is_pasted_without_its_heading(
    view: TuningView, qtbot: Any
) -> None:
    QGuiApplication.clipboard().setText(PASTED)
    view.table.setCurrentIndex(view.model.index(0, 0))
    view.table.paste()
    assert view.model.rows[:2] == [
        ("7", "8", "300", "30", "1", ""),
        ("7", "18", "300", "0", "24", ""),
    ]
    qtbot.waitUntil(lambda: view.tuned is not None)
    choose_row(view, 0)
    view.table.copy()
    assert QGuiApplication.clipboard().text() == "7\t8\t300\t30\t1\t\n"
    view.table.clear()
    assert [row[1] for row in view.model.rows] == ["18", ""]


def test_typing_in_the_last_line_adds_another(view: TuningView) -> None:
    view.model.setData(view.model.index(0, 0), "3")
    assert view.model.rowCount() == 2


def test_the_model_holds_to_the_rules_of_models(view: TuningView, qtmodeltester: Any) -> None:
    view.show_runs(runs())
    qtmodeltester.check(view.model)


def test_a_file_is_opened_and_a_wrong_one_refused(
    view: TuningView, seed: OnDemo, tmp_path: Path
) -> None:
    path = tmp_path / "runs.csv"
    path.write_text("meter,vacuum (kPa),cells,skips,doubles\nA,2.5,300,9,1\nA,4,300,2,6\n")
    seed.answers.folder = path
    view.open_file()
    assert view.model.rows[0][:3] == ("A", "10.0", "300")
    path.write_text("meter,vacuum (kPa),cells,skips\nA,2.5,300,9\n")
    view.open_file()
    assert "doubles" in seed.refused[0]
    assert view.model.rows[0][0] == "A"


def test_other_units_keep_the_levels_typed(view: TuningView, seed: OnDemo, qtbot: Any) -> None:
    fitted(view, qtbot, *runs())
    seed.outlook.show_units(Units.METRIC)
    view.show_units()
    qtbot.waitUntil(lambda: "kPa" in view.head.text())
    assert view.model.rows[0][1] == "8.0 inH₂O"
    assert view.plot.figures.unit == "kPa"


def test_singulator_positions_are_compared(view: TuningView, qtbot: Any) -> None:
    worse = (replace(run, skips=run.skips + 90) for run in runs("1", "1/2"))
    fitted(view, qtbot, *runs("1", "open"), *worse)
    assert "Position open" in view.below.text()
    assert {run.position for run in runs_of(view.runs, None, view.tuned)} == {"open"}
    named = runs_of(view.runs, "1, 1/2", view.tuned)
    assert {run.position for run in named} == {"1/2"}


def test_figures_hold_every_count_and_the_curves_between(view: TuningView, qtbot: Any) -> None:
    fitted(view, qtbot, *runs())
    figures = tuning_figures(runs(), view.advice, Q(18.0, "inH2O"), Units.US)
    percents = [point.percent for point in figures.skips.points]
    assert percents == pytest.approx([12.0, 5.0, 1.8, 0.4, 0.2])
    assert all(point.low <= point.percent <= point.high for point in figures.doubles.points)
    assert figures.total[40][1] == pytest.approx(
        figures.skips.curve[40][1] + figures.doubles.curve[40][1]
    )
    assert figures.best_low <= figures.best <= figures.best_high
    low, high = levels_shown(figures)
    assert low < 8.0 < 18.0 < high
    assert percent_shown(figures) >= max(point.high for point in figures.skips.points)


def test_the_plot_paints_in_both_states(view: TuningView, qtbot: Any) -> None:
    view.resize(900, 500)
    empty = view.plot.grab().toImage()
    fitted(view, qtbot, *runs())
    assert view.plot.grab().toImage() != empty
    assert view.plot.accessibleName().startswith("Best")


def test_ticks_are_few_and_within() -> None:
    for span in (0.7, 3.0, 12.0, 44.0, 100.0):
        found = list(ticks(0.0, span))
        assert 3 <= len(found) <= 6
        assert found[-1] <= span + 1e-9


@pytest.mark.parametrize(
    ("row", "match"),
    [
        (("", "8", "300", "1", "1"), "row or meter is missing"),
        (("1", "0", "300", "1", "1"), "above zero"),
        (("1", "8 mph", "300", "1", "1"), "not a unit of pressure"),
        (("1", "8", "many", "1", "1"), "no whole number"),
        (("1", "8", "300", "200", "200"), "more than"),
    ],
)
def test_a_run_that_cannot_be_is_refused(row: tuple[str, ...], match: str) -> None:
    with pytest.raises(Refusal, match=rf"Line 4.*{match}"):
        read_run(row, 4, Units.US)


def test_rows_and_runs_are_each_others_reverse() -> None:
    typed = rows_of(runs("12", "open"), Units.US)
    assert tuple(replace(run, where="") for run in read_runs_typed(typed, Units.US)) == runs(
        "12", "open"
    )
    assert pasted(copied(typed)) == typed


@pytest.mark.parametrize("mark", ["\t", ";", ","])
def test_pasted_text_is_split_at_its_own_mark(mark: str) -> None:
    text = mark.join(("1", "8 inH2O", "300", "2", "3"))
    assert pasted(f"{text}\n\n{text}") == (("1", "8 inH2O", "300", "2", "3"),) * 2


def test_the_seed_page_opens_it_from_the_vacuum_line(seed: OnDemo) -> None:
    seed.page.cards.choose("vacuum")
    seed.page.side.tune.click()
    dialog = seed.page.findChild(TuningDialog)
    assert isinstance(dialog, QWidget)
    dialog.close()
