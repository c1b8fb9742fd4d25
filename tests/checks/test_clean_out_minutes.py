"""Standard minutes of the clean-out against what was measured on planters."""

import pytest

from changeover.bundled import bundled
from changeover.switch.standard_minutes import Element, read_minutes

NEWS = "Hanna, Iowa State University Extension news, 26 April 2002"
INSIDE = ("vacuum_meter", "clean_tube")


@pytest.fixture(scope="module")
def table() -> dict[str, Element]:
    return read_minutes(bundled("resources", "minutes.toml").read_text(encoding="utf-8"))


def test_a_row_takes_one_to_four_extra_minutes(outside_check, table: dict[str, Element]) -> None:
    outside_check(
        calculation="extra minutes a row for cleaning meter and tube",
        source=NEWS,
        trust="published",
        printed=2.5,
        ours=sum(table[name].each for name in INSIDE),
        unit="min",
        tolerance=1.5,
        note="printed as one or two up to three or four; the middle is 2.5",
    )


def test_twelve_rows_take_half_an_hour_to_forty_minutes(
    outside_check, table: dict[str, Element]
) -> None:
    outside_check(
        calculation="extra minutes for cleaning the meters and tubes of 12 rows",
        source=NEWS,
        trust="published",
        printed=35.0,
        ours=sum(table[name].fixed + 12 * table[name].each for name in INSIDE),
        unit="min",
        tolerance=5.0,
        note="printed as half an hour or 40 minutes; the middle is 35",
    )
