"""Vacuum along the manifold."""

import pytest

from changeover.proof.fan import (
    FanLimits,
    Manifold,
    Place,
    compare_fans,
    judge_manifold,
    speed_factor,
)
from changeover.proof.verdict_findings import vacuum_findings
from changeover.quantities import Q, Refusal

SET = Q(16, "inH2O")


def fan(*readings: float, name: str = "left") -> Manifold:
    rows = {row: Q(v, "inH2O") for row, v in enumerate(readings, start=1)}
    return judge_manifold(name, rows, sorted(rows), SET)


def test_an_even_manifold_is_fine() -> None:
    found = fan(16.2, 16.1, 16.0, 15.9)
    assert found.far_ok
    assert {one.place for one in found.rows} == {Place.FINE}
    assert vacuum_findings(found) == ()


def test_a_steady_fall_is_measured() -> None:
    found = fan(16, 15.5, 15, 14.5, 14, 13.5)
    assert found.per_row.to("inH2O").magnitude == pytest.approx(0.5)
    assert found.loss == pytest.approx(2.5 / 16)
    assert not found.far_ok
    assert "steady fall" in found.advice[0].text


def test_a_leaking_row_lies_below_both_neighbours() -> None:
    found = fan(16, 15.9, 12, 15.8, 15.7)
    assert [one.place for one in found.rows] == [
        Place.FINE,
        Place.FINE,
        Place.LEAK,
        *[Place.FINE] * 2,
    ]
    assert "that row's hose" in found.advice[0].text


def test_a_step_down_is_a_leak_in_the_manifold() -> None:
    found = fan(16, 15.9, 12.5, 12.4, 12.3)
    assert found.rows[2].place is Place.STEP
    assert "manifold" in found.advice[0].text


def test_a_row_without_vacuum_is_named() -> None:
    found = fan(16, 16, 0, 16)
    assert found.rows[2].place is Place.NONE
    assert [one.row for one in vacuum_findings(found)] == [3]


def test_low_from_the_fan_on() -> None:
    assert "raise the fan" in fan(12, 12, 12).advice[0].text


def test_two_fans_are_compared() -> None:
    left, right = fan(16, 15.8), fan(14, 13.8, name="right")
    found = compare_fans(left, right)
    assert found.difference == pytest.approx(2 / 15.9)
    assert not found.alike
    assert compare_fans(left, left).alike


def test_the_users_limit_counts() -> None:
    rows = {1: Q(16, "inH2O"), 2: Q(13.5, "inH2O")}
    assert not judge_manifold("left", rows, [1, 2], SET).far_ok
    assert judge_manifold("left", rows, [1, 2], SET, FanLimits(far_loss=0.2)).far_ok


def test_kilopascals_do_as_well() -> None:
    rows = {1: Q(4.0, "kPa"), 2: Q(3.9, "kPa")}
    assert judge_manifold("left", rows, [1, 2], Q(4.0, "kPa")).far_ok


@pytest.mark.parametrize(
    ("rows", "order", "wanted"),
    [
        ({1: 16}, [1, 2], 16),
        ({1: 80}, [1], 16),
        ({1: -1}, [1], 16),
        ({1: 16}, [1], 0),
        ({}, [], 16),
    ],
)
def test_impossible_readings_are_refused(rows, order, wanted) -> None:
    readings = {row: Q(v, "inH2O") for row, v in rows.items()}
    with pytest.raises(Refusal):
        judge_manifold("left", readings, order, Q(wanted, "inH2O"))


def test_no_vacuum_has_no_factor() -> None:
    with pytest.raises(Refusal, match="fan laws"):
        speed_factor(Q(0, "inH2O"), SET)
