"""The drawing of the planter: what is said of rows and tanks, and that it is painted."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtGui import QImage
from pytestqt.qtbot import QtBot

from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.quantities import Q
from changeover.window.marks import Mark
from changeover.window.matrix.sheet import Sheet, Shown
from changeover.window.planter.drawing import PlanterDrawing
from changeover.window.planter.layout import Column
from changeover.window.planter.words import Holding, holding, hopper_runs, mark_counts, row_words
from changeover.window.standing import Standing
from tests.window.invented import (
    MemoryDesk,
    ground_planter,
    long_planter,
    make_board,
    split_planter,
)

TANK = Place(Scope.TANK, "tank 1")


def sheet_of(planter: Planter | None = None) -> Sheet:
    board = make_board(planter)
    left = {Cell("seed_left", TANK): Q(120.0, "lb")} if planter is None else {}
    board = replace(board, as_found=board.as_found.with_values(left))
    return Sheet(board, Standing(board), board.units, Shown.BOTH)


def test_a_tank_says_what_it_holds_and_what_it_should() -> None:
    assert holding(sheet_of(), TANK) == Holding("lot H-9, 120.0 lb left → S-114", differs=True)


def test_row_hoppers_that_hold_the_same_are_told_together() -> None:
    runs = hopper_runs(sheet_of(ground_planter()))
    assert [(first, last) for first, last, _ in runs] == [(1, 9), (10, 12)]
    assert runs[0][2] == Holding("lot S-114", differs=False)


def test_a_row_says_its_groups_and_its_changes() -> None:
    words = row_words(sheet_of(), 14)
    assert words.startswith("Row 14 (fan 2, tank 2, drive 2): work to do\n")
    assert "Disc C30 → S56" in words


def test_the_legend_counts_the_rows_of_each_mark() -> None:
    assert mark_counts(sheet_of()) == ((Mark.READY, 9), (Mark.WORK, 15))


def picture(qtbot: QtBot, sheet: Sheet, chosen: frozenset[int] = frozenset()) -> QImage:
    drawing = PlanterDrawing(sheet, MemoryDesk(sheet.board).outlook())
    qtbot.addWidget(drawing)
    drawing.resize(1100, 200)
    drawing.show_columns([Column(row, 140 + 30 * row, 30) for row in sheet.rows])
    drawing.show_chosen(chosen)
    return drawing.grab().toImage()


@pytest.mark.parametrize("make", [long_planter, split_planter, ground_planter])
def test_every_sort_of_planter_is_painted(make: Callable[[], Planter], qtbot: QtBot) -> None:
    image = picture(qtbot, sheet_of(make()))
    colours = {image.pixelColor(x, y).name() for x in range(0, 1100, 3) for y in range(0, 200, 3)}
    assert len(colours) > 8


def test_a_chosen_row_looks_another_way(qtbot: QtBot) -> None:
    plain, chosen = picture(qtbot, sheet_of()), picture(qtbot, sheet_of(), frozenset({5}))
    column, elsewhere = 140 + 30 * 5, 140 + 30 * 8
    assert plain.copy(column - 14, 100, 28, 70) != chosen.copy(column - 14, 100, 28, 70)
    assert plain.copy(elsewhere - 14, 100, 28, 70) == chosen.copy(elsewhere - 14, 100, 28, 70)


def test_a_locked_up_row_is_drawn_raised(qtbot: QtBot) -> None:
    down = sheet_of(split_planter())
    up_cells = {Cell("row_lock", Place.of_row(4)): "locked up"}
    board = replace(down.board, as_found=down.board.as_found.with_values(up_cells))
    up = Sheet(board, Standing(board), board.units, Shown.BOTH)
    box = (140 + 30 * 4 - 12, 126, 24, 14)
    assert picture(qtbot, down).copy(*box) != picture(qtbot, up).copy(*box)
