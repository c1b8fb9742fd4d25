"""Limits from the user's manual: checked when entered, and ahead of all others."""

import pytest

from changeover.files.wear_limits import bundled_wear_limits
from changeover.proof.own_limits import OwnLimit, own_limit, with_own
from changeover.proof.wear import Kind, limit_for
from changeover.quantities import Q, Refusal
from changeover.seed.reasons import Trust

PUBLISHED = bundled_wear_limits()
DISC = "opener disc diameter"


def own(part: str = DISC, **other) -> OwnLimit:
    given = {"applies": "", "low": Q(14.25, "in"), "high": None, "new": None, "note": "page 40"}
    return OwnLimit(part, **{**given, **other})


@pytest.mark.parametrize(
    ("bounds", "kind"),
    [
        ({"low": Q(1, "in"), "high": None}, Kind.LEAST),
        ({"low": None, "high": Q(1, "in")}, Kind.MOST),
        ({"low": Q(1, "in"), "high": Q(2, "in")}, Kind.BETWEEN),
    ],
)
def test_the_bounds_say_what_sort_of_limit_it_is(bounds, kind) -> None:
    assert own_limit(own(**bounds), PUBLISHED).kind is kind


def test_it_takes_action_and_range_from_the_published_one_and_its_own_source() -> None:
    found = own_limit(own(), PUBLISHED)
    assert "in pairs" in found.action
    assert (found.source.text, found.source.trust) == ("your manual: page 40", Trust.MANUAL)
    assert found.low == Q(14.25, "in")


def test_a_range_that_does_not_hold_the_users_figures_is_dropped() -> None:
    assert own_limit(own(low=Q(20, "in")), PUBLISHED).possible is None
    assert own_limit(own(applies="15 in new"), PUBLISHED).possible is not None


def test_a_part_that_is_only_looked_at_becomes_measured() -> None:
    found = own_limit(own("wiper", low=None, high=Q(2, "mm")), PUBLISHED)
    assert (found.kind, found.name, found.action) == (Kind.MOST, "Wiper", "Replace the wiper.")


def test_a_part_of_the_users_own() -> None:
    found = own_limit(own("row cleaner bearing", low=None, high=Q(1, "mm")), PUBLISHED)
    assert found.name == "Row cleaner bearing"
    assert "your manual" in found.action


def test_own_limits_stand_first_and_win() -> None:
    every = with_own([own()], PUBLISHED)
    assert limit_for(DISC, "15 in new", every) is every[0]


@pytest.mark.parametrize(
    "wrong",
    [
        {"part": " "},
        {"low": None},
        {"low": Q(-1, "in")},
        {"low": Q(3, "in"), "high": Q(2, "in")},
        {"new": Q(200, "in")},
        {"note": " "},
    ],
)
def test_limits_that_cannot_be_are_refused(wrong) -> None:
    with pytest.raises(Refusal):
        own(**wrong)
