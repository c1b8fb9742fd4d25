"""The Season page plans behind the window, shows the orders beside it, and fixes jobs by drag."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QThreadPool

from changeover.desk.door import apply
from changeover.desk.edits import PutJob
from changeover.desk.season.fixed import fixings
from changeover.desk.season.lines import jobs_entered
from changeover.desk.season.rules import SeasonRules, rules_of, set_rules
from changeover.desk.shop_edits import PutSeason
from changeover.window.season.job_form import SeasonJobForm
from changeover.window.season.page import SeasonPage
from tests.window.on_demo import OnDemo, on_demo

MAY_4, MAY_9 = date(2026, 5, 4), date(2026, 5, 9)


@pytest.fixture
def season(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, SeasonPage) as put:
        apply(put.store, set_rules(put.store, SeasonRules(begins=MAY_4)), "t")
        put.page.refresh(put.page.wants)
        yield put
        put.page.search.stop()
        QThreadPool.globalInstance().waitForDone()


@pytest.fixture
def planned(season: OnDemo, qtbot: Any) -> OnDemo:
    wait(season, qtbot)
    return season


def wait(season: OnDemo, qtbot: Any) -> None:
    qtbot.waitUntil(lambda: not season.page.search.busy, timeout=30_000)


def bar(season: OnDemo, job: str) -> Any:
    lanes = season.page.chart.shown.lanes
    return next(one for lane in lanes for one in lane.bars if one.key == job)


def lane_of(season: OnDemo, job: str) -> str:
    lanes = season.page.chart.shown.lanes
    return next(lane.name for lane in lanes if any(one.key == job for one in lane.bars))


def test_every_job_has_a_bar_and_a_line(planned: OnDemo) -> None:
    names = [job.name for job in jobs_entered(planned.store)[0]]
    assert [line.job.name for line in planned.page.model.rows] == names
    assert all(bar(planned, name) for name in names)
    assert "proven" in planned.page.side.proof.text()


def test_the_simple_orders_can_be_looked_at(planned: OnDemo) -> None:
    best = planned.page.chart.shown
    planned.page.ways.button(1).click()
    assert planned.page.order is planned.page.answer.plan.as_entered
    assert planned.page.chart.shown != best
    planned.page.ways.button(0).click()
    assert planned.page.chart.shown.lanes == best.lanes


def test_a_dragged_job_is_fixed_and_the_rest_planned_around_it(planned: OnDemo, qtbot: Any) -> None:
    planned.page.chart.dropped.emit("beans Far Hundred", "Magpie 31", float(MAY_9.toordinal()))
    wait(planned, qtbot)
    assert [(one.planter, one.day) for one in fixings(planned.store)] == [("Magpie 31", MAY_9)]
    assert lane_of(planned, "beans Far Hundred") == "Magpie 31"
    assert bar(planned, "beans Far Hundred").held
    planned.page.view.selectRow(
        [line.job.name for line in planned.page.model.rows].index("beans Far Hundred")
    )
    planned.page.let_go()
    wait(planned, qtbot)
    assert fixings(planned.store) == ()


def test_undo_takes_a_fixing_back(planned: OnDemo, qtbot: Any) -> None:
    planned.page.fix("beans Far Hundred", "Magpie 31", float(MAY_9.toordinal()))
    planned.door.stack.undo()
    wait(planned, qtbot)
    assert fixings(planned.store) == ()


def test_a_job_meant_for_another_planter_cannot_be_dragged(planned: OnDemo) -> None:
    planned.page.fix("beans Otter Flat", "Magpie 31", float(MAY_9.toordinal()))
    assert "is meant for Old Fiddle 24" in planned.refused[-1]


def test_a_chosen_bar_chooses_its_line(planned: OnDemo) -> None:
    planned.page.chart.choose("pinto Crow Strip")
    assert planned.page.model.rows[planned.page.view.chosen].job.name == "pinto Crow Strip"


def test_a_job_is_changed_in_its_form(planned: OnDemo, qtbot: Any) -> None:
    planned.page.view.selectRow(0)
    before = planned.page.model.rows[0].job
    planned.page.change()
    form = planned.page.findChild(SeasonJobForm)
    assert form.job() == before
    form.cost.setText("a lot")
    assert not form.take.isEnabled()
    form.cost.setText("1 250")
    form.accept()
    after = next(job for job in jobs_entered(planned.store)[0] if job.name == before.name)
    assert after.lateness_cost == 1250
    wait(planned, qtbot)


def test_a_new_job_needs_a_name(planned: OnDemo, qtbot: Any) -> None:
    planned.page.add()
    form = planned.page.findChild(SeasonJobForm)
    assert form.refusal.text() == SeasonJobForm.wanted
    form.accept()
    assert "no name" in form.refusal.text()
    form.name.setText("one more")
    form.accept()
    assert "one more" in [job.name for job in jobs_entered(planned.store)[0]]
    wait(planned, qtbot)


def test_a_planted_job_is_left_out_of_the_plan(planned: OnDemo, qtbot: Any) -> None:
    planned.page.view.selectRow(0)
    name = planned.page.model.rows[0].job.name
    planned.page.mark_done()
    wait(planned, qtbot)
    assert name not in {slot.job for slot in planned.page.answer.plan.best.slots}
    assert planned.page.model.rows[-1].job.done


def test_a_job_is_removed(planned: OnDemo, qtbot: Any) -> None:
    planned.page.view.selectRow(0)
    name = planned.page.model.rows[0].job.name
    planned.page.remove()
    wait(planned, qtbot)
    assert name not in [job.name for job in jobs_entered(planned.store)[0]]


def test_what_it_is_reckoned_with_is_taken_over(planned: OnDemo, qtbot: Any) -> None:
    side = planned.page.side
    side.fields["Hours a day"].setText("none")
    assert "not a figure" in side.refusal.text()
    side.fields["Hours a day"].setText("14")
    side.take.click()
    assert rules_of(planned.store).hours == 14
    wait(planned, qtbot)
    assert planned.page.answer.season.hours_per_day == 14


def test_a_window_that_has_passed_is_said(planned: OnDemo, qtbot: Any) -> None:
    before = rules_of(planned.store)
    planned.door.push(PutSeason(SeasonRules(begins=date(2026, 9, 1)), before=before))
    wait(planned, qtbot)
    assert "ended on" in planned.refused[-1]
    assert "ended on" in planned.page.left.text()
    assert planned.page.answer is None
    side = planned.page.side
    assert (side.costs.count(), side.short.count()) == (0, 0)


def test_a_job_whose_window_has_passed_is_named_and_the_others_are_planned(
    planned: OnDemo, qtbot: Any
) -> None:
    job = planned.page.model.rows[0].job
    gone = replace(job, first_day=date(2026, 4, 1), last_day=date(2026, 4, 9))
    planned.door.push(PutJob(gone, before=job))
    wait(planned, qtbot)
    page = planned.page
    assert page.left.text().startswith(f"! The window of job {job.name} ended on 2026-04-09")
    assert page.model.rows[0].planned == "not planned"
    planted = {slot.job for slot in page.answer.plan.best.slots}
    assert planted == {line.job.name for line in page.model.rows[1:]}
    assert not page.chart.isHidden()


def test_what_needs_a_job_waits_until_one_is_chosen(planned: OnDemo) -> None:
    page = planned.page
    assert [made.text() for made in page.of_one] == ["Planted", "Remove", "Change…"]
    assert not any(made.isEnabled() for made in (*page.of_one, page.loose))
    page.view.selectRow(0)
    assert all(made.isEnabled() for made in page.of_one)
    assert not page.loose.isEnabled()


def test_more_time_finds_no_worse_plan(planned: OnDemo, qtbot: Any) -> None:
    quick = planned.page.answer.plan.best
    planned.page.seconds = 3.0
    planned.page.solve()
    wait(planned, qtbot)
    best = planned.page.answer.plan.best
    assert (best.late_cost, best.between) <= (quick.late_cost, quick.between)
