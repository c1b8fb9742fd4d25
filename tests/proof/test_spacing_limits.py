"""Spacing judged by limits."""

import numpy as np
import pytest

from changeover.proof.bench import Standing
from changeover.proof.bootstrap import bootstrap_spacings
from changeover.proof.spacing import measure_spacings
from changeover.proof.spacing_limits import PROVINCIAL, SpacingLimits, judge_spacing
from changeover.proof.verdict_findings import spacing_findings
from changeover.quantities import Q, Quantity, Refusal

TARGET = Q(1.0, "m")


def drawn(skips: float, spread: float, n: int = 1000) -> Quantity:
    rng = np.random.default_rng(1)
    x = (
        rng.geometric(1 - skips, n) + rng.normal(0, spread, n)
        if skips
        else rng.normal(1, spread, n)
    )
    return Q(np.abs(x), "m")


def test_a_good_row_meets_the_standard() -> None:
    measures = measure_spacings(drawn(0.0, 0.1), TARGET)
    assert judge_spacing(measures, PROVINCIAL).standing is Standing.WITHIN


def test_a_gappy_row_falls_short_and_becomes_a_finding() -> None:
    verdict = judge_spacing(measure_spacings(drawn(0.2, 0.1), TARGET), PROVINCIAL)
    short = {one.name for one in verdict.figures if one.standing is Standing.SHORT}
    assert "misses" in short
    (found,) = spacing_findings({7: verdict})
    assert found.row == 7
    assert "misses" in found.what
    assert found.advice


def test_precision_is_judged_by_its_interval_where_there_is_one() -> None:
    x = drawn(0.0, 0.29, 60)
    measures = measure_spacings(x, TARGET)
    limit = SpacingLimits(precision_most=measures.precision_ref + 0.001)
    by_value = judge_spacing(measures, limit).figures[-1]
    interval = bootstrap_spacings(x, TARGET).precision_ref
    assert by_value.standing is Standing.WITHIN
    assert judge_spacing(measures, limit, interval).figures[-1].standing is Standing.OPEN


def test_without_limits_nothing_is_judged() -> None:
    measures = measure_spacings(drawn(0.1, 0.1), TARGET)
    assert judge_spacing(measures, SpacingLimits()).standing is Standing.NO_LIMIT


def test_a_limit_above_all_is_refused() -> None:
    with pytest.raises(Refusal, match="0 to 100 %"):
        SpacingLimits(quality_least=98)
