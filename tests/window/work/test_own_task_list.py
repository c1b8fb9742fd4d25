"""A person adds tasks of their own and splits others; both show on the worklist and can go."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QThreadPool
from PySide6.QtWidgets import QDialog

from changeover.desk.own_work import own_work
from changeover.window.work.own_task_form import OwnTaskForm, SplitForm
from changeover.window.work.own_task_list import OwnTaskList
from changeover.window.work.page import WorkPage
from tests.window.on_demo import OnDemo, on_demo


@pytest.fixture
def work(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, WorkPage) as put:
        put.page.open_own_tasks()
        yield put
        for dialog in put.page.findChildren(QDialog)[::-1]:
            dialog.close()
        QThreadPool.globalInstance().waitForDone()


@pytest.fixture
def listed(work: OnDemo) -> OwnTaskList:
    return work.page.findChild(OwnTaskList)


@pytest.fixture
def form(listed: OwnTaskList) -> OwnTaskForm:
    listed.add()
    return listed.findChild(OwnTaskForm)


def test_an_added_task_stands_on_the_worklist(work: OnDemo, form: OwnTaskForm) -> None:
    form.title.setText("Grease the parallel arms")
    form.places.setText("1-3, 24")
    form.each.line.setText("2 min")
    form.accept()
    card = work.page.cards["own.grease_the_parallel_arms"]
    assert [place.row for place in card.words.places] == [1, 2, 3, 24]
    assert "2 min a row" in card.words.minutes


def test_an_added_task_comes_after_what_was_chosen(work: OnDemo, form: OwnTaskForm) -> None:
    form.title.setText("Look at the chains")
    form.after.setCurrentIndex(3)
    family = form.after.chosen
    form.accept()
    task = work.page.view.worklist.task("own.look_at_the_chains")
    assert any(key.startswith(family) for key in task.needs)


@pytest.mark.parametrize(
    ("field", "text", "words"),
    [
        ("title", "", "Write what is to be done"),
        ("places", "1-99", "row"),
        ("places", "tank 9", "has no “tank 9”"),
        ("persons", "some", "how many persons"),
        ("persons", "0", "at least one person"),
        ("persons", "500", "enter 1 to 20 persons"),
        ("fixed", "1e9 min", "a day at most"),
        ("each", "-5 min", "less than no time"),
    ],
)
def test_what_cannot_be_is_said_below_the_form(
    form: OwnTaskForm, field: str, text: str, words: str
) -> None:
    form.title.setText("Grease")
    typed = getattr(form, field)
    getattr(typed, "line", typed).setText(text)
    assert words in form.refusal.text()
    assert not form.take.isEnabled()


def test_two_tasks_that_wait_for_each_other_are_refused(
    work: OnDemo, listed: OwnTaskList, form: OwnTaskForm
) -> None:
    form.title.setText("Go round")
    form.after.setCurrentIndex(4)
    form.before.setCurrentIndex(2)
    form.accept()
    assert "wait for each other" in form.refusal.text()
    assert own_work(work.store, work.outlook.planter) == ()


def test_a_task_is_split_and_joined_again(work: OnDemo, listed: OwnTaskList) -> None:
    listed.split()
    split = listed.findChild(SplitForm)
    names = [task.title for task in split.task.values]
    split.task.setCurrentIndex(next(n for n, name in enumerate(names) if name.startswith("Depth")))
    split.name.setText("Bo's rows")
    split.places.setText("13-24")
    split.accept()
    apart = next(key for key in work.page.cards if key.endswith("~Bo's rows"))
    assert len(work.page.cards[apart].words.places) == 12
    listed.list.setCurrentRow(0)
    listed.remove()
    assert apart not in work.page.cards
    work.door.stack.undo()
    assert apart in work.page.cards


def test_places_that_a_task_lacks_cannot_be_split_off(listed: OwnTaskList) -> None:
    listed.split()
    split = listed.findChild(SplitForm)
    split.name.setText("Bo")
    split.places.setText("fan 1")
    assert "is not done at fan 1" in split.refusal.text()


def test_without_a_switch_nothing_can_be_added(qtbot: Any, tmp_path: Path) -> None:
    with on_demo(qtbot, tmp_path, WorkPage, "Penny Twelve") as put:
        put.page.open_own_tasks()
        assert "No switch is open" in put.refused[-1]
        assert put.page.findChild(OwnTaskList) is None
