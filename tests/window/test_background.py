"""Work behind the window: its end is heard once, its refusal is said, and it can be stopped."""

import gc
import sys
import threading
import time
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from PySide6.QtCore import QThreadPool
from pytestqt.qtbot import QtBot

from changeover.quantities import Refusal
from changeover.window.background import TURN_SECONDS, Background


@pytest.fixture(autouse=True)
def ended() -> Iterator[None]:
    yield
    assert QThreadPool.globalInstance().waitForDone(10_000), "a job was not asked to stop"


class Here:
    """A pool that runs a job at once, in this thread."""

    def start(self, job: Callable[[], None], /) -> None:
        job()


def until_stopped(stop: Callable[[], bool], report: Callable[[Any], None]) -> str:
    report("under way")
    while not stop():
        time.sleep(0.002)
    return "stopped"


def test_what_a_search_finds_is_heard(qtbot: QtBot) -> None:
    search = Background()
    with qtbot.waitSignal(search.done) as heard:
        search.start(lambda _stop, _report: 42)
        assert search.busy
    assert heard.args == [42]
    assert not search.busy


def test_a_refusal_is_said_and_nothing_is_found(qtbot: QtBot) -> None:
    search, found = Background(pool=Here()), list[object]()
    search.done.connect(found.append)

    def refuse(_stop: object, _report: object) -> None:
        raise Refusal("Nobody is here.")

    with qtbot.waitSignal(search.failed) as heard:
        search.start(refuse)
    assert (heard.args, found) == (["Nobody is here."], [])


def test_progress_is_told_and_a_wish_to_stop_is_heard(qtbot: QtBot) -> None:
    search = Background()
    with qtbot.waitSignal(search.progressed) as heard:
        search.start(until_stopped)
    assert heard.args == ["under way"]
    with qtbot.waitSignal(search.done) as ended:
        search.stop()
    assert ended.args == ["stopped"]


def test_the_end_of_a_search_that_was_replaced_is_not_heard(qtbot: QtBot) -> None:
    search, found = Background(), list[object]()
    search.done.connect(found.append)
    search.start(until_stopped)
    with qtbot.waitSignal(search.done):
        search.start(lambda _stop, _report: "second")
    qtbot.waitUntil(lambda: not search.busy)
    assert found == ["second"]


def test_whether_it_is_busy_is_told_at_both_ends(qtbot: QtBot) -> None:
    search, told = Background(), list[bool]()
    search.busy_changed.connect(told.append)
    with qtbot.waitSignal(search.done):
        search.start(lambda _stop, _report: None)
    assert told == [True, False]


@pytest.mark.parametrize("rounds", [200])
def test_no_end_is_lost(qtbot: QtBot, rounds: int) -> None:
    search, found = Background(), list[int]()
    search.done.connect(found.append)
    for number in range(rounds):
        with qtbot.waitSignal(search.done):
            search.start(lambda _stop, _report, number=number: number)
    assert found == list(range(rounds))


def test_the_end_of_a_search_can_be_waited_for(qtbot: QtBot) -> None:
    search, found = Background(), list[object]()
    search.done.connect(found.append)
    search.start(lambda _stop, _report: 7)
    search.wait()
    assert not search.busy
    qtbot.waitUntil(lambda: found == [7])
    search.wait()


def test_a_search_stops_when_its_window_goes(qtbot: QtBot) -> None:
    search, stopped = Background(), threading.Event()

    def work(stop: Callable[[], bool], report: Callable[[Any], None]) -> None:
        until_stopped(stop, report)
        stopped.set()

    search.start(work)
    search.deleteLater()
    qtbot.waitUntil(stopped.is_set)


def test_the_window_has_its_turn_soon_while_work_goes_on(qtbot: QtBot) -> None:
    usual = sys.getswitchinterval()
    search, seen = Background(), list[tuple[float, bool]]()
    with qtbot.waitSignal(search.done):
        search.start(lambda _stop, _report: seen.append((sys.getswitchinterval(), gc.isenabled())))
    assert seen == [(pytest.approx(TURN_SECONDS), False)]
    assert (sys.getswitchinterval(), gc.isenabled()) == (usual, True)


def test_two_searches_end_in_any_order_and_leave_all_as_it_was(qtbot: QtBot) -> None:
    usual = sys.getswitchinterval()
    one, other = Background(), Background()
    for search in (one, other):
        with qtbot.waitSignal(search.progressed):
            search.start(until_stopped)
    with qtbot.waitSignal(one.done):
        one.stop()
    assert sys.getswitchinterval() < usual
    with qtbot.waitSignal(other.done):
        other.stop()
    assert (sys.getswitchinterval(), gc.isenabled()) == (usual, True)
