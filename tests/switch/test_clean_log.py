"""The log of a clean-out: who, when, where, from which lot to which, how, and what is missing."""

from dataclasses import replace

from changeover.planter.places import PLANTER
from changeover.seed.lots import Purity
from changeover.switch.clean_log import CleanLog, clean_log
from changeover.switch.tasks import Tick, Worklist
from tests.switch.switch_case import BEAN, CORN, LONG_ACRE, RULES, bean, corn, plan, rows

SEED_FIELD = replace(BEAN, purity=Purity.CERTIFIED)
WORK = plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE), SEED_FIELD)


def log(ticks: list[Tick], work: Worklist = WORK) -> CleanLog:
    lots = {lot.number: lot for lot in (CORN, SEED_FIELD)}
    return clean_log(LONG_ACRE, work, ticks, corn(LONG_ACRE), bean(LONG_ACRE), lots, RULES)


def key(start: str) -> str:
    return next(task.key for task in WORK.tasks if task.key.startswith(start))


def test_a_line_says_who_when_where_which_lots_and_how() -> None:
    made = [Tick(key("meter"), place, "Ana", "2026-05-04T07:12:00Z") for place in rows(1, 2, 3)]
    (line,) = log(made).lines
    assert (line.who, line.when, line.where) == ("Ana", "2026-05-04T07:12:00Z", "rows 1–3")
    assert line.lot_before == "lot H-9, Hill Nine, fungicide"
    assert line.lot_after == "lot S-114, Bottom Bean, treated"
    assert line.what == "Meter opened and cleaned"
    assert line.into == "lot H-9, Hill Nine, fungicide"
    assert line.steps[0].startswith("Open the meter over a container")
    assert not any("→" in step for step in line.steps)


def test_lines_come_in_the_order_of_the_work() -> None:
    made = [
        Tick(key("clean_tube"), rows(1)[0], "Ben", "2026-05-04T09:00:00Z"),
        Tick(key("meter"), rows(1)[0], "Ana", "2026-05-04T08:00:00Z"),
        Tick(key("meter"), rows(2)[0], "Ben", "2026-05-04T08:30:00Z"),
    ]
    assert [line.who for line in log(made).lines] == ["Ana", "Ben", "Ben"]


def test_setting_work_is_no_cleaning() -> None:
    made = [Tick("set_depth", rows(1)[0], "Ana", "2026-05-04T08:00:00Z")]
    assert not log(made).lines


def test_what_is_missing_is_named_until_all_is_cleaned_and_inspected() -> None:
    every = [
        Tick(task.key, place, "Ana", "2026-05-04T08:00:00Z")
        for task in WORK.tasks
        for place in task.places
    ]
    by_two = [
        replace(tick, who="Ben") if tick.task.startswith("inspect_clean") else tick
        for tick in every
    ]
    assert log(by_two).whole
    assert log(every).missing == ("A second person's look: Ana cleaned and looked it over",)
    without = [tick for tick in every if tick.place != PLANTER]
    missing = log(without).missing
    assert any(text.startswith("Clear ledges and drip points") for text in missing)
    assert any(text.startswith("A second person looks") for text in missing)


def test_the_inspection_stands_apart_with_its_inspector() -> None:
    made = [Tick(key("inspect_clean"), PLANTER, "Cleo", "2026-05-04T10:00:00Z")]
    (line,) = log(made).inspected
    assert (line.who, line.where) == ("Cleo", "planter")
