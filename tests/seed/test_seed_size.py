"""Seed size: mean diameter, shape, porosity and sieves, and whence a lot's size is taken."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.quantities import Q, Refusal
from changeover.seed.crops import Crop
from changeover.seed.seed_size import (
    Shape,
    geometric_mean_diameter,
    porosity,
    seed_size,
    shape_of,
    sieve_size,
    sphericity,
)
from tests.seed.made_up import crop_table, lot

sides = st.floats(1.0, 20.0)


@given(sides, sides, sides)
def test_the_mean_lies_between_the_sides(a: float, b: float, c: float) -> None:
    mean = geometric_mean_diameter(Q(a, "mm"), Q(b, "mm"), Q(c, "mm")).to("mm").magnitude
    assert min(a, b, c) - 1e-9 <= mean <= max(a, b, c) + 1e-9


@given(sides)
def test_a_ball_is_wholly_round(side: float) -> None:
    ball = Q(side, "mm")
    assert sphericity(ball, ball, ball).magnitude == pytest.approx(1.0)


def test_inches_and_millimetres_agree() -> None:
    metric = geometric_mean_diameter(Q(8.0, "mm"), Q(6.0, "mm"), Q(4.0, "mm"))
    inches = geometric_mean_diameter(*(Q(x / 25.4, "in") for x in (8.0, 6.0, 4.0)))
    assert inches.to("mm").magnitude == pytest.approx(metric.to("mm").magnitude)


def test_many_seeds_at_once() -> None:
    lengths = Q(np.array([8.0, 9.0]), "mm")
    assert geometric_mean_diameter(lengths, Q(6, "mm"), Q(4, "mm")).magnitude.shape == (2,)


def test_an_impossible_seed_is_refused() -> None:
    with pytest.raises(Refusal, match="Seed dimension"):
        geometric_mean_diameter(Q(80, "mm"), Q(6, "mm"), Q(4, "mm"))


def test_a_heap_denser_than_its_seed_is_refused() -> None:
    with pytest.raises(Refusal, match="cannot be denser"):
        porosity(Q(900, "kg/m^3"), Q(800, "kg/m^3"))


def test_sieves_are_sixty_fourths_of_an_inch() -> None:
    assert sieve_size(64).to("in").magnitude == pytest.approx(1.0)
    with pytest.raises(Refusal, match="Sieve size"):
        sieve_size(65)


@pytest.mark.parametrize(
    ("roundness", "shape"), [(0.91, Shape.ROUND), (0.79, Shape.OVAL), (0.68, Shape.FLAT)]
)
def test_shape_by_sphericity(roundness: float, shape: Shape) -> None:
    assert shape_of(roundness) is shape


def test_the_lots_own_dimensions_come_first() -> None:
    own = lot(length=Q(8, "mm"), width=Q(6, "mm"), thickness=Q(4, "mm"), sieve=(16, 18))
    size = seed_size(own, crop_table()["soybean"])
    assert size is not None
    assert (size.measured, size.shape) == (True, Shape.OVAL)
    assert size.width == Q(6, "mm")


def test_then_the_sieve_grade() -> None:
    size = seed_size(lot("corn", sieve=(18, 20)), crop_table()["corn"])
    assert size is not None
    assert size.diameter.to("mm").magnitude == pytest.approx(19 * 25.4 / 64)
    assert "sieve grade 18-20" in size.says
    assert size.shape is None


def test_then_the_crops_figures_in_print() -> None:
    size = seed_size(lot(), crop_table()["soybean"])
    assert size is not None
    assert not size.measured
    assert "Kibar" in size.says


def test_else_nothing_is_known() -> None:
    assert seed_size(lot("oats"), Crop("oats", "Oats")) is None
