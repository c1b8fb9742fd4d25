"""The tables of cautions, clean-out and minutes: whole, sourced, and refused when wrong."""

import pytest

from changeover.quantities import Refusal
from changeover.switch.cautions import read_cautions
from changeover.switch.clean_rules import CleanLevel, read_clean_rules
from changeover.switch.rules import read_rules
from changeover.switch.standard_minutes import Minutes, read_minutes
from tests.switch.switch_case import RULES


def test_every_level_but_no_next_lot_has_its_rule() -> None:
    assert set(RULES.clean_out.levels) == set(CleanLevel) - {CleanLevel.NO_NEXT_LOT}
    assert all(rule.source for rule in RULES.clean_out.levels.values())


def test_every_caution_and_every_minute_has_a_source() -> None:
    assert all(caution.source for caution in RULES.cautions.by_key.values())
    assert all(element.source for element in RULES.minutes.values())


def test_missing_rules_are_named() -> None:
    with pytest.raises(Refusal, match="“clean_out” are missing"):
        read_rules({"cautions": "", "minutes": ""})


def test_minutes_below_zero_are_refused() -> None:
    with pytest.raises(Refusal, match="“swap_part” cannot be below zero"):
        read_minutes('practice = "x"\n[swap_part]\nfixed = -1\neach = 0\n')


def test_an_element_without_minutes_is_named() -> None:
    with pytest.raises(Refusal, match="no standard minutes for “paint”"):
        Minutes(RULES.minutes).of_task("paint", ["paint"])


def test_a_caution_without_a_source_is_refused() -> None:
    with pytest.raises(Refusal, match="“fan” lacks its text or its source"):
        read_cautions('deference = "x"\n[fan]\ntext = "mind"\n')


def test_a_way_of_cleaning_without_words_is_refused() -> None:
    text = (
        '[level.organic]\nname = "o"\nwhy = "w"\nsource = "s"\nplaces = { tank = ["wash"] }\n'
        '[steps.tank]\nempty = "tip"\n'
    )
    with pytest.raises(Refusal, match="“wash” at the tank has no step in words"):
        read_clean_rules(text)
