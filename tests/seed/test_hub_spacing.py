"""Hub spacing: the manual's figure from each meter's own zero, else kept as found."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.parts import Meter
from changeover.planter.settings import standard
from changeover.quantities import Q, Quantity, is_quantity
from changeover.seed.hub_spacing import propose_hub_spacing, rounded_to_step
from changeover.seed.manual import ManualValue
from changeover.seed.reasons import Proposed, Trust
from tests.seed.made_up import all_rows, case, planter

HUB = standard("hub_spacing")
MANUAL = (ManualValue("soybean", "hub_spacing", Q(0.6, "mm"), "page 40"),)


def by_row(**changes: object) -> list[Proposed]:
    return list(propose_hub_spacing(case(**changes), HUB, "S56").values())  # type: ignore[arg-type]


def size(one: Proposed) -> float:
    assert is_quantity(one.value)
    return float(one.value.to("mm").magnitude)


def meter(row: int, zero: Quantity | None) -> Meter:
    return Meter(f"M{row}", "Made-up", row, zero)


def test_the_manuals_figure_starts_from_each_meters_zero() -> None:
    meters = (meter(1, Q(0.12, "mm")), meter(2, Q(-0.3, "mm")), meter(3, None))
    sizes = [size(one) for one in by_row(manual=MANUAL, meters=meters)]
    assert sizes[:3] == [pytest.approx(0.7), pytest.approx(0.3), pytest.approx(0.6)]


def test_it_is_rounded_to_the_planters_own_step() -> None:
    machine = planter(hub_spacing_step=Q(0.25, "mm"))
    assert size(by_row(manual=MANUAL, planter=machine)[0]) == pytest.approx(0.5)


def test_the_reason_names_zero_step_and_page() -> None:
    one = by_row(manual=MANUAL, meters=(meter(1, Q(0.12, "mm")),))[0]
    assert one.reason.trust is Trust.MANUAL
    assert one.reason.source == "page 40"
    assert "from the meter’s own zero" in one.reason.how


def test_rows_without_a_manual_figure_keep_what_was_found() -> None:
    machine = planter()
    found = by_row(as_found=all_rows(machine, hub_spacing=Q(0.55, "mm")))
    assert {size(one) for one in found} == {0.55}
    assert "kept as found" in found[0].reason.why


def test_nothing_known_is_no_proposal() -> None:
    one = by_row()[0]
    assert one.value is None
    assert one.reason.why.startswith("No proposal: enter it from your manual.")


def test_another_planters_meter_does_not_count() -> None:
    other = Meter("M1", "Other", 1, Q(0.4, "mm"))
    assert size(by_row(manual=MANUAL, meters=(other,))[0]) == pytest.approx(0.6)


@given(st.floats(-5, 25), st.sampled_from([0.05, 0.1, 0.25, 0.5]))
def test_rounding_moves_by_half_a_step_at_most(distance: float, step: float) -> None:
    rounded = rounded_to_step(Q(distance, "mm"), Q(step, "mm")).to("mm").magnitude
    assert abs(rounded - distance) <= step / 2 + 1e-6
    assert abs(rounded / step - round(rounded / step)) < 1e-6
