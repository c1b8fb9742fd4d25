"""Bench runs of this lot move the singulator and tune the vacuum; others and chance do not."""

import numpy as np
import pytest

from changeover.quantities import Q, Refusal, is_quantity
from changeover.seed.bench_run import BenchSeen
from changeover.seed.manual import ManualValue, ProvedSetup
from changeover.seed.reasons import Trust
from tests.seed.made_up import at_row, first, lot, proposal

LOT = lot("corn", thousand_seed_mass=Q(320, "g"))
HALF = 2


def seen(skips: int, doubles: int, row: int = 3, **changes: object) -> BenchSeen:
    given = {"lot": LOT.number, "cells": 1000, "position": HALF, "said": "bench run of May"}
    return BenchSeen(row=row, skips=skips, doubles=doubles, **{**given, **changes})


def position(*runs: BenchSeen, row: int = 3, **changes: object) -> object:
    return at_row(proposal(lot=LOT, bench=runs, **changes), "singulator", row)


@pytest.mark.parametrize(
    ("skips", "doubles", "moved"), [(5, 40, HALF - 1), (40, 5, HALF + 1), (20, 22, HALF)]
)
def test_the_run_moves_the_row_that_it_ran(skips: int, doubles: int, moved: int) -> None:
    found = position(seen(skips, doubles))
    assert found.value == moved
    assert found.reason.trust is Trust.RECORD
    assert "bench run of May" in found.reason.source


def test_other_rows_and_other_lots_and_discs_are_left_alone() -> None:
    rule = position().reason.rule
    assert position(seen(5, 40), row=4).reason.rule == rule
    assert position(seen(5, 40, lot="another")).reason.rule == rule
    assert position(seen(5, 40, disc_cells=56)).reason.rule == rule


def test_the_latest_run_counts() -> None:
    assert position(seen(40, 5), seen(5, 40)).value == HALF + 1


def test_a_difference_that_chance_makes_moves_nothing() -> None:
    assert position(seen(1, 7, cells=1000)).value == HALF - 1
    assert position(seen(2, 8, cells=1000)).value == HALF


def test_the_manual_wins_and_a_proved_setup_is_told_but_not_used() -> None:
    manual = (ManualValue("corn", "singulator", 4, "page 3"),)
    assert position(seen(5, 40), manual=manual).value == 4
    proved = ProvedSetup("May", "corn", "C30", values={"singulator": 4}, planter="Made-up")
    found = position(seen(5, 40), records=(proved,))
    assert found.value == HALF - 1
    record = next(rung for rung in found.reason.evidence if rung.trust is Trust.RECORD)
    assert "not used" in record.says


def levels(*inches: float, cells: int = 4000) -> tuple[BenchSeen, ...]:
    """Give runs whose least error lies at 20 inH2O, from logistic curves that are known."""
    runs = []
    for level in inches:
        skip = 1 / (1 + np.exp(0.45 * (level - 11)))
        double = 1 / (1 + np.exp(-0.45 * (level - 29)))
        counts = [round(cells * share) for share in (skip, double)]
        runs += [seen(*counts, row=row, cells=cells, vacuum=Q(level, "inH2O")) for row in (1, 2)]
    return tuple(runs)


def test_runs_at_several_levels_tune_the_vacuum() -> None:
    found = first(proposal(lot=LOT, bench=levels(12, 16, 20, 24, 28)), "vacuum")
    assert is_quantity(found.value)
    assert found.value.to("inH2O").magnitude == pytest.approx(20, abs=1)
    assert found.low < found.value < found.high
    assert found.reason.rule == "vacuum tuned by bench runs"


def test_one_level_or_another_fan_tunes_nothing() -> None:
    plain = first(proposal(lot=LOT), "vacuum").value
    assert first(proposal(lot=LOT, bench=levels(20)), "vacuum").value == plain
    tuned = proposal(lot=LOT, bench=levels(12, 16, 20, 24, 28))
    fans = [one.value for cell, one in tuned.cells.items() if cell.setting == "vacuum"]
    assert fans[1] == plain != fans[0]


def test_counts_that_cannot_decide_are_said() -> None:
    few = tuple(seen(1, 1, row=1, cells=100, vacuum=Q(level, "inH2O")) for level in (14.0, 16.0))
    found = first(proposal(lot=LOT, bench=few), "vacuum")
    assert found.value == first(proposal(lot=LOT), "vacuum").value
    assert "cannot decide" in found.reason.cautions[0]


def test_impossible_counts_are_refused() -> None:
    with pytest.raises(Refusal, match="more skips and doubles"):
        seen(600, 600)
    with pytest.raises(Refusal, match="at least one cell"):
        seen(0, 0, cells=0)
