"""Disc choice: only what is to hand, the best score first, each point with its reason."""

from datetime import date

import pytest

from changeover.planter.parts import Condition, Part, ShelfCount
from changeover.quantities import Q
from changeover.seed.case import Case
from changeover.seed.disc import answer_disc, hole_share, rank_discs
from changeover.seed.manual import ProvedSetup
from changeover.seed.reasons import Trust
from tests.seed.made_up import CORN_DISC, SOY_DISC, all_rows, case, lot, planter

RATE = Q(140_000, "seed/acre")


def best(given: Case) -> str | None:
    value = answer_disc(given, rank_discs(given, RATE)).value
    return value if isinstance(value, str) else None


def disc(code: str, hole: float | None = 3.5, cells: int = 56, **changes: object) -> Part:
    size = None if hole is None else Q(hole, "mm")
    given = {"code": code, "name": code, "sort": "disc", "cells": cells, "hole": size}
    given |= {"suits": frozenset({"soybean"})}
    return Part(**{**given, **changes})  # type: ignore[arg-type]


def plenty(*discs: Part) -> tuple[ShelfCount, ...]:
    return tuple(ShelfCount(one.code, Condition.NEW, 60) for one in discs)


def choice(*discs: Part, **changes: object) -> Case:
    return case(parts=discs, shelf=plenty(*discs), **changes)


def test_the_disc_for_the_crop_is_chosen() -> None:
    assert best(case("soybean")) == "S56"
    assert best(case("corn")) == "C30"
    assert best(case("sorghum")) == "M45"


def test_a_disc_of_which_there_is_none_is_never_proposed() -> None:
    gone = (ShelfCount("S56", Condition.WORN, 60), ShelfCount("C30", Condition.NEW, 60))
    ranked = rank_discs(case(shelf=gone), RATE)
    assert [one.disc.code for one in ranked] == ["C30"]
    assert best(case(shelf=gone)) is None


def test_mounted_discs_count_as_to_hand() -> None:
    found = all_rows(planter(), disc="S56")
    given = case(shelf=(), as_found=found)
    assert best(given) == "S56"
    assert answer_disc(given, rank_discs(given, RATE)).warnings == ()


def test_too_few_is_said_with_how_many_are_short() -> None:
    few = (ShelfCount("S56", Condition.GOOD, 8),)
    given = case(shelf=few)
    answer = answer_disc(given, rank_discs(given, RATE))
    assert answer.value == "S56"
    assert answer.warnings == ("Only 8 usable disc S56 for 12 rows: 4 short.",)


def test_more_cells_turn_slower_and_win() -> None:
    assert best(choice(disc("few", cells=40), disc("many", cells=80))) == "many"


@pytest.mark.parametrize(("hole", "wins"), [(3.5, True), (1.5, False), (5.5, False)])
def test_the_hole_that_fits_the_seed_wins(hole: float, wins: bool) -> None:
    given = choice(disc("fits", hole=3.4), disc("other", hole=hole))
    scores = {one.disc.code: one.score for one in rank_discs(given, RATE)}
    assert (scores["fits"] == scores["other"]) is wins
    assert scores["fits"] >= scores["other"]


def test_a_hole_as_wide_as_the_seed_is_never_proposed() -> None:
    assert best(choice(disc("wide", hole=6.9))) is None


def test_the_hole_is_held_to_the_width_not_the_thickness() -> None:
    flat = lot(length=Q(8, "mm"), width=Q(6, "mm"), thickness=Q(2, "mm"))
    assert hole_share(case(lot=flat), disc("x", hole=3.0)) == pytest.approx(0.5)


def test_two_lots_of_different_size_give_two_answers() -> None:
    small, large = disc("small", hole=2.6), disc("large", hole=4.4)
    sizes = [lot(length=Q(x, "mm"), width=Q(x, "mm"), thickness=Q(x, "mm")) for x in (5, 8)]
    answers = [best(choice(small, large, lot=one)) for one in sizes]
    assert answers == ["small", "large"]


def test_the_owners_seed_range_gives_and_takes_points() -> None:
    inside = disc("in", hole=None, seed_from=Q(6, "mm"), seed_to=Q(7, "mm"))
    outside = disc("out", hole=None, seed_from=Q(8, "mm"))
    scores = {one.disc.code: one.score for one in rank_discs(choice(inside, outside), RATE)}
    assert scores["in"] - scores["out"] == pytest.approx(7)


def test_a_proved_disc_wins_over_an_equal_one() -> None:
    record = ProvedSetup("May", "soybean", "b", None, {"disc": "b"}, "Made-up", date(2026, 5, 1))
    given = choice(disc("a"), disc("b"), records=(record,))
    assert best(given) == "b"
    assert best(choice(disc("a"), disc("b"))) == "a"


def test_each_point_names_its_ground() -> None:
    given = case()
    answer = answer_disc(given, rank_discs(given, RATE))
    assert answer.reason.trust is Trust.RECORD
    lines = answer.reason.how.split("\n")
    assert lines[0].startswith("S56: 9 points, 60 to hand (")
    assert "its owner marked it for this crop (your shelf)" in lines[0]
    assert "marked it for other crops" in answer.reason.how


def test_without_a_rate_disc_speed_gives_no_points() -> None:
    ranked = rank_discs(choice(CORN_DISC, SOY_DISC), None)
    assert all(one.speed is None for one in ranked)
    assert "rpm" not in ranked[0].text


def test_a_disc_without_any_mark_or_size_is_not_proposed() -> None:
    plain = disc("plain", hole=None, suits=frozenset())
    assert best(choice(plain)) is None


def test_discs_that_came_off_last_are_proposed_with_how_many_to_inspect() -> None:
    shelf = (ShelfCount("S56", Condition.INSPECT, 60), ShelfCount("C30", Condition.NEW, 60))
    given = case(shelf=shelf)
    answer, rows = answer_disc(given, rank_discs(given, RATE)), len(given.rows)
    said = (
        f"Only 0 usable disc S56 for {rows} rows: inspect {rows} of the 60 that wait on the shelf."
    )
    assert (answer.value, answer.warnings) == ("S56", (said,))


def test_usable_discs_win_over_those_that_wait_to_be_inspected() -> None:
    one, other = disc("A56"), disc("B56")
    shelf = (ShelfCount("A56", Condition.INSPECT, 60), ShelfCount("B56", Condition.GOOD, 60))
    assert best(case(parts=(one, other), shelf=shelf)) == "B56"
