"""The inputs of ``changeover seed-need``: their names and units, and which need each other."""

import argparse
from collections.abc import Mapping
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from changeover.quantities import Quantity, Units

# key: name, measure, example, whether it must be given
INPUTS = {
    "area": ("Area", "area", 'such as "120 acre"', True),
    "rate": ("Seed rate", "seed_rate", 'such as "32000/acre"', True),
    "overlap": ("Overlap", "share", 'share sown twice, such as "3 %%"', False),
    "seeds_per_mass": ("Seeds per mass", "seeds_per_mass", 'such as "1500/lb"', False),
    "thousand_seed_mass": ("Thousand-seed mass", "thousand_seed_mass", 'such as "300 g"', False),
    "package_seeds": ("Seeds per package", "count", "such as 80000", False),
    "package_mass": ("Mass of a package", "mass", 'such as "50 lb"', False),
    "dose": ("Dry lubricant per package", "mass", 'your own dose, such as "2 oz"', False),
    "tank": ("Volume of the tank", "volume", 'such as "50 bu" or "1800 l"', False),
    "tank_share": ("Share of the rows it feeds", "share", 'such as "50 %%" (all)', False),
    "bulk_density": ("Bulk density", "bulk_density", 'such as "56 lb/bu"', False),
    "reserve": ("Reserve", "share", 'share left when you stop, such as "10 %%"', False),
    "field_capacity": ("Field capacity", "field_capacity", 'such as "14 acre/h"', False),
    "run_length": ("Length of a run", "row_length", 'for the stops, such as "2600 ft"', False),
    "width": ("Working width", "row_length", 'for the stops, such as "30 ft"', False),
}


def read_inputs(args: argparse.Namespace, units: "Units") -> dict[str, "Quantity"]:
    """Return the inputs that were given, by key; a thousand-seed mass as seeds per mass.

    Raises Refusal for a text that is no such quantity, or a size given both ways.
    """
    from changeover.quantities import Refusal
    from changeover.seed.rate import seeds_per_mass_from_thousand

    given = {
        key: _read(text, key, units) for key in INPUTS if (text := getattr(args, key)) is not None
    }
    thousand = given.pop("thousand_seed_mass", None)
    if thousand is not None:
        if "seeds_per_mass" in given:
            raise Refusal("Seed size: give seeds per mass or the thousand-seed mass, not both.")
        given["seeds_per_mass"] = seeds_per_mass_from_thousand(thousand)
    return given


def check_together(given: Mapping[str, "Quantity"]) -> None:
    """Refuse inputs that lack their partners. Raises Refusal."""
    from changeover.quantities import Refusal

    needs = (
        ("package_mass", ("seeds_per_mass",)),
        ("tank", ("seeds_per_mass", "bulk_density")),
        ("run_length", ("tank", "width")),
        ("field_capacity", ("tank",)),
    )
    for key, partners in needs:
        missing = [_name(one) for one in partners if key in given and one not in given]
        if missing:
            raise Refusal(f"{_name(key)}: needs {' and '.join(missing).lower()} too; add it.")
    if {"package_seeds", "package_mass"} <= given.keys():
        raise Refusal("Package: give its seeds or its mass, not both.")
    if "dose" in given and not given.keys() & {"package_seeds", "package_mass"}:
        raise Refusal("Dry lubricant per package: needs a package; add --package-seeds or -mass.")


def _name(key: str) -> str:
    return INPUTS[key][0]


def _read(text: str, key: str, units: "Units") -> "Quantity":
    """Read one input; a dose may be a volume as well as a mass."""
    from changeover.quantities import Refusal, read_quantity

    name, measure, _, _ = INPUTS[key]
    try:
        return read_quantity(text, measure, units, name)
    except Refusal:
        if key != "dose":
            raise
        return read_quantity(text, "volume", units, name)
