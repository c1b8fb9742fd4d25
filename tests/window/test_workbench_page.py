"""The workbench: drawing, matrix and reason follow one another."""

from collections.abc import Callable

from PySide6.QtCore import QPoint, Qt
from pytestqt.qtbot import QtBot

from changeover.desk.edits import Side, TakeProposal
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.window.matrix.sheet import Shown
from changeover.window.workbench_page import RowsPage, SwitchPage
from tests.window.invented import MemoryDesk, make_board


def line(page: SwitchPage, key: str) -> int:
    return [setting.key for setting in page.model.sheet.lines].index(key)


def test_each_column_hangs_below_its_row_unit(page: SwitchPage) -> None:
    view, drawing = page.view, page.drawing
    for column in drawing.columns:
        at = view.model().index(line(page, "disc"), column.row - 1)
        middle = view.viewport().mapTo(page, view.visualRect(at).center()).x()
        assert abs(middle - (drawing.x() + column.middle)) <= 1


def test_a_click_on_a_row_unit_selects_the_row(page: SwitchPage, qtbot: QtBot) -> None:
    column = page.drawing.columns[6]
    at = QPoint(int(column.middle), 110)
    qtbot.mouseClick(page.drawing, Qt.MouseButton.LeftButton, pos=at)
    assert {c for n, c in page.view.spots() if n == line(page, "depth")} == {6}


def test_a_click_on_a_fan_selects_its_band(page: SwitchPage, qtbot: QtBot) -> None:
    page.drawing.group_chosen.emit(Place(Scope.FAN, "fan 2"))
    cells = {page.model.sheet.cells[n][c] for n, c in page.view.spots()}
    assert cells == {Cell("vacuum", Place(Scope.FAN, "fan 2"))}


def test_the_reason_is_that_of_the_current_cell(page: SwitchPage) -> None:
    page.view.select([(line(page, "depth"), 13)])
    assert page.panel.title.text() == "Depth, row 14"
    assert page.panel.value.text() == "2.00 in (notch 7) now → 1.25 in (notch 4)"
    assert "Row 14" in page.status.text()


def test_the_first_look_shows_a_cell_that_differs(page: SwitchPage) -> None:
    assert page.panel.title.text() == "Disc, row 10"


def test_using_the_proposal_takes_all_cells_that_differ_from_it(
    page: SwitchPage, desk: MemoryDesk
) -> None:
    page.view.select([(line(page, "depth"), c) for c in range(3)])
    page.view.set_all("2.5")
    page.panel.use_button.click()
    assert isinstance(desk.edits[-1], TakeProposal)
    assert desk.edits[-1].cells == {Cell("depth", Place.of_row(row)) for row in (1, 2, 3)}
    assert desk.board.target.get(Cell("depth", Place.of_row(2))) == 4


def test_keeping_as_found_makes_it_the_target(page: SwitchPage, desk: MemoryDesk) -> None:
    page.view.select([(line(page, "depth"), 13)])
    page.panel.keep_button.click()
    assert desk.edits[-1].side is Side.TARGET
    assert desk.edits[-1].values == {Cell("depth", Place.of_row(14)): 7}
    assert not page.panel.keep_button.isEnabled()


def test_the_bar_says_where_edits_go(page: SwitchPage) -> None:
    assert page.toolbar.edits.text() == "edits set the target"
    page.toolbar.sides[Shown.FOUND].click()
    assert page.toolbar.edits.text() == "edits set what is found"
    assert page.model.sheet.side is Side.AS_FOUND


def test_only_rows_that_differ_can_be_shown(page: SwitchPage) -> None:
    page.toolbar.differing.click()
    assert page.model.columnCount() == 15
    assert next(column.row for column in page.drawing.columns) == 10


def test_rows_can_run_down(page: SwitchPage) -> None:
    page.toolbar.way.click()
    assert (page.model.rowCount(), page.model.columnCount()) == (24, 12)
    assert page.view.rowSpan(0, line(page, "vacuum")) == 12
    assert page.view.horizontalHeader().isVisible()


def test_turning_and_filtering_keep_the_chosen_cell(page: SwitchPage) -> None:
    page.view.select([(line(page, "depth"), 13), (line(page, "depth"), 14)])
    page.toolbar.way.click()
    page.toolbar.differing.click()
    assert page.panel.title.text() == "Depth, row 14"
    assert [page.model.sheet.rows[column] for _, column in page.view.spots()] == [14, 15]


def test_set_all_selected_asks_for_the_value(
    desk: MemoryDesk, make_page: Callable[..., SwitchPage]
) -> None:
    page = make_page(desk, text="1.75")
    page.view.select([(line(page, "depth"), c) for c in range(24)])
    page.toolbar.set_all_wanted.emit()
    assert set(desk.edits[-1].values.values()) == {6}


def test_the_rows_page_opens_on_what_is_found(
    desk: MemoryDesk, make_page: Callable[..., SwitchPage]
) -> None:
    page = make_page(desk, RowsPage)
    assert page.model.sheet.shown is Shown.FOUND


def test_without_a_next_lot_the_panel_says_how_to_get_a_proposal(
    make_page: Callable[..., SwitchPage],
) -> None:
    page = make_page(MemoryDesk(make_board(chosen=False)))
    assert "Choose the next seed" in page.panel.why.text()
    assert not page.panel.use_button.isEnabled()
