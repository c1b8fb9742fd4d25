"""Bulk density, friction and kernel counts of the crop table against print and second sources."""

import pytest

from changeover.quantities import Q
from changeover.seed.vacuum import SEED_FRICTION
from tests.seed.made_up import crop_table

BEAN = "J. Food Agric. Environ. 11(1):215-220, 2013 (organic beans)"


def dense(crop: str, unit: str) -> float:
    figure = crop_table()[crop].best("bulk_density")
    assert figure is not None
    return float(figure.middle.to(unit).magnitude)


@pytest.mark.parametrize(
    ("crop", "printed", "unit", "near", "source"),
    [
        ("popcorn", 737, "kg/m^3", 1, "Karababa 2006: 771 falling to 703 kg/m³"),
        ("sweet_corn", 731.5, "kg/m^3", 1, "Karababa & Coşkuner 2007: 765 falling to 698 kg/m³"),
        ("canola", 702.4, "kg/m^3", 1, "Razavi et al. 2009: 666.06 to 738.8 kg/m³ by variety"),
        ("field_pea", 670.7, "kg/m^3", 0.1, "Ganjloo et al. 2018, at 15 % moisture"),
        ("sunflower", 28, "lb/bu", 0.5, "American Soybean Association’s conversion table, quoted"),
        ("corn", 56, "lb/bu", 0.01, "University of Wisconsin Extension (Rankin), test weight"),
        ("soybean", 60, "lb/bu", 0.01, "University of Wisconsin Extension (Rankin), test weight"),
    ],
)
def test_bulk_density(outside_check, crop, printed, unit, near, source) -> None:
    outside_check(
        calculation=f"bulk density of {crop.replace('_', ' ')}",
        source=source,
        trust="published",
        printed=printed,
        ours=dense(crop, unit),
        unit=unit.replace("^3", "³"),
        tolerance=near,
    )


@pytest.mark.parametrize(
    ("true", "porosity", "end"), [(1110, 36.89, "typical"), (1285, 48.79, "low")]
)
def test_bulk_density_of_beans_from_porosity(outside_check, true, porosity, end) -> None:
    figure = crop_table()["dry_bean_navy"].best("bulk_density")
    outside_check(
        calculation=f"bulk density of dry bean at {porosity:g} % porosity",
        source=BEAN,
        trust="published",
        printed=true * (1 - porosity / 100),
        ours=getattr(figure, end).to("kg/m^3").magnitude,
        unit="kg/m³",
        tolerance=1.0,
        note=f"true density {true} kg/m³ and porosity are printed, bulk density follows",
    )


def test_bulk_density_of_beans_grown_elsewhere(outside_check) -> None:
    outside_check(
        calculation="bulk density of dry bean, three cultivars",
        source="Journal of Engineering 2018, 8134975 (709, 686 and 766 kg/m³, Tanzania)",
        trust="published",
        printed=(709.27 + 686.30 + 766.10) / 3,
        ours=dense("dry_bean_pinto", "kg/m^3"),
        unit="kg/m³",
        tolerance=35.0,
    )


@pytest.mark.parametrize(
    ("seed", "low", "high", "source"),
    [
        ("sugar beet", 0.392, 0.434, "Dursun et al. 2007, J. Stored Products Research 43:149-155"),
        ("canola", 0.301, 0.419, "Razavi et al. 2009, J. Agric. Sci. Technol. 11(3):309-322"),
    ],
)
def test_friction_of_seed_on_galvanized_steel(outside_check, seed, low, high, source) -> None:
    outside_check(
        calculation=f"static friction of the force balance, beside {seed}",
        source=source,
        trust="published",
        printed=(low + high) / 2,
        ours=SEED_FRICTION,
        unit="",
        tolerance=(high - low) / 2,
        note="soybean and bean slide more easily, 0.164 to 0.35: the bound stays a lower one",
    )


@pytest.mark.parametrize(
    ("kernels", "end", "source"),
    [
        (80_000, "low", "Farm Progress, 20 August 2024, after Nielsen, Purdue University"),
        (90_000, "high", "Indiana certified crop advisers (Bower), 30 July 2019"),
    ],
)
def test_kernels_in_a_bushel(outside_check, kernels, end, source) -> None:
    figure = crop_table()["corn"].best("seeds_per_mass")
    outside_check(
        calculation=f"seeds per pound of corn, {end} end",
        source=source,
        trust="published",
        printed=kernels / 56,
        ours=getattr(figure, end).to(Q(1, "seed/lb").units).magnitude,
        unit="seeds/lb",
        tolerance=5.0,
        note=f"{kernels} kernels in a bushel of 56 lb",
    )
