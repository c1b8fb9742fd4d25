"""A quantity of another kind than wanted is refused in a sentence that names the field."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from changeover.planter.drive import GroundDrive, MotorDrive, MotorKind
from changeover.planter.machine import Planter
from changeover.planter.parts import Meter, Part
from changeover.planter.places import Scope
from changeover.planter.scales import DepthScale
from changeover.planter.settings import standard
from changeover.quantities import Q, Refusal

PLANTER = Planter("Blue", 12, Q(30, "in"))
SCALE = DepthScale(Q(0.5, "in"), Q(0.25, "in"), 13)
SPEED, LENGTH = Q(5, "mph"), Q(3, "in")

WRONG: dict[str, tuple[Callable[[], object], str]] = {
    "row spacing": (lambda: Planter("Blue", 12, SPEED), "row spacing of Blue: “5 mph”"),
    "bare figure": (lambda: Planter("Blue", 12, 30), "row spacing of Blue: “30”"),  # type: ignore[arg-type]
    "fan limit": (lambda: replace(PLANTER, fan_limit=LENGTH), "fan limit of Blue: “3 in”"),
    "tank": (lambda: replace(PLANTER, tank_capacity=LENGTH), "tank capacity of Blue: “3 in”"),
    "hub step": (lambda: replace(PLANTER, hub_spacing_step=SPEED), "hub spacing step of Blue"),
    "first notch": (lambda: replace(SCALE, first=SPEED), "first notch: “5 mph” is no depth"),
    "step": (lambda: replace(SCALE, step=SPEED), "step between depth notches"),
    "offset": (lambda: replace(SCALE, offsets={3: SPEED}), "Row 3, deeper at notch 1: “5 mph”"),
    "wheel": (lambda: GroundDrive((20,), (20,), SPEED, 1.0), "circumference: “5 mph” is no length"),
    "motor": (
        lambda: MotorDrive(MotorKind.ELECTRIC, 4.0, LENGTH, Q(100, "rpm")),
        "least speed: “3 in” is no turning speed",
    ),
    "hole": (lambda: Part("D1", "Disc", "disc", hole=SPEED), "Disc D1, hole: “5 mph” is no size"),
    "circle": (lambda: Part("D1", "Disc", "disc", cell_circle=SPEED), "Disc D1, circle"),
    "meter": (lambda: Meter("M1", hub_zero=SPEED), "Meter M1, zero of hub spacing"),
    "tolerance": (lambda: replace(standard("vacuum"), tolerance=LENGTH), "“Vacuum”: “3 in”"),
}


@pytest.mark.parametrize("name", WRONG)
def test_a_planter_s_values_refuse_another_kind_of_unit(name: str) -> None:
    make, says = WRONG[name]
    with pytest.raises(Refusal) as refused:
        make()
    assert says in str(refused.value)
    assert "write it for example" in str(refused.value)


def test_any_unit_of_the_kind_is_taken() -> None:
    assert Planter("Blue", 12, Q(762, "mm")).row_spacing == Q(762, "mm")
    assert PLANTER.places(Scope.PLANTER)
