"""Wear limits that travel with the program against the extension sources they quote."""

import pytest

from changeover.files.wear_limits import bundled_wear_limits
from changeover.proof.wear import Kind, limit_for

IOWA = "Iowa State University, planter pre-plant checklist"
PENN = "Penn State Extension, quoted by Southeast Farm Press (second hand)"
GEORGIA = "University of Georgia (Virk & Porter 2022): half an inch of the original diameter"


@pytest.mark.parametrize(
    ("part", "applies", "bound", "printed", "source"),
    [
        ("opener disc diameter", "15 in new", "low", 14.5, IOWA),
        ("opener disc diameter", "16 in new", "low", 15.5, IOWA),
        ("opener disc diameter", "14 in new", "low", 13.5, GEORGIA),
        ("opener contact", "3.0 mm blade", "low", 2.0, IOWA),
        ("opener contact", "3.0 mm blade", "high", 2.5, IOWA),
        ("opener contact", "3.5 mm blade", "low", 1.5, IOWA),
        ("opener contact", "3.5 mm blade", "high", 2.0, IOWA),
        ("opener contact", "4.0 mm blade", "low", 1.0, IOWA),
        ("arm play up and down", "", "high", 2.0, IOWA),
        ("arm play sideways", "", "high", 1.0, IOWA),
        ("closing wheel gap", "", "low", 1.5, PENN),
        ("closing wheel gap", "", "high", 2.0, PENN),
    ],
)
def test_limit_as_printed(outside_check, part, applies, bound, printed, source) -> None:
    limit = limit_for(part, applies, bundled_wear_limits())
    assert limit.source.text == source
    outside_check(
        calculation=f"wear limit: {part} {applies}, {bound}".replace(" ,", ","),
        source=source,
        trust="published",
        printed=printed,
        ours=getattr(limit, bound).to("in").magnitude,
        unit="in",
        tolerance=1e-9,
    )


def test_where_no_neutral_limit_was_found_one_only_looks() -> None:
    parts = {one.part: one for one in bundled_wear_limits()}
    for part in ("vacuum seal", "brush", "drive chain or cable", "gauge wheel"):
        assert parts[part].kind is Kind.LOOK
