"""The panel shares the work out behind the window, and says what is proved and what if."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QThreadPool

from changeover.desk.crew import crew
from changeover.desk.door import apply
from changeover.desk.edits import PutOwnWork
from changeover.desk.shop_edits import PutMember, PutTool
from changeover.planter.settings import WorkPlace
from changeover.switch.crew import CrewMember, SharedTool
from changeover.switch.own_tasks import OwnTask
from changeover.window.timetable.crew_form import CrewForm
from changeover.window.work.page import WorkPage
from tests.window.on_demo import OnDemo, on_demo

pytestmark = pytest.mark.usefixtures("at_eight")


@pytest.fixture
def at_eight(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("changeover.desk.who_does_what.minute_of_day", lambda: 480)


@pytest.fixture
def work(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, WorkPage) as put:
        for one in crew(put.store).members:
            apply(put.store, PutMember(None, before=one), "t")
        for tool in crew(put.store).tools:
            apply(put.store, PutTool(None, before=tool), "t")
        for name in ("Ann", "Bo"):
            put.door.push(PutMember(CrewMember(name)))
        put.door.push(PutTool(SharedTool("seed vacuum", 1)))
        put.page.who.seconds = 1.0
        yield put
        put.page.who._stop()
        QThreadPool.globalInstance().waitForDone()


@pytest.fixture
def shared(work: OnDemo, qtbot: Any) -> OnDemo:
    with qtbot.waitSignal(work.page.who.found, timeout=15_000):
        work.page.who.solve()
    return work


def test_a_plan_has_a_lane_for_each_person_and_says_what_is_proved(shared: OnDemo) -> None:
    who = shared.page.who
    assert [lane.name for lane in who.chart.shown.lanes] == ["Ann", "Bo"]
    assert "proven" in who.says.text() or "of the bound" in who.says.text()
    assert who.chart.shown.now == who.chart.shown.begin == 480


def test_by_person_each_stint_can_be_ticked_off(shared: OnDemo) -> None:
    stint, card = shared.page.persons.cards[0]
    card.tick_all()
    assert set(card.words.places) <= shared.page.view.progress.done[stint.activity]
    assert card.whole
    assert "ticked off since" in shared.page.who.says.text()


def test_work_that_was_done_is_left_out_of_the_next_plan(shared: OnDemo, qtbot: Any) -> None:
    stint, card = shared.page.persons.cards[0]
    card.tick_all()
    with qtbot.waitSignal(shared.page.who.found, timeout=15_000):
        shared.page.who.solve()
    places = shared.page.who.plan.question.crew_work.places.get(stint.activity, {})
    assert set(card.words.places).isdisjoint(places.values())


def test_what_if_says_what_one_more_would_save(shared: OnDemo, qtbot: Any) -> None:
    who = shared.page.who
    assert who.tool.text() == "One more seed vacuum?"
    with qtbot.waitSignal(who.asking_if.done, timeout=15_000):
        who.ask_tool()
    assert who.what_if.text().startswith("One more seed vacuum: ")
    assert "looking" not in who.what_if.text()


def test_the_timetable_is_printed(shared: OnDemo, tmp_path: Path) -> None:
    shared.page.who.print_sheets()
    assert list(tmp_path.glob("timetable-*.pdf"))
    assert "timetable lies in" in shared.answers.told[0]


def test_labels_name_who_fits_the_parts(shared: OnDemo, tmp_path: Path) -> None:
    shared.page.side.labels.click()
    text = "".join(page.extract_text() for page in PdfReader(tmp_path / "labels.pdf").pages)
    assert "· Ann" in text or "· Bo" in text  # the other one looks the clean-out over
    assert "labels lie in" in shared.answers.told[0]


def test_another_planter_begins_without_a_plan(shared: OnDemo) -> None:
    shared.outlook.show_planter("Magpie 31")
    shared.page.refresh(shared.page.wants)
    assert shared.page.who.plan is None
    assert shared.page.persons.cards == []


def test_a_plan_is_there_again_after_a_look_at_another_planter(shared: OnDemo) -> None:
    who, plan = shared.page.who, shared.page.who.plan
    for planter, there in (("Magpie 31", None), ("Old Fiddle 24", plan)):
        shared.outlook.show_planter(planter)
        shared.page.refresh(shared.page.wants)
        assert who.plan is there
    assert shared.page.persons.cards
    assert plan.says in who.says.text()


def test_a_plan_found_meanwhile_stays_with_its_own_planter(work: OnDemo, qtbot: Any) -> None:
    who = work.page.who
    with qtbot.waitSignal(who.search.done, timeout=15_000):
        who.solve()
        work.outlook.show_planter("Magpie 31")
        work.page.refresh(work.page.wants)
    assert who.plan is None
    work.outlook.show_planter("Old Fiddle 24")
    work.page.refresh(work.page.wants)
    assert who.plan is not None


def test_work_that_came_up_since_is_said(shared: OnDemo) -> None:
    who = shared.page.who
    planter = shared.outlook.planter
    shared.door.push(PutOwnWork(planter, OwnTask("hubs", "Grease the hubs", WorkPlace.CAB)))
    shared.page.refresh(shared.page.wants)
    assert "come up since" in who.says.text()


def test_a_crew_without_the_skill_is_refused_by_name(work: OnDemo, qtbot: Any) -> None:
    for one in crew(work.store).members:
        work.door.push(PutMember(None, before=one))
    work.door.push(PutMember(CrewMember("Cy", frozenset({"Tanks"}))))
    with qtbot.waitSignal(work.door.refused, timeout=15_000):
        work.page.who.solve()
    assert "add a person to the crew or the skill" in work.refused[-1]


def test_nobody_here_is_said_and_nothing_can_be_shared_out(work: OnDemo) -> None:
    for one in crew(work.store).members:
        work.door.push(PutMember(CrewMember(one.name, here=False), before=one))
    assert "Enter who is here" in work.page.who.says.text()
    assert not work.page.who.go.isEnabled()


def test_the_crew_is_typed_in_lists(work: OnDemo) -> None:
    work.page.who.open_crew()
    form = work.page.who.findChild(CrewForm)
    work.answers.texts = ["Cy", "jack"]
    form.add_member()
    form.add_tool()
    model = form.members
    assert model.setData(model.index(2, 1), "meters, row units")
    assert not model.setData(model.index(2, 2), "never")
    assert form.refusal.text()
    form.member_view.selectRow(0)
    form.turn_here()
    form.tool_view.selectRow(0)
    form.remove_tool()
    there = crew(work.store)
    assert there.members[2].skills == {"Meters", "Row units"}
    assert (there.members[0].here, [tool.name for tool in there.tools]) == (False, ["seed vacuum"])
    form.member_view.selectRow(2)
    form.remove_member()
    assert [one.name for one in crew(work.store).members] == ["Ann", "Bo"]
    form.close()
