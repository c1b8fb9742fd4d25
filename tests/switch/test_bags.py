"""The kit shared out by row and by person."""

from hypothesis import given

from changeover.planter.machine import Planter
from changeover.planter.places import Place
from changeover.planter.setup import Setup
from changeover.switch.bags import bags, carried
from changeover.switch.kit import kit
from changeover.switch.progress import progress
from changeover.switch.tasks import PartCount
from tests.switch.switch_case import BEAN, LONG_ACRE, SETTINGS, bean, corn, plan, switches

WORK = plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE), BEAN)


def by_side(_task: str, place: Place) -> str:
    return "Ana" if (place.row or 0) <= 8 else "Ben"


def test_each_row_has_a_bag_with_its_parts() -> None:
    made = bags(WORK)
    assert [bag.place.row for bag in made] == list(range(1, 25))
    assert made[0].parts == (PartCount("S56", 1), PartCount("low", 1))


def test_each_person_carries_their_rows() -> None:
    assert carried(bags(WORK, by_side)) == {
        "Ana": (PartCount("S56", 8), PartCount("low", 8)),
        "Ben": (PartCount("S56", 16), PartCount("low", 16)),
    }


@given(switches())
def test_all_bags_together_are_the_kit(case: tuple[Planter, Setup, Setup]) -> None:
    planter, before, target = case
    work = plan(planter, before, target, BEAN)
    left = progress(work, [], before, SETTINGS)
    whole = {line.part: line.needed for line in kit(work, (), ()).lines}
    for made in (bags(work), bags(left, by_side)):
        held = [part for bag in made for part in bag.parts]
        assert {
            name: sum(p.count for p in held if p.part == name) for name in {p.part for p in held}
        } == whole
