"""The season is planned from the store: real switch times, fixed jobs, and clear refusals."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date

import pytest

from changeover.desk.door import Outcome
from changeover.desk.edits import Edit, PlannedJob, PutJob
from changeover.desk.season.costs import (
    Choice,
    choice_text,
    cost_lines,
    finish_or_change,
    switch_costs,
)
from changeover.desk.season.fixed import fix_job, fixings, let_go
from changeover.desk.season.lines import job_lines, jobs_entered, order_text, proof_text
from changeover.desk.season.parts import scarce_parts
from changeover.desk.season.plan import (
    SeasonAnswer,
    SeasonInputs,
    read_inputs,
    season_of,
    solve_season,
    times_of,
)
from changeover.desk.season.rules import SeasonRules, read_rules, rules_of, rules_texts, set_rules
from changeover.desk.shop_edits import PutFixing
from changeover.quantities import Q, Refusal
from changeover.store.opening import Store
from changeover.switch.difference import apply_difference, difference
from changeover.switch.search import Limits

MAY = date(2026, 5, 4)
QUICK = Limits(seconds=5.0, workers=1)
Do = Callable[[Edit], Outcome]


@pytest.fixture
def inputs(demo: Store) -> SeasonInputs:
    return replace(read_inputs(demo, MAY), begins=MAY)


@pytest.fixture
def answer(inputs: SeasonInputs) -> SeasonAnswer:
    return solve_season(inputs, QUICK)


def job_of(demo: Store, name: str) -> PlannedJob:
    return next(job for job in jobs_entered(demo)[0] if job.name == name)


def test_every_job_is_planned_once_and_never_worse_than_the_simple_orders(
    answer: SeasonAnswer,
) -> None:
    best = answer.plan.best
    assert sorted(slot.job for slot in best.slots) == sorted(j.name for j in answer.inputs.jobs)
    for order in (answer.plan.as_entered, answer.plan.nearest_due):
        assert order is not None
        assert (best.late_cost, best.between) <= (order.late_cost, order.between)
    assert answer.plan.late_bound <= best.late_cost


def test_planting_minutes_are_area_over_field_capacity(inputs: SeasonInputs) -> None:
    season = season_of(inputs)
    job = next(one for one in inputs.jobs if one.name == "beans Far Hundred")
    known = next(one for one in inputs.fleet if one.planter.name == "Old Fiddle 24")
    feet = float(known.planter.width.to("ft").magnitude)
    acres_an_hour = float(job.speed.to("mph").magnitude) * feet * inputs.rules.efficiency / 8.25
    hours = float(inputs.area(job).to("acre").magnitude) / acres_an_hour
    minutes = next(one for one in season.jobs if one.key == job.name).minutes
    assert minutes["Old Fiddle 24"] == pytest.approx(60 * hours, abs=0.6)


def test_a_job_meant_for_one_planter_can_only_be_done_there(inputs: SeasonInputs) -> None:
    job = next(one for one in season_of(inputs).jobs if one.key == "beans Otter Flat")
    assert set(job.minutes) == {"Old Fiddle 24"}


def test_nothing_to_change_takes_no_time_and_a_switch_gives_just_the_target(
    inputs: SeasonInputs,
) -> None:
    times, known = times_of(inputs), inputs.fleet[0]
    job = next(one for one in inputs.jobs if times.setup(known, one) is not None)
    target = times.setup(known, job)
    assert target is not None
    assert times.time(known, target, target, job.lot).elapsed == 0
    gap = difference(known.planter, known.settings, known.as_found, target)
    after = apply_difference(known.as_found, gap)
    assert difference(known.planter, known.settings, after, target).rows_that_differ == ()


def test_a_set_too_small_for_two_planters_is_shared(inputs: SeasonInputs) -> None:
    times = times_of(inputs)
    setups = {
        (known.planter.name, job.name): setup
        for known in inputs.fleet
        for job in inputs.jobs
        if (setup := times.setup(known, job)) is not None
    }
    assert "B45" in scarce_parts(inputs.fleet, setups)["pinto Crow Strip"]


def test_a_fixed_job_stays_on_its_planter_and_day(demo: Store, do: Do) -> None:
    back = do(fix_job(demo, "beans Far Hundred", "Magpie 31", date(2026, 5, 9))).inverse
    answer = solve_season(replace(read_inputs(demo), begins=MAY), QUICK)
    (slot,) = (one for one in answer.plan.best.slots if one.job == "beans Far Hundred")
    assert (slot.planter, answer.days(slot)[0]) == ("Magpie 31", date(2026, 5, 9))
    assert answer.fixed("beans Far Hundred")
    do(back)
    assert fixings(demo) == ()


def test_a_job_fixed_on_a_morning_taken_by_its_switch_is_planned_from_that_day_on(
    demo: Store, do: Do
) -> None:
    do(fix_job(demo, "beans Far Hundred", "Magpie 31", MAY))
    answer = solve_season(replace(read_inputs(demo), begins=MAY), QUICK)
    (slot,) = (one for one in answer.plan.best.slots if one.job == "beans Far Hundred")
    assert (slot.planter, answer.loosened) == ("Magpie 31", True)
    assert answer.days(slot)[0] >= MAY
    assert "from their day on" in proof_text(answer)


def test_a_fixed_job_can_be_moved_and_let_go(demo: Store, do: Do) -> None:
    do(fix_job(demo, "beans Far Hundred", "Magpie 31"))
    do(fix_job(demo, "beans Far Hundred", "Penny Twelve"))
    assert [one.planter for one in fixings(demo)] == ["Penny Twelve"]
    do(let_go(demo, "beans Far Hundred"))
    assert fixings(demo) == ()


def test_what_cannot_be_fixed_is_refused_with_what_to_do(demo: Store, do: Do) -> None:
    with pytest.raises(Refusal, match="is meant for Old Fiddle 24"):
        fix_job(demo, "beans Otter Flat", "Magpie 31")
    with pytest.raises(Refusal, match="no job"):
        fix_job(demo, "potatoes", "Magpie 31")
    with pytest.raises(Refusal, match="no fixed job"):
        let_go(demo, "beans Otter Flat")


def test_a_window_that_has_passed_is_named(demo: Store) -> None:
    late = replace(read_inputs(demo), begins=date(2026, 6, 1))
    with pytest.raises(Refusal, match=r"beans .* ended on 2026-05-\d\d .* later last day"):
        season_of(late)


def test_no_job_and_a_job_without_a_field_are_refused(inputs: SeasonInputs) -> None:
    with pytest.raises(Refusal, match="no job left to plan"):
        solve_season(replace(inputs, jobs=()), QUICK)
    homeless = replace(inputs.jobs[0], field=None)
    with pytest.raises(Refusal, match="has no field"):
        season_of(replace(inputs, jobs=(homeless,)))


def test_what_cannot_be_planned_is_left_out_by_name_and_the_rest_planned(
    inputs: SeasonInputs,
) -> None:
    homeless, *others = inputs.jobs[:3]
    homeless = replace(homeless, field=None)
    answer = solve_season(replace(inputs, jobs=(homeless, *others)), QUICK)
    assert "has no field" in answer.left_out[homeless.name]
    assert {slot.job for slot in answer.plan.best.slots} == {job.name for job in others}
    lines = job_lines((homeless, *others), inputs.fields, answer, answer.plan.best)
    assert [line.planned == "not planned" for line in lines] == [True, False, False]
    with pytest.raises(Refusal, match="has no field"):
        solve_season(replace(inputs, jobs=(homeless,)), QUICK)


def test_a_job_that_no_planter_can_do_is_named(inputs: SeasonInputs) -> None:
    narrow = replace(inputs.jobs[0], row_spacing=Q(7.5, "in"), planter=None)
    with pytest.raises(Refusal, match=f"No planter can do “{narrow.name}”"):
        solve_season(replace(inputs, jobs=(narrow,)), QUICK)


def test_done_jobs_are_left_out_and_entry_order_is_kept(demo: Store, do: Do) -> None:
    first = jobs_entered(demo)[0][0]
    do(PutJob(replace(first, done=True), before=first))
    do(PutJob(replace(first, name="a last one", done=False)))
    names = [job.name for job in read_inputs(demo).jobs]
    assert first.name not in names
    assert names[-1] == "a last one"


def test_a_fixing_of_a_job_that_is_gone_is_passed_over(demo: Store, do: Do) -> None:
    do(fix_job(demo, "beans Far Hundred", "Magpie 31"))
    do(PutJob(None, before=job_of(demo, "beans Far Hundred")))
    assert read_inputs(demo).fixings == ()


def test_rules_are_typed_and_kept(demo: Store, do: Do) -> None:
    texts = {**rules_texts(rules_of(demo)), "Hours a day": "12", "Days fit to plant": "45 %"}
    rules = read_rules(rules_of(demo), {**texts, "Plan from": "2026-05-04"})
    do(set_rules(demo, rules))
    assert rules_of(demo) == rules
    assert (rules.hours, rules.suitable, rules.begins) == (12, 0.45, MAY)


@pytest.mark.parametrize(
    ("key", "text"),
    [
        ("Plan from", "soon"),
        ("Hours a day", "25"),
        ("Hours a day", "many"),
        ("Days fit to plant", "0 %"),
        ("Field efficiency", "120 %"),
        ("Between places", "-5 min"),
    ],
)
def test_rules_that_cannot_be_are_refused(key: str, text: str) -> None:
    rules = SeasonRules()
    with pytest.raises(Refusal):
        read_rules(rules, {**rules_texts(rules), key: text})


def test_each_switch_of_the_plan_has_its_cost(inputs: SeasonInputs) -> None:
    times = times_of(inputs)
    answer = solve_season(inputs, QUICK, times)
    costs = switch_costs(answer, times)
    assert {one.job for one in costs} == {s.job for s in answer.plan.best.slots if s.switch}
    for cost in costs:
        hours = float(cost.lost.to("hour").magnitude)
        known = next(one for one in inputs.fleet if one.planter.name == cost.planter)
        feet = float(known.planter.width.to("ft").magnitude)
        acres = 5.0 * feet * inputs.rules.efficiency / 8.25 * hours
        assert float(cost.area.to("acre").magnitude) == pytest.approx(acres, rel=1e-3)
    assert len(cost_lines(answer, times)) >= len(costs)


def test_finishing_first_is_advised_when_it_costs_less(answer: SeasonAnswer) -> None:
    for choice in finish_or_change(answer):
        assert choice.planter in {known.planter.name for known in answer.inputs.fleet}
        assert choice.finish == ((choice.late, choice.between) >= (0, 0))
    assert "finish the corn first: 45 min less" in choice_text(Choice("Bar", "corn", 0.0, 45))
    assert "change now, before the corn: 600 less" in choice_text(Choice("Bar", "corn", -600.0, 9))


def test_lines_say_where_and_when(answer: SeasonAnswer, demo: Store) -> None:
    jobs, fields = jobs_entered(demo)
    lines = job_lines(jobs, fields, answer, answer.plan.best)
    assert all(line.planned for line in lines)
    assert order_text(None) == "cannot keep the fixed jobs"
    assert "proven" in proof_text(answer)


def test_a_fixing_follows_a_planter_that_is_renamed(demo: Store, do: Do) -> None:
    from changeover.desk.edits import PutPlanter

    do(fix_job(demo, "beans Far Hundred", "Magpie 31"))
    with demo.read() as work:
        planter = work.planters.get("Magpie 31")
    do(PutPlanter(replace(planter, name="Jay 31"), before=planter))
    assert [one.planter for one in fixings(demo)] == ["Jay 31"]


def test_a_second_writer_of_a_fixing_is_told_of_the_first(demo: Store, do: Do) -> None:
    from changeover.desk.edits import Conflict

    edit = fix_job(demo, "beans Far Hundred", "Magpie 31")
    do(edit)
    do(fix_job(demo, "beans Far Hundred", "Penny Twelve"))
    with pytest.raises(Conflict):
        do(PutFixing(None, before=edit.value))
