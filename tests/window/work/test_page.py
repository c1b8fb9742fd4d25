"""The Work page ticks tasks off, shows the kit and writes the sheets."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QPoint, Qt

from changeover.desk.board import read_board
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.window.work.page import WorkPage
from changeover.window.work.task_layout import YARD
from tests.window.on_demo import OnDemo, on_demo

ROW_10 = Place.of_row(10)


@pytest.fixture
def work(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, WorkPage) as put:
        yield put


def meter_card(work: OnDemo) -> Any:
    cards = work.page.cards.values()
    return next(c for c in cards if "disc C30" in c.words.title and ROW_10 in c.words.places)


def disc_as_found(work: OnDemo, row: int) -> object:
    board = read_board(work.store, work.outlook.planter, proposal=False)
    return board.as_found.get(Cell("disc", Place.of_row(row)))


def test_every_task_has_a_card_and_done_rows_show(work: OnDemo) -> None:
    assert list(work.page.cards) == [task.key for task in work.page.view.worklist.tasks]
    assert Place.of_row(1) in meter_card(work).done
    assert ROW_10 not in meter_card(work).done


def test_cards_stand_in_the_order_of_their_numbers(work: OnDemo) -> None:
    column = work.page._column
    shown = [column.itemAt(n).widget() for n in range(column.count())]
    titles = [one.words.title for one in shown if hasattr(one, "words")]
    tasks = work.page.view.worklist.tasks
    assert titles == [f"{number}. {task.title}" for number, task in enumerate(tasks, start=1)]


def test_the_space_bar_ticks_a_row_and_sets_it_as_found(work: OnDemo, qtbot: Any) -> None:
    card = meter_card(work)
    card.here = card.words.places.index(ROW_10)
    qtbot.keyClick(card, Qt.Key.Key_Space)
    assert disc_as_found(work, 10) == "S56"
    assert ROW_10 in meter_card(work).done


def test_a_click_on_a_chip_ticks_that_row_and_undo_takes_it_back(work: OnDemo, qtbot: Any) -> None:
    card = meter_card(work)
    chip = card.laid_out(card.width()).chips[card.words.places.index(ROW_10)]
    qtbot.mouseClick(card, Qt.MouseButton.LeftButton, pos=chip.center().toPoint())
    assert disc_as_found(work, 10) == "S56"
    work.door.stack.undo()
    assert disc_as_found(work, 10) == "C30"


def test_the_box_ticks_every_row_that_is_left(work: OnDemo, qtbot: Any) -> None:
    card = meter_card(work)
    qtbot.mouseClick(card, Qt.MouseButton.LeftButton, pos=QPoint(20, 18))
    assert card.whole
    assert disc_as_found(work, 24) == "S56"


def test_the_next_step_can_be_done_from_the_side(work: OnDemo, qtbot: Any) -> None:
    before = work.page.view.progress
    place = before.left(before.next_task)[0]
    qtbot.mouseClick(work.page.side.next_button, Qt.MouseButton.LeftButton)
    assert place in work.page.view.progress.done[before.next_task.key]


def test_parts_that_are_short_are_said_with_a_mark(work: OnDemo) -> None:
    short = [line for line in work.page.view.kit.lines if line.short]
    texts = [
        work.page.side.parts.itemAt(n).widget().text() for n in range(work.page.side.parts.count())
    ]
    assert short
    assert any(text.startswith("! ") and f"{short[0].short} short" in text for text in texts)


def test_yard_mode_makes_every_target_at_least_forty_pixels(work: OnDemo) -> None:
    work.page.yard.setChecked(True)
    layout = meter_card(work).laid_out(700)
    assert YARD.box >= 40
    assert all(chip.height() >= 40 and chip.width() >= 40 for chip in layout.chips)


def test_steps_and_cautions_open_below_the_title(work: OnDemo, qtbot: Any) -> None:
    card = meter_card(work)
    low = card.heightForWidth(700)
    qtbot.keyClick(card, Qt.Key.Key_Plus)
    assert card.heightForWidth(700) > low
    assert any(line.caution for line in card.words.details)


def test_only_what_is_left_hides_finished_tasks(work: OnDemo) -> None:
    work.page.only_open.setChecked(True)
    hidden = [card for card in work.page.cards.values() if card.isHidden()]
    assert hidden
    assert all(card.whole for card in hidden)


def test_the_sheets_are_written_into_the_chosen_folder(work: OnDemo, tmp_path: Path) -> None:
    work.page.print_sheets()
    endings = {path.suffix for path in tmp_path.iterdir()}
    assert {".xlsx", ".csv", ".pdf"} <= endings
    assert "worklist lies in" in work.answers.told[0]


def test_an_unfinished_switch_cannot_be_signed_off(work: OnDemo) -> None:
    work.answers.texts = ["Soybean, ready", ""]
    work.page.side.signed.emit()
    assert work.refused


def test_a_planter_without_a_switch_says_what_to_do(qtbot: Any, tmp_path: Path) -> None:
    with on_demo(qtbot, tmp_path, WorkPage, "Penny Twelve") as put:
        assert not put.page.cards
        assert "Choose the next seed" in put.page.empty.text()


def test_work_before_what_comes_first_is_ticked_only_when_the_person_says_so(work: OnDemo) -> None:
    fill = next(t for t in work.page.view.worklist.tasks if t.key.startswith("fill"))
    work.answers.yes = False
    work.page.tick(fill.key, fill.places[:1])
    assert not work.page.view.progress.done[fill.key]
    assert work.answers.told[-1].startswith("Stop: the clean-out is not inspected")
    work.answers.yes = True
    work.page.tick(fill.key, fill.places[:1])
    assert work.page.view.progress.done[fill.key] == {fill.places[0]}
    asked = len(work.answers.told)
    work.page.tick(fill.key, fill.places[1:2])
    assert len(work.answers.told) == asked


def test_taking_a_tick_back_asks_nothing(work: OnDemo) -> None:
    card = meter_card(work)
    work.page.tick(card.words.key, (Place.of_row(1),), done=False)
    assert work.answers.told == []
    assert disc_as_found(work, 1) == "C30"
