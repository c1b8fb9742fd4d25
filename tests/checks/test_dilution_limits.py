"""Stray seeds against limits, and the flush against the closed form and a bench of marbles."""

import math
import random

import pytest

from changeover.quantities import Q
from changeover.switch.dilution import seeds_to_flush, stray_share, strays_allowed

BASIS = "by definition, 1 000 ft of row"
CASES = [
    (32_000, 30, 0.109, 16.5),
    (140_000, 30, 0.025, 72.3),
    (140_000, 15, 0.050, 36.2),
]


@pytest.mark.parametrize(("rate", "width", "percent", "allowed"), CASES)
def test_strays_in_a_thousand_feet(outside_check, rate, width, percent, allowed) -> None:
    per_length = Q(rate, "seed/acre") * Q(width, "in")
    share = 100 * stray_share(2, Q(1000, "ft"), per_length)
    name = f"{rate} seeds/ac in {width}-in rows"
    outside_check(
        calculation=f"2 strays per 1 000 ft, {name}", source=BASIS, trust="derived",
        printed=percent, ours=share, unit="%", tolerance=0.0005,
    )  # fmt: skip
    outside_check(
        calculation=f"strays at 0.9 %, {name}", source=BASIS, trust="derived",
        printed=allowed, ours=strays_allowed(0.009, Q(1000, "ft"), per_length),
        unit="per 1 000 ft", tolerance=0.05,
    )  # fmt: skip


def test_flush_against_the_closed_form(outside_check) -> None:
    outside_check(
        calculation="seeds to flush 60 of 300 to 1 in 1 000",
        source="first-order dilution, n = V · ln(c0 / c)", trust="derived",
        printed=300 * math.log(0.2 / 0.001), ours=seeds_to_flush(60, 300, 0.001),
        unit="seeds", tolerance=1e-9,
    )  # fmt: skip


def test_flush_against_seeds_drawn_one_by_one(outside_check) -> None:
    draw = random.Random(5)
    pool, residual, runs = 200, 100, 400
    seeds = round(seeds_to_flush(residual, pool, 0.05))
    left = 0
    for _ in range(runs):
        old = residual
        for _ in range(seeds):
            old -= draw.random() * pool < old
        left += old
    outside_check(
        calculation="old share after the flush of 100 in 200 to 5 %, seeds drawn one by one",
        source="simulation, 400 runs", trust="derived", printed=left / runs / pool, ours=0.05,
        unit="", tolerance=0.004,
    )  # fmt: skip
