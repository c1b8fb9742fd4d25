"""At most one switch of a planter is open; its before and its ticks outlive closing."""

import pytest

from changeover.planter.places import Place
from changeover.planter.setup import Cell, Setup
from changeover.quantities import Q, Refusal
from changeover.store.opening import Store, open_store
from changeover.store.switches import ABANDONED, CLOSED
from changeover.store.values import NextJob, OpenSwitch
from changeover.switch.tasks import Tick

JOB = NextJob("K-1", speed=Q(8.0, "km/h"), seed_rate=Q(79_000.0, "seed/hectare"))
BEFORE = Setup({Cell("disc", Place.of_row(1)): "C30", Cell("depth", Place.of_row(1)): 5})
TICKS = (Tick("meter", Place.of_row(1), "Ada", "2026-05-04T07:30:00+00:00"),)
SWITCH = OpenSwitch(JOB, BEFORE, "2026-05-04T07:00:00+00:00", TICKS)


@pytest.fixture
def begun(stocked) -> Store:
    with stocked.work("Ada") as work:
        work.switches.begin("Small Bar", SWITCH)
    return stocked


def test_a_switch_comes_back_as_it_was(begun) -> None:
    with begun.read() as work:
        assert work.switches.open("Small Bar") == SWITCH


def test_a_half_done_switch_outlives_closing_the_program(begun, where) -> None:
    begun.close()
    again = open_store(where)
    with again.read() as work:
        assert work.switches.require("Small Bar").ticks == TICKS
    again.close()


def test_a_second_switch_is_refused_while_one_is_open(begun) -> None:
    with pytest.raises(Refusal, match="a switch is open already"), begun.work("Ada") as work:
        work.switches.begin("Small Bar", SWITCH)


def test_changing_the_plan_keeps_before_and_ticks(begun) -> None:
    with begun.work("Ada") as work:
        work.switches.choose("Small Bar", NextJob("K-2"))
    with begun.read() as work:
        found = work.switches.require("Small Bar")
    assert (found.job.lot, found.before, found.ticks) == ("K-2", BEFORE, TICKS)


@pytest.mark.parametrize("state", [CLOSED, ABANDONED])
def test_a_switch_that_has_ended_is_not_open(begun, state) -> None:
    with begun.work("Ada") as work:
        work.switches.end("Small Bar", state, "2026-05-04T17:00:00+00:00")
    with begun.read() as work:
        assert work.switches.open("Small Bar") is None


def test_a_closed_switch_can_be_opened_again_with_its_ticks(begun) -> None:
    with begun.work("Ada") as work:
        work.switches.end("Small Bar", CLOSED, "2026-05-04T17:00:00+00:00")
        work.switches.reopen("Small Bar")
        assert work.switches.open("Small Bar") == SWITCH


def test_ticks_come_and_go(begun) -> None:
    more = Tick("meter", Place.of_row(2), "Bo", "2026-05-04T08:00:00+00:00")
    with begun.work("Bo") as work:
        work.switches.tick("Small Bar", [more])
        work.switches.untick("Small Bar", TICKS)
    with begun.read() as work:
        assert work.switches.require("Small Bar").ticks == (more,)


def test_without_a_switch_the_sentence_says_what_to_do(stocked) -> None:
    with pytest.raises(Refusal, match="no next lot is chosen; choose one"), stocked.read() as work:
        work.switches.require("Small Bar")
