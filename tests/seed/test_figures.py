"""The figures of a whole proposal: what is there, what it is, and what is left out."""

import pytest

from changeover.quantities import Q, Units
from changeover.seed.figures import figures_of, limit_is_for
from changeover.seed.reasons import Figure
from tests.seed.made_up import CORN_DISC, case, crop_table, job, lot

RATE = Q(32_000, "seed/acre")


def by_key(**changes: object) -> dict[str, Figure]:
    given = case("corn", lot=lot("corn", thousand_seed_mass=Q(320, "g")), **changes)
    return {figure.key: figure for figure in figures_of(given, RATE, CORN_DISC)}


@pytest.mark.parametrize(
    ("key", "unit", "size"),
    [
        ("spacing", "in", 6.534),
        ("seeds_per_length", "seed/ft", 1.8365),
        ("row_length_thousandth", "ft", 17.424),
        ("seeds_per_second", "seed/s", 13.468),
        ("disc_speed", "rpm", 26.936),
        ("expected_stand", "plant/acre", 28_800),
        ("mass_rate", "lb/acre", 22.575),
        ("seeds_needed", "seed", 2_560_000),
        ("mass_needed", "lb", 1806),
        ("packages_needed", "count", 19),
        ("top_speed", "mph", 5.94),
    ],
)
def test_figures_of_a_corn_job(key: str, unit: str, size: float) -> None:
    assert by_key()[key].quantity.to(unit).magnitude == pytest.approx(size, rel=1e-3)


def test_every_figure_says_how_and_who() -> None:
    for figure in by_key().values():
        assert figure.reason.source
        assert figure.reason.why


def test_metric_counts_a_thousandth_of_a_hectare() -> None:
    length = by_key(units=Units.METRIC)["row_length_thousandth"].quantity
    assert length.to("m").magnitude == pytest.approx(1000 / 76.2)


def test_without_a_rate_only_length_and_size_are_left() -> None:
    keys = [figure.key for figure in figures_of(case("corn"), None, CORN_DISC)]
    assert keys == ["row_length_thousandth", "seed_diameter"]


def test_without_cells_there_is_no_disc_speed() -> None:
    keys = {figure.key for figure in figures_of(case("corn"), RATE, None)}
    assert "disc_speed" not in keys
    assert "seeds_per_second" in keys


def test_the_release_limit_is_for_corn_and_cotton_only() -> None:
    named = [key for key, crop in crop_table().items() if limit_is_for(crop)]
    assert named == ["corn", "cotton", "popcorn", "sweet_corn"]
    soy = figures_of(case(job=job()), Q(140_000, "seed/acre"), CORN_DISC)
    assert "top_speed" not in {figure.key for figure in soy}


def test_packages_say_what_is_left_over() -> None:
    why = by_key()["packages_needed"].reason.why
    assert why == "Whole packages of 140\u202f000 seeds; 100\u202f000 seeds are left over."


def test_packages_by_mass_and_by_the_crops_own_package() -> None:
    by_mass = lot("corn", package_seeds=None, package_mass=Q(50, "lb"))
    heavy = case("corn", lot=by_mass)
    found = {one.key: one for one in figures_of(heavy, RATE, None)}
    assert found["packages_needed"].quantity.magnitude == pytest.approx(34, abs=1)
    plain = case("corn", lot=lot("corn", package_seeds=None))
    found = {one.key: one for one in figures_of(plain, RATE, None)}
    assert found["packages_needed"].quantity.magnitude == 32
