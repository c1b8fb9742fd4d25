"""The crew timetable: sharing rows, waiting, ways, hours, what is done, and interruption."""

import time

import pytest

from changeover.quantities import Refusal
from changeover.switch.timetable.solve import (
    Activity,
    Limits,
    Mode,
    Person,
    Progress,
    SearchStatus,
    Stint,
    Work,
    timetable,
    what_if,
)

ROWS = tuple(range(1, 13))
PAIR = (Person("Ann"), Person("Bo"))


def on_rows(key: str, each: float, **more: object) -> Activity:
    return Activity(key, (Mode(minutes_per_row=each),), ROWS, **more)  # type: ignore[arg-type]


def test_rows_are_shared_evenly_by_two() -> None:
    plan = timetable(Work((on_rows("depth", 2),), PAIR))
    assert (plan.length, plan.bound, plan.status) == (12, 12, SearchStatus.OPTIMAL)
    assert sorted(len(stint.rows) for stint in plan.stints) == [6, 6]
    assert plan.gap == 0
    assert set(plan.who["depth"]) == {"Ann", "Bo"}


def test_a_share_is_rounded_up_to_whole_minutes() -> None:
    plan = timetable(Work((Activity("closing", (Mode(0, 0.75),), rows=(1, 2, 3)),), PAIR[:1]))
    assert plan.length == 3


def test_work_by_row_begins_before_all_rows_are_ready() -> None:
    clean = Activity("clean", (Mode(minutes_per_row=2, uses={"vacuum": 1}),), ROWS)
    whole = Work((clean, on_rows("swap", 1, after=("clean",))), PAIR, {"vacuum": 1})
    by_row = Work((clean, on_rows("swap", 1, after_by_row=("clean",))), PAIR, {"vacuum": 1})
    assert timetable(whole).length == 30
    assert timetable(by_row).length < 30


def test_states_take_turns_with_minutes_between() -> None:
    work = Work(
        (
            Activity("wheels", (Mode(10),), state="raised"),
            Activity("tanks", (Mode(20),), state="lowered"),
            Activity("cab", (Mode(5),)),
        ),
        PAIR,
        state_minutes=4,
    )
    assert timetable(work).length == 34


def test_the_quicker_way_is_taken_while_its_tool_is_free() -> None:
    ways = (Mode(30), Mode(10, uses={"vacuum": 1}))
    work = Work((Activity("left", ways), Activity("right", ways)), PAIR, {"vacuum": 1})
    plan = timetable(work)
    assert plan.length == 20
    assert [stint.mode for stint in plan.stints] == [1, 1]


def test_the_walk_is_the_least_of_the_shortest() -> None:
    work = Work(
        (
            Activity("far left", (Mode(10),), place=1),
            Activity("left", (Mode(10),), place=2),
            Activity("right", (Mode(10),), place=23),
            Activity("far right", (Mode(10),), place=24),
        ),
        PAIR,
    )
    plan = timetable(work)
    assert (plan.length, plan.walk, plan.walk_bound) == (20, 2, 2)


def test_work_waits_for_a_person_to_come() -> None:
    work = Work((Activity("meters", (Mode(30),), skill="meters"),), (Person("Ann"), LATE))
    assert timetable(work).stints == (Stint("meters", 45, 75, ("Late",)),)


LATE = Person("Late", frozenset({"meters"}), hours=((0, 20), (45, 90)))


def test_what_is_done_is_kept_and_only_the_rest_is_planned() -> None:
    work = Work((on_rows("depth", 2), Activity("cab", (Mode(6),), after=("depth",))), PAIR)
    done = [Stint("depth", 0, 8, ("Ann",), (1, 2, 3, 4)), Stint("depth", 0, 10, ("Bo",), (12,))]
    plan = timetable(work, done=done, now=9)
    assert set(done) <= set(plan.stints)
    rest = [row for stint in plan.stints if stint not in done for row in stint.rows]
    assert sorted(rest) == [5, 6, 7, 8, 9, 10, 11]
    assert (plan.length, plan.bound) == (23, 23)


def test_all_done_leaves_nothing_to_plan() -> None:
    work = Work((Activity("cab", (Mode(6),)),), PAIR)
    plan = timetable(work, done=[Stint("cab", 0, 6, ("Ann",))], now=20)
    assert (plan.length, plan.status, len(plan.stints)) == (6, SearchStatus.OPTIMAL, 1)


def test_one_more_person_or_vacuum_is_told_in_minutes() -> None:
    clean = Activity("clean", (Mode(minutes_per_row=2, uses={"vacuum": 1}),), ROWS)
    work = Work((clean,), PAIR, {"vacuum": 1})
    assert what_if(work, persons=[Person("Cy")]).minutes_saved == 0
    assert what_if(work, tools={"vacuum": 1}).minutes_saved == 12


def test_the_same_seed_gives_the_same_timetable() -> None:
    work = Work((on_rows("depth", 2), on_rows("closing", 1)), PAIR)
    alone = Limits(seconds=20, workers=1, seed=7)
    assert timetable(work, alone) == timetable(work, alone)


def test_a_stop_ends_soon_with_the_best_so_far() -> None:
    told: list[Progress] = []
    work = Work(tuple(on_rows(f"task {n}", 1 + n / 4, state="ab"[n % 2]) for n in range(8)), PAIR)
    begun = time.monotonic()
    stop = Limits(seconds=60, stop=lambda: bool(told), report=told.append)
    plan = timetable(work, stop)
    assert time.monotonic() - begun < 5
    assert plan.stopped
    assert len(plan.keys) == 8
    fractions = [progress.fraction for progress in told]
    assert fractions == sorted(fractions)


def test_a_failing_report_reaches_the_caller() -> None:
    def fail(progress: Progress) -> None:
        raise RuntimeError(str(progress.fraction))

    with pytest.raises(RuntimeError):
        timetable(Work((on_rows("depth", 2),), PAIR), Limits(report=fail))


def refusal(*activities: Activity, **more: object) -> str:
    with pytest.raises(Refusal) as refused:
        timetable(Work(activities, **{"crew": PAIR, **more}))  # type: ignore[arg-type]
    return str(refused.value)


def test_a_circle_of_prerequisites_is_named() -> None:
    said = refusal(
        Activity("open", (Mode(1),), after=("close",)),
        Activity("swap", (Mode(1),), after=("open",)),
        Activity("close", (Mode(1),), after_by_row=("swap",)),
    )
    assert "open after close after swap after open" in said
    assert "take one of them away" in said


@pytest.mark.parametrize(
    ("activity", "words"),
    [
        (Activity("a", (Mode(1),), after=("b",)), "“b”, which is not in the work"),
        (Activity("a", (Mode(1),), skill="meters"), "with the skill “meters” and the crew has 0"),
        (Activity("a", (Mode(1, persons=3),)), "needs 3 persons and the crew has 2"),
        (Activity("a", (Mode(1, uses={"vacuum": 2}),)), "needs 2 of “vacuum”"),
        (Activity("a", (Mode(-1),)), "below zero"),
        (Activity("a", ()), "no way to be done"),
        (Activity("a", (Mode(1),), rows=(2, 1)), "not ascending"),
    ],
)
def test_what_cannot_be_is_refused_by_name(activity: Activity, words: str) -> None:
    said = refusal(activity, tools={"vacuum": 1})
    assert "“a”" in said
    assert words in said


def test_names_twice_and_hours_out_of_order_are_refused() -> None:
    once = Activity("a", (Mode(1),))
    assert "“a” is there twice" in refusal(once, once)
    assert "hours of Ann" in refusal(once, crew=(Person("Ann", hours=((9, 5),)),))
    assert "below zero" in refusal(once, state_minutes=-1)


def test_hours_too_short_are_refused_with_what_to_change() -> None:
    short = (Person("Ann", hours=((0, 30), (40, 60))),)
    long = Activity("wash", (Mode(45),))
    assert "longest stretch of hours is 30 min" in refusal(long, crew=short)
    several = [Activity(f"a{n}", (Mode(20),)) for n in range(4)]
    assert "does not fit in the hours" in refusal(*several, crew=short)


@pytest.mark.parametrize(
    ("stint", "words"),
    [
        (Stint("b", 0, 1, ("Ann",)), "is not in the work"),
        (Stint("a", 0, 1, ("Ann",), (9,)), "Row(s) 9"),
        (Stint("a", 8, 9, ("Ann",), (1,)), "has not begun"),
    ],
)
def test_what_cannot_be_done_yet_is_refused(stint: Stint, words: str) -> None:
    work = Work((Activity("a", (Mode(0, 1),), rows=(1, 2)),), PAIR)
    with pytest.raises(Refusal, match=words.replace("(", r"\(").replace(")", r"\)")):
        timetable(work, done=[stint], now=5)
