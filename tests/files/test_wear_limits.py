"""The wear limits that travel with the program."""

import pytest

from changeover.files.wear_limits import bundled_wear_limits, wear_limit
from changeover.proof.wear import Kind
from changeover.quantities import Refusal
from changeover.seed.reasons import Trust

ENTRY = {
    "part": "hub",
    "name": "Hub play",
    "kind": "most",
    "high": "1/8 in",
    "action": "Replace the hub.",
    "source": "page 12",
    "trust": "your manual",
}
PARTS = (
    "opener disc diameter, opener contact, gauge wheel, closing wheel centring, seed tube, sensor, "
    "arm play up and down, arm play sideways, hose, brush, vacuum seal, wiper, disc flatness, "
    "drive chain or cable"
)


def test_every_part_of_the_inspection_has_an_entry() -> None:
    assert set(PARTS.split(", ")) <= {one.part for one in bundled_wear_limits()}


def test_every_limit_has_source_trust_and_action() -> None:
    for one in bundled_wear_limits():
        assert one.source.text
        assert one.source.trust in (Trust.PUBLISHED, Trust.PRACTICE)
        assert one.action.endswith(".")


def test_a_measured_limit_is_never_common_practice() -> None:
    measured = [one for one in bundled_wear_limits() if one.kind is not Kind.LOOK]
    assert measured
    assert all(one.source.trust is Trust.PUBLISHED for one in measured)


def test_an_entry_of_ones_own() -> None:
    limit = wear_limit(ENTRY)
    assert limit.high.to("in").magnitude == pytest.approx(0.125)
    assert limit.source.trust is Trust.MANUAL


def test_a_bound_without_sense_is_refused() -> None:
    with pytest.raises(Refusal, match="Hub play"):
        wear_limit({**ENTRY, "high": "much"})
