"""Clean-out by pair of lots: how far, in which order, and for whom it is logged."""

from dataclasses import replace

import pytest
from hypothesis import given

from changeover.seed.lots import Purity, SeedLot, Treatment
from changeover.switch.clean_out import catch_label, clean_levels, clean_out
from changeover.switch.clean_rules import CleanLevel, CleanPlace, How
from tests.switch.switch_case import BEAN, CORN, RULES, lots

PLAIN = SeedLot("A", "corn")
OTHER = SeedLot("B", "corn")


@pytest.mark.parametrize(
    ("old", "new", "levels"),
    [
        (PLAIN, PLAIN, [CleanLevel.SAME_LOT]),
        (PLAIN, OTHER, [CleanLevel.OTHER_VARIETY]),
        (PLAIN, replace(OTHER, crop="soybean"), [CleanLevel.DIFFERENT_CROP]),
        (None, OTHER, [CleanLevel.NOT_KNOWN]),
        (
            replace(PLAIN, treatment=Treatment.TREATED),
            OTHER,
            [CleanLevel.OTHER_VARIETY, CleanLevel.TREATED_TO_UNTREATED],
        ),
        (
            replace(PLAIN, genetically_modified=True),
            replace(OTHER, purity=Purity.IDENTITY_PRESERVED),
            [CleanLevel.OTHER_VARIETY, CleanLevel.IDENTITY_PRESERVED],
        ),
        (
            replace(PLAIN, genetically_modified=True),
            replace(OTHER, purity=Purity.ORGANIC),
            [CleanLevel.OTHER_VARIETY, CleanLevel.IDENTITY_PRESERVED, CleanLevel.ORGANIC],
        ),
        (
            PLAIN,
            replace(OTHER, purity=Purity.FOUNDATION),
            [CleanLevel.OTHER_VARIETY, CleanLevel.SEED_PRODUCTION],
        ),
    ],
)
def test_a_pair_of_lots_decides_the_levels(
    old: SeedLot | None, new: SeedLot, levels: list[CleanLevel]
) -> None:
    assert list(clean_levels(old, new)) == levels


@given(lots(), lots())
def test_each_place_is_cleaned_once_from_the_top_down(old: SeedLot, new: SeedLot) -> None:
    clean = clean_out(old, new, RULES)
    order = list(CleanPlace)
    assert list(clean.places) == sorted(clean.places, key=order.index)
    for hows in clean.places.values():
        assert list(hows) == sorted(hows, key=list(How).index)
    assert set(clean.steps) == set(clean.places)


@given(lots(), lots())
def test_every_level_that_holds_is_met_at_every_place(old: SeedLot, new: SeedLot) -> None:
    clean = clean_out(old, new, RULES)
    for level in clean.levels:
        for place, hows in RULES.clean_out.levels[level].places.items():
            assert hows <= set(clean.places[place])


@given(lots(), lots())
def test_a_clean_out_says_why_and_who_says_so(old: SeedLot, new: SeedLot) -> None:
    clean = clean_out(old, new, RULES)
    assert clean.why
    assert clean.source
    assert clean.needed == (old.number != new.number)


@given(lots())
def test_not_knowing_asks_at_least_as_much_as_another_crop(new: SeedLot) -> None:
    unknown = clean_out(None, new, RULES)
    known = RULES.clean_out.levels[CleanLevel.DIFFERENT_CROP]
    assert all(hows <= set(unknown.places[place]) for place, hows in known.places.items())


def test_no_next_lot_asks_for_no_clean_out() -> None:
    clean = clean_out(CORN, None, RULES)
    assert (clean.level, clean.needed) == (CleanLevel.NO_NEXT_LOT, False)


def test_the_container_carries_lot_name_and_treatment() -> None:
    assert catch_label(CORN) == "lot H-9, Hill Nine, fungicide"
    assert catch_label(replace(CORN, treatment=Treatment.NONE)) == "lot H-9, Hill Nine"
    assert "not for planting" in catch_label(None)


def test_treated_seed_is_cautioned_of_when_it_comes_out() -> None:
    treated = clean_out(CORN, BEAN, RULES)
    plain = clean_out(PLAIN, BEAN, RULES)
    said = RULES.cautions.by_key["treated_left"].text
    assert said in treated.cautions
    assert said not in plain.cautions


def test_a_certified_field_asks_for_a_log() -> None:
    assert clean_out(CORN, replace(BEAN, purity=Purity.CERTIFIED), RULES).logged
    assert not clean_out(CORN, BEAN, RULES).logged


def test_untreated_seed_after_treated_asks_for_washing() -> None:
    clean = clean_out(CORN, replace(BEAN, treatment=Treatment.NONE), RULES)
    assert How.WASH in clean.places[CleanPlace.METER]
    assert clean.level is CleanLevel.TREATED_TO_UNTREATED
