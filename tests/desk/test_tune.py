"""Tuning as one job: meters, all together, and the singulator position."""

import pytest

from changeover.desk.tune import tune
from changeover.quantities import Q, Refusal
from changeover.seed.bench_counts import Reading
from changeover.seed.tuning_advice import Verdict

COUNTS = ((2.5, 60, 1), (3.5, 25, 4), (5.0, 9, 12), (7.0, 2, 45))


def runs(meter: str, position: str = "", more: int = 0) -> list[Reading]:
    return [
        Reading(meter, Q(level, "kPa"), 500, skips + more, doubles, position)
        for level, skips, doubles in COUNTS
    ]


def test_meters_keep_their_own_advice_beside_the_fans() -> None:
    tuned = tune(runs("1") + runs("2"))
    assert [advice.name for advice in tuned.meters] == ["1", "2"]
    assert tuned.together.verdict is Verdict.FOUND
    assert tuned.position is None


def test_the_advice_together_is_that_of_the_chosen_position() -> None:
    tuned = tune(runs("1", "open") + runs("1", "1/2", more=90))
    assert tuned.position.position == "open"
    assert tuned.together.error == tuned.position.advice.error


def test_positions_with_one_level_each_are_not_compared() -> None:
    tuned = tune(runs("1", "open")[:1] + runs("1", "1/2")[:1])
    assert tuned.position is None
    assert tuned.together.verdict is Verdict.ONE_LEVEL


def test_no_run_is_refused() -> None:
    with pytest.raises(Refusal, match="there is no run"):
        tune([])
