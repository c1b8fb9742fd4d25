"""The view of the matrix: keys, blocks, spans, and columns that stay under the drawing."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QAbstractItemView, QApplication, QComboBox, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from changeover.desk.edits import Side
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.window.matrix.view import MatrixView
from changeover.window.workbench_page import SwitchPage
from tests.window.invented import MemoryDesk, long_planter, make_board

CONTROL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


def line(page: SwitchPage, key: str) -> int:
    return [setting.key for setting in page.model.sheet.lines].index(key)


def choose(page: SwitchPage, key: str, *rows: int) -> MatrixView:
    page.view.select([(line(page, key), page.model.sheet.rows.index(row)) for row in rows])
    return page.view


def row_cell(key: str, row: int) -> Cell:
    return Cell(key, Place.of_row(row))


def focus(view: MatrixView) -> QWidget:
    """Return the editor that is open, else the view."""
    return view.viewport().findChild(QComboBox) or view.viewport().findChild(QLineEdit) or view


def test_typing_a_figure_and_enter_sets_the_cell(
    page: SwitchPage, desk: MemoryDesk, qtbot: QtBot
) -> None:
    view = choose(page, "depth", 14)
    qtbot.keyClicks(view, "2")
    editor = view.viewport().findChild(QLineEdit)
    assert editor is not None
    qtbot.keyClicks(editor, ".5")
    qtbot.keyClick(editor, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: bool(desk.edits))
    assert desk.edits[-1].values == {row_cell("depth", 14): 9}
    assert page.model.sheet.look(line(page, "depth"), 13).target == "2.50"


@pytest.mark.parametrize(
    ("key", "text", "value"),
    [
        ("disc", "C30", "C30"),
        ("brush", "tall", "tall"),
        ("singulator", "1/2", 2),
        ("depth", "2.5", 9),
    ],
)
@pytest.mark.parametrize("enter", [Qt.Key.Key_Return, Qt.Key.Key_Enter])
def test_enter_takes_a_typed_choice_once_and_goes_down(
    page: SwitchPage,
    desk: MemoryDesk,
    qtbot: QtBot,
    key: str,
    text: str,
    value: object,
    enter: Qt.Key,
) -> None:
    view = choose(page, key, 14)
    for sign in text:
        qtbot.keyClicks(focus(view), sign)
    qtbot.keyClick(focus(view), enter)
    QApplication.processEvents()
    assert view.state() == QAbstractItemView.State.NoState
    assert [edit.values for edit in desk.edits] == [{row_cell(key, 14): value}]
    assert view.spots()[0][0] == line(page, key) + 1


@pytest.mark.parametrize(
    ("key", "down", "right"),
    [
        (Qt.Key.Key_Tab, 0, 1),
        (Qt.Key.Key_Backtab, 0, -1),
        (Qt.Key.Key_Down, 1, 0),
        (Qt.Key.Key_Up, -1, 0),
    ],
)
def test_tab_and_arrows_take_what_was_typed_and_move_on_without_editing(
    page: SwitchPage, desk: MemoryDesk, qtbot: QtBot, key: Qt.Key, down: int, right: int
) -> None:
    view = choose(page, "brush", 14)
    for sign in "tall":
        qtbot.keyClicks(focus(view), sign)
    qtbot.keyClick(focus(view), key)
    QApplication.processEvents()
    assert desk.edits[-1].values == {row_cell("brush", 14): "tall"}
    assert view.state() == QAbstractItemView.State.NoState
    assert view.spots() == [(line(page, "brush") + down, 13 + right)]


def test_what_is_refused_leaves_the_cell_chosen(
    page: SwitchPage, desk: MemoryDesk, qtbot: QtBot
) -> None:
    view = choose(page, "disc", 14)
    qtbot.keyClicks(view, "X")
    qtbot.keyClick(focus(view), Qt.Key.Key_Return)
    assert desk.edits == []
    assert view.spots() == [(line(page, "disc"), 13)]


def test_control_enter_sets_every_selected_cell(
    page: SwitchPage, desk: MemoryDesk, qtbot: QtBot
) -> None:
    view = choose(page, "depth", 14, 15, 16)
    qtbot.keyClicks(view, "1")
    editor = view.viewport().findChild(QLineEdit)
    qtbot.keyClicks(editor, ".5")
    qtbot.keyClick(editor, Qt.Key.Key_Return, CONTROL)
    assert desk.edits[-1].values == {row_cell("depth", row): 5 for row in (14, 15, 16)}


@pytest.mark.qt_log_ignore("This plugin does not support", extend=True)
def test_choices_come_as_a_list(page: SwitchPage, desk: MemoryDesk, qtbot: QtBot) -> None:
    view = choose(page, "disc", 14)
    qtbot.keyClick(view, Qt.Key.Key_F2)
    box = view.viewport().findChild(QComboBox)
    assert box is not None
    assert [box.itemText(n) for n in range(box.count())] == ["C30", "S56"]
    qtbot.waitUntil(lambda: box.view().isVisible())
    box.hidePopup()
    box.setCurrentIndex(0)
    box.activated.emit(0)
    assert desk.edits[-1].values == {row_cell("disc", 14): "C30"}


def test_delete_empties_the_selected_cells(
    page: SwitchPage, desk: MemoryDesk, qtbot: QtBot
) -> None:
    view = choose(page, "disc", 14, 15)
    qtbot.keyClick(view, Qt.Key.Key_Delete)
    assert desk.edits[-1].values == {row_cell("disc", 14): None, row_cell("disc", 15): None}


def test_control_d_fills_the_row_of_a_setting(
    page: SwitchPage, desk: MemoryDesk, qtbot: QtBot
) -> None:
    page.view.set_all("")
    choose(page, "depth", 1)
    page.view.set_all("2.25")
    view = choose(page, "depth", 1, 2, 3)
    qtbot.keyClick(view, Qt.Key.Key_D, CONTROL)
    assert [desk.board.target.get(row_cell("depth", row)) for row in (1, 2, 3)] == [8, 8, 8]


def test_copy_and_paste_go_over_the_clipboard(
    page: SwitchPage, desk: MemoryDesk, qtbot: QtBot
) -> None:
    view = choose(page, "depth", 1, 2)
    QGuiApplication.clipboard().setText("1.5\t1.75\n")
    qtbot.keyClick(view, Qt.Key.Key_V, CONTROL)
    qtbot.keyClick(view, Qt.Key.Key_C, CONTROL)
    assert QGuiApplication.clipboard().text() == "1.50\t1.75"
    assert len(desk.edits) == 1


def test_a_bad_block_is_refused_with_one_sentence(
    page: SwitchPage, desk: MemoryDesk, qtbot: QtBot
) -> None:
    choose(page, "depth", 1)
    QGuiApplication.clipboard().setText("1.5\tdeep")
    with qtbot.waitSignal(page.door.refused) as told:
        page.view.paste()
    assert "row 2" in told.args[0]
    assert desk.edits == []


def test_control_e_keeps_every_other_row(page: SwitchPage, qtbot: QtBot) -> None:
    view = choose(page, "depth", 4, 5, 6, 7)
    qtbot.keyClick(view, Qt.Key.Key_E, CONTROL)
    assert [column for _, column in view.spots()] == [3, 5]


def test_shift_and_arrow_select_a_range(page: SwitchPage, qtbot: QtBot) -> None:
    view = choose(page, "depth", 4)
    for _ in range(2):
        qtbot.keyClick(view, Qt.Key.Key_Right, SHIFT)
    assert [column for _, column in view.spots()] == [3, 4, 5]


def test_a_group_is_one_cell_over_its_rows(page: SwitchPage) -> None:
    at = line(page, "vacuum")
    assert page.view.columnSpan(at, 0) == 12
    assert page.view.columnSpan(at, 12) == 12
    assert page.view.columnSpan(line(page, "disc"), 0) == 1


def test_a_group_takes_one_value(page: SwitchPage, desk: MemoryDesk) -> None:
    choose(page, "vacuum", 1).set_all("14")
    (cell,) = desk.edits[-1].values
    assert cell == Cell("vacuum", Place(Scope.FAN, "fan 1"))
    assert desk.edits[-1].side is Side.TARGET


def test_twenty_four_rows_fit_on_the_smallest_screen(page: SwitchPage) -> None:
    assert page.view.horizontalScrollBar().maximum() == 0
    assert page.view.columnWidth(0) >= 30


def test_forty_eight_rows_scroll_under_names_that_stay(make_page, qtbot: QtBot) -> None:
    page = make_page(MemoryDesk(make_board(long_planter(48))))
    bar = page.view.horizontalScrollBar()
    names = page.view.verticalHeader().x()
    bar.setValue(bar.maximum())
    assert bar.maximum() > 0
    assert page.view.verticalHeader().x() == names
    assert page.drawing.columns[-1].right <= page.drawing.width() + 1


@pytest.mark.parametrize(("column", "scrolled"), [(0, 560), (47, 160)])
def test_the_value_of_a_band_stands_in_the_part_in_view(
    make_page, column: int, scrolled: int
) -> None:
    page = make_page(MemoryDesk(make_board(long_planter(48))))
    view = page.view
    view.horizontalScrollBar().setValue(scrolled)
    band = view.visualRect(page.model.index_of((line(page, "vacuum"), column)))
    seen = band & view.viewport().rect()
    assert 100 < seen.width() < band.width() / 2
    image = view.viewport().grab(seen.adjusted(9, 9, -9, -9)).toImage()
    points = [(x, y) for x in range(image.width()) for y in range(image.height())]
    assert len({image.pixel(*point) for point in points}) > 20


def test_undo_takes_the_edit_back(page: SwitchPage, desk: MemoryDesk) -> None:
    choose(page, "depth", 14).set_all("2.5")
    page.door.stack.undo()
    assert desk.board.target.get(row_cell("depth", 14)) == 4


@pytest.mark.parametrize(("extend", "columns"), [(False, {5}), (True, {2, 3, 4, 5})])
def test_choosing_a_row_selects_all_its_settings(
    page: SwitchPage, extend: bool, columns: set[int]
) -> None:
    choose(page, "disc", 3)
    page.view.select_row(6, extend=extend)
    rows_own = {column for n, column in page.view.spots() if n == line(page, "depth")}
    assert rows_own == columns
