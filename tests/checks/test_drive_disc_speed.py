"""Disc speed, seeds per second and peripheral speed against papers and arithmetic."""

import pytest

from changeover.quantities import Q
from changeover.seed import rate, speed

BANAJ = "Banaj et al. 2022, J. Central European Agriculture 23(3):642-654"
IDENTITY = "definitions of spacing and speed"
ONAL = "Önal, Degirmencioglu & Yazgi 2012, Turk. J. Agric. For. 36:133-144"

JOBS = [
    (32_000, 30, 5, 13.47, 0.005),
    (140_000, 15, 5, 29.5, 0.05),
    (140_000, 30, 5, 58.9, 0.05),
]


@pytest.mark.parametrize(("seeds", "width", "mph", "printed", "tolerance"), JOBS)
def test_seeds_per_second(outside_check, seeds, width, mph, printed, tolerance) -> None:
    ours = rate.seeds_per_second(Q(seeds, "seed/acre"), Q(width, "in"), Q(mph, "mph"))
    outside_check(
        calculation=f"seeds per second, {seeds} seeds/ac, {width} in, {mph} mph",
        source=f"{IDENTITY}: seeds/ac · in · mph / 356 400",
        trust="derived",
        printed=printed,
        ours=ours.to("seed/s").magnitude,
        unit="seeds/s",
        tolerance=tolerance,
    )


def test_disc_speed(outside_check) -> None:
    ours = rate.disc_speed_at(Q(32_000, "seed/acre"), Q(30, "in"), Q(5, "mph"), 30)
    outside_check(
        calculation="disc speed, 32000 seeds/ac, 30 in, 5 mph, 30 cells",
        source=f"{IDENTITY}: 60 · v / (cells · spacing)",
        trust="derived",
        printed=26.9,
        ours=ours.to("rpm").magnitude,
        unit="rpm",
        tolerance=0.05,
    )


@pytest.mark.parametrize(("holes", "printed"), [(18, 0.223), (44, 0.091)])
def test_peripheral_speed(outside_check, holes, printed) -> None:
    per_second = Q(6, "km/h") / Q(20.993, "cm") * Q(1, "seed")
    ours = rate.peripheral_speed(per_second.to("seed/s"), holes, Q(0.1609, "m"))
    outside_check(
        calculation=f"peripheral speed, 20.993 cm at 6 km/h, {holes} holes",
        source=BANAJ,
        trust="published",
        printed=printed,
        ours=ours.to("m/s").magnitude,
        unit="m/s",
        tolerance=0.0006,
        note="the hole circle is not printed; 0.1609 m follows from 18 holes",
    )


def test_half_the_row_spacing_halves_seeds_per_meter(outside_check) -> None:
    job = Q(140_000, "seed/acre"), Q(15, "in"), Q(5, "mph")
    outside_check(
        calculation="spacing in the row, 140000 seeds/ac in 15-in rows",
        source=f"{IDENTITY}: 6 272 640 / (in · seeds/ac)",
        trust="derived",
        printed=2.987,
        ours=rate.spacing_in_row(*job[:2]).to("in").magnitude,
        unit="in",
        tolerance=0.0005,
    )


def test_release_limit_as_a_top_speed(outside_check) -> None:
    """16 seeds a second at 20.993 cm is 3.36 m/s: the paper's limit and arithmetic."""
    seeds = rate.seed_rate(Q(20.993, "cm"), Q(70, "cm"))
    top = speed.top_ground_speed(seeds, Q(70, "cm"), 30)
    outside_check(
        calculation="top ground speed at 16 seeds/s and 20.993 cm",
        source=ONAL,
        trust="published",
        printed=16 * 0.20993,
        ours=top.speed.to("m/s").magnitude,
        unit="m/s",
        tolerance=1e-9,
        note="about 16 seeds/s for cotton and maize on one machine; a warning, not a bar",
    )
