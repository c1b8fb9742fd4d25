"""Advice after bench runs: each verdict for the counts that deserve it, in a full sentence."""

import numpy as np
import pytest

from changeover.quantities import Q, Refusal, Units
from changeover.seed.bench_counts import Reading, counts_by_meter
from changeover.seed.tuning_advice import Advice, Verdict, advise
from changeover.seed.tuning_curve import Curve
from changeover.seed.tuning_positions import choose_position

LEVELS = (2.5, 3.5, 5.0, 7.0)


def advice(skips, doubles, *, cells=500, levels=LEVELS, name="7", **options) -> Advice:
    runs = [
        Reading(name, Q(level, "kPa"), cells, skip, double)
        for level, skip, double in zip(levels, skips, doubles, strict=True)
    ]
    return advise(counts_by_meter(runs), **options)[0]


GOOD = (60, 25, 9, 2), (1, 4, 12, 45)


def test_a_best_level_inside_is_found() -> None:
    found = advice(*GOOD, present=Q(2.5, "kPa"))
    assert found.verdict is Verdict.FOUND
    assert found.low < found.best < found.high
    assert found.gain_low > 0
    assert "saves errors" in found.says


def test_a_present_level_near_the_best_is_left() -> None:
    found = advice(*GOOD, present=Q(4.8, "kPa"), units=Units.METRIC)
    assert "as good as the counts can tell" in found.says
    assert "kPa" in found.says


def test_skips_alone_ask_for_more_vacuum() -> None:
    found = advice((60, 40, 25, 14), (0, 0, 0, 0))
    assert found.verdict is Verdict.ABOVE
    assert found.next_level.to("kPa").magnitude == pytest.approx(7.0 * 1.25)


def test_at_the_fan_limit_there_is_no_next_level() -> None:
    found = advice((60, 40, 25, 14), (0, 0, 0, 0), most=Q(7, "kPa"))
    assert found.next_level is None
    assert found.says.endswith("The fan reaches no more.")


def test_the_next_level_stays_within_the_fan_limit() -> None:
    found = advice((60, 40, 25, 14), (0, 0, 0, 0), most=Q(7.5, "kPa"))
    assert found.next_level.to("kPa").magnitude == pytest.approx(7.5)


def test_doubles_alone_ask_for_less_vacuum() -> None:
    found = advice((0, 0, 0, 0), (14, 25, 40, 60))
    assert found.verdict is Verdict.BELOW
    assert found.next_level.to("kPa").magnitude == pytest.approx(2.5 / 1.25)


def test_flat_counts_cannot_decide() -> None:
    found = advice((20, 19, 21, 20), (10, 11, 9, 10))
    assert found.verdict is Verdict.FLAT
    assert found.best is None
    assert "cannot decide" in found.says


def test_few_cells_cannot_decide() -> None:
    found = advice((3, 1, 0, 0), (0, 0, 1, 2), cells=25)
    assert found.verdict in (Verdict.WIDE, Verdict.FLAT)
    assert found.best is None
    assert "cannot decide" in found.says


@pytest.mark.parametrize(
    ("skips", "doubles", "following"), [((5,), (1,), 5.0), ((1,), (5,), 3.2), ((2,), (2,), 3.2)]
)
def test_one_level_cannot_decide_but_points_the_way(skips, doubles, following) -> None:
    found = advice(skips, doubles, levels=(4.0,))
    assert found.verdict is Verdict.ONE_LEVEL
    assert found.next_level.to("kPa").magnitude == pytest.approx(following)


def test_no_errors_are_left_alone_with_the_limit_of_proof() -> None:
    found = advice((0,), (0,), levels=(4.0,), cells=100)
    assert found.verdict is Verdict.NO_ERRORS
    assert "up to 3.7%" in found.says


def test_meters_with_and_without_several_levels_keep_their_order() -> None:
    runs = [
        Reading(name, Q(level, "kPa"), 500, skip, double)
        for name in ("1", "3")
        for level, skip, double in zip(LEVELS, *GOOD, strict=True)
    ]
    runs.insert(4, Reading("2", Q(4, "kPa"), 500, 9, 2))
    verdicts = [one.verdict for one in advise(counts_by_meter(runs), Q([2.5, 4, 2.5], "kPa"))]
    assert verdicts == [Verdict.FOUND, Verdict.ONE_LEVEL, Verdict.FOUND]


def test_the_curves_bracket_the_shares_counted() -> None:
    found = advice(*GOOD)
    low, high = found.skips.band(Q(list(LEVELS), "kPa"))
    counted = np.array(GOOD[0]) / 500
    assert np.all(low <= found.skips.share(Q(list(LEVELS), "kPa")))
    assert np.all((low - 0.01 <= counted) & (counted <= high + 0.01))


def test_a_curve_refuses_a_vacuum_that_cannot_be() -> None:
    with pytest.raises(Refusal, match="Pressure"):
        Curve(0.0, 1.0, 0.0, (1.0, 0.0, 1.0)).share(Q(0, "kPa"))


def test_the_position_with_clearly_fewer_errors_is_chosen() -> None:
    worse = advice((160, 125, 90, 82), (1, 4, 12, 45))
    choice = choose_position({"1/2": worse, "3/4": advice(*GOOD)})
    assert choice.position == "3/4"
    assert choice.clear
    assert choice.says.endswith("at each one's best vacuum.")


def test_positions_that_differ_by_chance_are_told_so() -> None:
    near = advice((58, 27, 10, 2), (1, 5, 12, 44))
    choice = choose_position({"1/2": near, "3/4": advice(*GOOD)})
    assert not choice.clear
    assert "cannot tell from chance" in choice.says


def test_a_single_position_is_all_there_is() -> None:
    choice = choose_position({"1/2": advice(*GOOD)})
    assert (choice.position, choice.clear) == ("1/2", False)


def test_no_position_with_runs_is_refused() -> None:
    with pytest.raises(Refusal, match="run two levels each"):
        choose_position({"1/2": advice((0,), (0,), levels=(4.0,))})
