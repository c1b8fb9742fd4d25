"""Whoever cleans never looks the clean-out over; a crew of one needs somebody from outside."""

from dataclasses import replace

import pytest

from changeover.quantities import Units
from changeover.seed.lots import Purity
from changeover.switch.clean_log import cleans
from changeover.switch.crew import CrewMember, SharedTool
from changeover.switch.crew_second_look import SOMEBODY
from changeover.switch.crew_work import CrewWork, crew_work
from changeover.switch.progress import Progress, progress
from changeover.switch.tasks import Tick, Worklist
from changeover.switch.timetable.solve import Limits, timetable
from changeover.switch.worklist import plan_worklist
from tests.switch.switch_case import BEAN, LONG_ACRE, LOTS, RULES, SETTINGS, bean, corn, plan

ANN, BO, CY = CrewMember("Ann"), CrewMember("Bo"), CrewMember("Cy")
QUICK = Limits(seconds=1.0, workers=1)
PURE = {**LOTS, "S-114": replace(BEAN, purity=Purity.IDENTITY_PRESERVED)}


def worklist() -> Worklist:
    before, target = corn(LONG_ACRE), bean(LONG_ACRE)
    lots = (PURE, None, (), ())
    return plan_worklist(LONG_ACRE, SETTINGS, before, target, *lots, Units.US, RULES)


def work_of(*crew: CrewMember, ticks: tuple[Tick, ...] = ()) -> CrewWork:
    done: Progress = progress(worklist(), ticks, corn(LONG_ACRE), SETTINGS)
    return crew_work(LONG_ACRE, done, crew, (SharedTool("seed vacuum", 2),), 420, ticks)


def who(work: CrewWork) -> tuple[set[str], set[str]]:
    """Return who cleans and who looks it over, in the timetable found."""
    found = timetable(work.work, QUICK)
    keys = [key for key, task in work.tasks.items() if cleans(task)]
    look = next(key for key in work.tasks if key.startswith("inspect_clean"))
    return {name for key in keys for name in found.who[key]}, set(found.who[look])


@pytest.mark.parametrize("crew", [(ANN, BO), (ANN, BO, CY)])
def test_somebody_of_the_crew_looks_over_what_others_cleaned(crew: tuple[CrewMember, ...]) -> None:
    work = work_of(*crew)
    cleaned, looked = who(work)
    assert cleaned.isdisjoint(looked)
    assert cleaned | looked <= {one.name for one in crew}
    assert work.note == ""


def test_a_crew_of_one_is_told_that_somebody_else_must_look() -> None:
    work = work_of(ANN)
    assert who(work) == ({"Ann"}, {SOMEBODY})
    assert "a person from outside" in work.note
    found = timetable(work.work, QUICK)
    assert [stint.activity.partition(".")[0] for stint in found.by(SOMEBODY)] == ["inspect_clean"]


def test_who_has_ticked_cleaning_off_does_not_look() -> None:
    first = next(task for task in worklist().tasks if cleans(task))
    ticks = tuple(Tick(first.key, first.places[0], name, "") for name in ("Ann", "Bo"))
    assert who(work_of(ANN, BO, CY, ticks=ticks))[1] == {"Cy"}
    assert who(work_of(ANN, BO, ticks=ticks))[1] == {SOMEBODY}


def test_without_a_second_look_nothing_is_held() -> None:
    done = progress(
        plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE)), (), corn(LONG_ACRE), SETTINGS
    )
    work = crew_work(LONG_ACRE, done, (ANN,), (), 420).work
    assert [person.name for person in work.crew] == ["Ann"]
    assert not any(each.not_by for each in work.activities)
