"""The table model of the matrix: Qt's own tester, and edits that are pushed."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from pytestqt.modeltest import ModelTester
from pytestqt.qtbot import QtBot

from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Units
from changeover.window.matrix.model import MatrixModel, runs_of, shown_text
from changeover.window.matrix.sheet import Look, Sheet, Shown
from changeover.window.standing import Standing
from tests.window.invented import MemoryDesk, make_board, split_planter

VERTICAL, HORIZONTAL = Qt.Orientation.Vertical, Qt.Orientation.Horizontal


@pytest.fixture
def model(desk: MemoryDesk, qtbot: QtBot) -> MatrixModel:
    outlook = desk.outlook()
    sheet = Sheet(outlook.board, outlook.standing, outlook.units, Shown.BOTH)
    made = MatrixModel(sheet, desk.door())
    made.setParent(outlook)
    made.outlook = outlook  # type: ignore[attr-defined]
    return made


def line(model: MatrixModel, key: str) -> int:
    return [setting.key for setting in model.sheet.lines].index(key)


@pytest.mark.parametrize("across", [True, False])
def test_qt_finds_no_fault_with_it(
    across: bool, model: MatrixModel, qtmodeltester: ModelTester
) -> None:
    model.show_sheet(model.sheet, across=across)
    qtmodeltester.check(model)


def test_settings_run_down_and_rows_across_or_the_other_way(model: MatrixModel) -> None:
    assert (model.rowCount(), model.columnCount()) == (12, 24)
    assert model.headerData(line(model, "disc"), VERTICAL) == "Disc"
    assert model.headerData(13, HORIZONTAL) == "14"
    model.show_sheet(model.sheet, across=False)
    assert (model.rowCount(), model.columnCount()) == (24, 12)
    assert model.headerData(13, VERTICAL) == "14"


def test_a_cell_shows_both_sides_and_edits_the_target(model: MatrixModel) -> None:
    index = model.index(line(model, "depth"), 13)
    assert index.data() == "2.00 → 1.25"
    assert index.data(Qt.ItemDataRole.EditRole) == "1.25"
    assert index.data(Qt.ItemDataRole.ToolTipRole) == "Depth, row 14: 2.00 → 1.25 in"


def test_a_part_of_an_older_store_that_is_not_entered_is_said_at_the_cell(
    desk: MemoryDesk, qtbot: QtBot
) -> None:
    board, cell = desk.outlook().board, Cell("disc", Place.of_row(14))
    board = replace(board, as_found=board.as_found.with_values({cell: "S65"}))
    sheet = Sheet(board, Standing(board), Units.US, Shown.BOTH)
    model = MatrixModel(sheet, desk.door())
    says = model.index(line(model, "disc"), 13).data(Qt.ItemDataRole.ToolTipRole)
    assert says.endswith("no disc “S65” is on the Shelf page")
    other = model.index(line(model, "disc"), 12).data(Qt.ItemDataRole.ToolTipRole)
    assert "Shelf page" not in other


def test_setting_data_pushes_an_edit_and_changes_nothing_itself(
    model: MatrixModel, desk: MemoryDesk
) -> None:
    index = model.index(line(model, "depth"), 13)
    assert model.setData(index, "1.75")
    assert desk.edits[0].values == {Cell("depth", Place.of_row(14)): 6}
    assert index.data(Qt.ItemDataRole.EditRole) == "1.25"


def test_the_same_text_again_pushes_nothing(model: MatrixModel, desk: MemoryDesk) -> None:
    assert not model.setData(model.index(line(model, "depth"), 13), "1.25")
    assert desk.edits == []


def test_a_text_that_cannot_be_is_refused(
    model: MatrixModel, desk: MemoryDesk, qtbot: QtBot
) -> None:
    with qtbot.waitSignal(model.refused) as told:
        assert not model.setData(model.index(line(model, "depth"), 13), "deep")
    assert "row 14" in told.args[0]
    assert desk.edits == []


def test_only_altered_lines_are_told_to_the_view(model: MatrixModel, qtbot: QtBot) -> None:
    board = make_board()
    first = Sheet(board, Standing(board), model.sheet.units, Shown.BOTH)
    model.show_sheet(first)
    from dataclasses import replace

    cell = Cell("depth", Place.of_row(14))
    later = replace(board, target=board.target.with_values({cell: 6}))
    sheet = Sheet(later, Standing(later), first.units, Shown.BOTH, earlier=first)
    with qtbot.waitSignal(model.dataChanged) as told:
        assert not model.show_sheet(sheet)
    top, bottom = told.args[0], told.args[1]
    assert top.row() == bottom.row() == line(model, "depth")
    assert (top.column(), bottom.column()) == (0, 23)


def test_another_planter_resets_the_model(model: MatrixModel, qtbot: QtBot) -> None:
    board = make_board(split_planter())
    with qtbot.waitSignal(model.modelReset):
        assert model.show_sheet(Sheet(board, Standing(board), model.sheet.units, Shown.BOTH))
    assert model.columnCount() == 31


@pytest.mark.parametrize(
    ("shown", "text"), [(Shown.FOUND, "tall"), (Shown.TARGET, "low"), (Shown.BOTH, "tall → low")]
)
def test_the_text_follows_the_side(shown: Shown, text: str) -> None:
    assert shown_text(Look("tall", "low", differs=True), shown) == text


def test_runs_are_the_unbroken_stretches() -> None:
    assert runs_of([True, True, False, True]) == [(0, 1), (3, 3)]
    assert runs_of([False]) == []


def test_every_cell_can_be_edited(model: MatrixModel, make_page: Callable[..., object]) -> None:
    assert model.flags(model.index(0, 0)) & Qt.ItemFlag.ItemIsEditable
    assert model.flags(model.index(-1, 0)) == Qt.ItemFlag.NoItemFlags
