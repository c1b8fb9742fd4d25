"""``changeover field-need`` reckons each tank's seed from what is in the store."""

from collections.abc import Callable
from typing import Any

import pytest

from changeover.__main__ import main

Answer = Callable[..., dict[str, Any]]

JOB = ("--planter", "Old Fiddle 24", "--lot", "M-41", "--area", "100 acre")


def test_each_tank_takes_the_share_of_its_rows(store: str, answer: Answer) -> None:
    told = answer("field-need", store, *JOB, "--rate", "32000/acre", "--overlap", "4 %")
    assert told["seeds_needed"]["value"] == pytest.approx(3_328_000)
    assert told["tank_seeds"]["value"] == pytest.approx(1_664_000)
    assert told["packages_needed"]["value"] == 42
    assert told["tank_packages"]["value"] == 21


def test_a_tank_with_another_lot_is_told_apart(store: str, answer: Answer) -> None:
    told = answer("field-need", store, *JOB, "--other-lot", "tank 2=M-44")
    assert {"seeds_needed", "seeds_needed:M-44"} <= told.keys()


def test_reasons_are_told_when_asked(store: str, capsys) -> None:
    assert main(["field-need", store, *JOB, "--why"]) == 0
    out = capsys.readouterr().out
    assert "feed 12 each of the 24 rows" in out
    assert "width of the pass" in out
