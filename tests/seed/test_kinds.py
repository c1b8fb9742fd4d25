"""Lots, fields and jobs refuse a quantity of another kind in a sentence that names the field."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from changeover.quantities import Q, Refusal
from changeover.seed.bench_run import BenchSeen
from changeover.seed.fields import Field, FieldJob
from changeover.seed.lots import SeedLot

LOT = SeedLot("A1", "corn")
FIELD = Field("North", Q(80, "acre"))
JOB = FieldJob(FIELD, "A1", Q(5, "mph"))
SPEED, LENGTH = Q(5, "mph"), Q(3, "in")

WRONG: dict[str, tuple[Callable[[], object], str]] = {
    "thousand": (lambda: replace(LOT, thousand_seed_mass=LENGTH), "Lot A1, thousand seed mass"),
    "length": (lambda: replace(LOT, length=SPEED), "Lot A1, length: “5 mph” is no size"),
    "package": (lambda: replace(LOT, package_mass=LENGTH), "Lot A1, package mass: “3 in”"),
    "bulk": (lambda: replace(LOT, bulk_density=LENGTH), "Lot A1, bulk density: “3 in”"),
    "area": (lambda: replace(FIELD, area=LENGTH), "Field North, area: “3 in” is no area"),
    "altitude": (lambda: replace(FIELD, altitude=SPEED), "Field North, altitude: “5 mph”"),
    "runs": (lambda: replace(FIELD, run_length=SPEED), "Field North, length of the runs"),
    "speed": (lambda: replace(JOB, speed=LENGTH), "Job in North, speed: “3 in” is no speed"),
    "rate": (
        lambda: replace(JOB, seed_rate=Q(50, "lb/acre")),
        "Job in North, seed rate: “50 lb/ac”",
    ),
    "bags": (lambda: replace(JOB, seed_rate=Q(3, "package/acre")), "Job in North, seed rate"),
    "stand": (lambda: replace(JOB, stand=LENGTH), "Job in North, stand: “3 in”"),
    "soil": (lambda: replace(JOB, soil_temperature=LENGTH), "Job in North, soil temperature"),
    "rows": (lambda: replace(JOB, row_spacing=SPEED), "Job in North, row spacing"),
    "part": (lambda: replace(JOB, area=LENGTH), "Job in North, area: “3 in”"),
    "bench": (lambda: BenchSeen(3, "A1", 250, 1, 1, LENGTH), "Bench run, row 3, vacuum: “3 in”"),
}


@pytest.mark.parametrize("name", WRONG)
def test_seed_and_fields_refuse_another_kind_of_unit(name: str) -> None:
    make, says = WRONG[name]
    with pytest.raises(Refusal) as refused:
        make()
    assert says in str(refused.value)
    assert "write it for example" in str(refused.value)


def test_plants_and_seeds_and_plain_counts_are_one_kind() -> None:
    for unit in ("plant/acre", "seed/hectare", "1/acre"):
        assert replace(JOB, stand=Q(60_000, unit)).stand == Q(60_000, unit)
