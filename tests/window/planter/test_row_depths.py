"""The depth page of a planter's form: each row's own line is shown, typed over and taken back."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt

from changeover.desk.board import read_board
from changeover.planter.scales import DepthScale, DugLine
from changeover.quantities import Q, Units
from changeover.window.planter.form import PlanterForm
from changeover.window.planter.page import PlantersPage
from changeover.window.planter.row_depths import RowDepths
from tests.window.on_demo import OnDemo, on_demo

NAME = "Penny Twelve"
DUG = DugLine(8, 6.0, 32.0, Q(1.0, "mm"))
SCALE = DepthScale(Q(0.5, "in"), Q(0.25, "in"), 13).with_row(2, Q(0.123456, "in"), Q(6, "mm"), DUG)
DEEPER, STEP, PLANTS, BY = 1, 2, 3, 4


@pytest.fixture
def fleet(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, PlantersPage) as put:
        yield put


@pytest.fixture
def rows(fleet: OnDemo, qtbot: Any) -> RowDepths:
    made = RowDepths(fleet.outlook)
    qtbot.addWidget(made)
    made.show_scale(SCALE, 4)
    return made


def text(rows: RowDepths, row: int, column: int) -> str:
    return str(rows.model.index(row - 1, column).data())


def write(rows: RowDepths, row: int, column: int, typed: str) -> bool:
    return rows.model.setData(rows.model.index(row - 1, column), typed)


def form_for(fleet: OnDemo, qtbot: Any) -> PlanterForm:
    planter = read_board(fleet.store, NAME, proposal=False).planter
    form = PlanterForm(planter, fleet.door, fleet.outlook, fleet.page)
    qtbot.addWidget(form)
    return form


def test_the_model_is_sound(rows: RowDepths, qtmodeltester: Any) -> None:
    qtmodeltester.check(rows.model)


def test_a_row_with_its_own_line_says_what_it_is_and_rests_on(rows: RowDepths) -> None:
    assert [text(rows, 2, one) for one in (DEEPER, STEP, PLANTS, BY)] == [
        "0.123 in",
        "0.236 in",
        "0.62 to 3.46 in",
        "8 digs",
    ]
    assert [text(rows, 1, one) for one in (DEEPER, STEP, PLANTS, BY)] == [
        "",
        "",
        "0.50 to 3.50 in",
        "",
    ]


def test_a_typed_step_stands_as_entered_and_keeps_the_rest_to_the_last_digit(
    rows: RowDepths,
) -> None:
    assert write(rows, 2, STEP, "0.3 in")
    assert (rows.scale.steps[2], rows.scale.offsets[2]) == (Q(0.3, "in"), Q(0.123456, "in"))
    assert text(rows, 2, BY) == "entered"
    assert not rows.scale.digs


def test_a_step_of_a_row_that_planted_by_the_scale_begins_at_its_first_notch(
    rows: RowDepths,
) -> None:
    assert write(rows, 3, STEP, "0.2 in")
    assert rows.scale.depth(1, 3) == rows.scale.depth(1, 1)
    assert text(rows, 3, PLANTS) == "0.50 to 2.90 in"


def test_an_emptied_step_is_the_scales_again(rows: RowDepths) -> None:
    assert write(rows, 2, STEP, "")
    assert rows.scale.step_of(2) == SCALE.step
    assert text(rows, 2, DEEPER) == "0.123 in"
    assert write(rows, 2, DEEPER, " ")
    assert rows.scale == SCALE.nominal


def test_a_row_is_taken_back_to_the_scale(rows: RowDepths, qtbot: Any) -> None:
    rows.view.selectRow(1)
    with qtbot.waitSignal(rows.changed):
        qtbot.mouseClick(rows.back, Qt.MouseButton.LeftButton)
    assert rows.scale == SCALE.nominal


@pytest.mark.parametrize(
    ("column", "typed", "sentence"),
    [
        (STEP, "0 in", "Row 1: a depth step of 0 in is not possible"),
        (STEP, "deep", "Row 1: “deep” is not a number"),
        (DEEPER, "1 kg", "Row 1: “kg” is not a unit of depth step"),
    ],
)
def test_what_cannot_be_is_said_and_not_taken(
    rows: RowDepths, column: int, typed: str, sentence: str
) -> None:
    assert not write(rows, 1, column, typed)
    assert sentence in rows.refused.text()
    assert rows.scale == SCALE


def test_rows_that_a_planter_loses_take_their_lines_along(rows: RowDepths) -> None:
    kept = rows.on_scale(SCALE.first, SCALE.step, 9, 1)
    assert (dict(kept.offsets), kept.count) == ({}, 9)


def test_the_form_keeps_a_measured_line_and_takes_a_typed_one(fleet: OnDemo, qtbot: Any) -> None:
    form = form_for(fleet, qtbot)
    write(form.row_depths, 7, STEP, "5.5 mm")
    form.notches.setText("9")
    assert text(form.row_depths, 7, PLANTS).startswith("0.50 to 2.23")
    qtbot.mouseClick(form.take, Qt.MouseButton.LeftButton)
    kept = read_board(fleet.store, NAME, proposal=False).planter.depth
    assert (kept.steps[7], kept.count) == (Q(5.5, "mm"), 9)
    assert form_for(fleet, qtbot).planter().depth == kept


@pytest.mark.parametrize("units", list(Units))
def test_an_untouched_form_gives_a_measured_line_back_exactly(
    fleet: OnDemo, qtbot: Any, units: Units
) -> None:
    fleet.outlook.units = units
    form = form_for(fleet, qtbot)
    planter = form.planter()
    form.row_depths.show_scale(SCALE, planter.rows)
    found = form.planter().depth
    assert (found.offsets, found.steps, found.digs) == (SCALE.offsets, SCALE.steps, SCALE.digs)
