"""The timetable against published project-scheduling instances of known least length."""

from changeover.switch.timetable.solve import Activity, Limits, Mode, SearchStatus, Work, timetable
from tests.switch.timetable_laws import broken

PROJECT_SOURCE = "Python-MIP documentation, resource constrained project scheduling (10 jobs)"
DURATIONS = (3, 2, 5, 4, 2, 3, 4, 2, 4, 6)
USES = ((5, 1), (0, 4), (1, 4), (1, 3), (3, 2), (3, 1), (2, 4), (4, 0), (5, 2), (2, 5))
AFTER = ((), (), (), (1,), (1,), (4,), (4,), (3, 6, 7), (2, 5, 6), (2, 5))

SHOP_SOURCE = "Fisher & Thompson 1963, six by six job shop; known least length 55"
SHOP = (
    ((2, 1), (0, 3), (1, 6), (3, 7), (5, 3), (4, 6)),
    ((1, 8), (2, 5), (4, 10), (5, 10), (0, 10), (3, 4)),
    ((2, 5), (3, 4), (5, 8), (0, 9), (1, 1), (4, 7)),
    ((1, 5), (0, 5), (2, 5), (3, 3), (4, 8), (5, 9)),
    ((2, 9), (1, 3), (4, 5), (5, 4), (0, 3), (3, 1)),
    ((1, 3), (3, 3), (5, 9), (0, 10), (4, 4), (2, 1)),
)


def project() -> Work:
    activities = tuple(
        Activity(
            str(job),
            (Mode(minutes, persons=0, uses={"r1": uses[0], "r2": uses[1]}),),
            after=tuple(str(before) for before in after),
        )
        for job, (minutes, uses, after) in enumerate(zip(DURATIONS, USES, AFTER, strict=True), 1)
    )
    return Work(activities, tools={"r1": 6, "r2": 8})


def shop() -> Work:
    activities = tuple(
        Activity(
            f"{job}.{step}",
            (Mode(minutes, persons=0, uses={f"machine {machine}": 1}),),
            after=(f"{job}.{step - 1}",) if step else (),
        )
        for job, steps in enumerate(SHOP)
        for step, (machine, minutes) in enumerate(steps)
    )
    return Work(activities, tools={f"machine {number}": 1 for number in range(6)})


def test_ten_jobs_with_two_resources(outside_check) -> None:
    plan = timetable(project(), Limits(seconds=60))
    assert broken(project(), plan.stints) == []
    assert plan.status is SearchStatus.OPTIMAL
    outside_check(
        calculation="least length of a project", source=PROJECT_SOURCE, trust="published",
        printed=21, ours=plan.length, unit="time units", tolerance=0,
    )  # fmt: skip


def test_six_by_six_job_shop(outside_check) -> None:
    plan = timetable(shop(), Limits(seconds=60))
    assert broken(shop(), plan.stints) == []
    assert plan.bound == plan.length
    outside_check(
        calculation="least length of a job shop", source=SHOP_SOURCE, trust="published",
        printed=55, ours=plan.length, unit="time units", tolerance=0,
        note="keyed in and compared with public copies of the instance",
    )  # fmt: skip
