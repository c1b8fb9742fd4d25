"""What is read off a variable-rate drive before it turns, and what the planter needs of it."""

from dataclasses import dataclass
from enum import StrEnum

from changeover.quantities import Q, Quantity, Refusal, check_kind
from changeover.seed import bounds

LEAST_GROUND_SPEED = Q(2.0, "mph")  # common practice, no source


class Condition(StrEnum):
    """What a variable-rate drive needs before it turns, in the order to look at them.

    Common practice: no published list was found.
    """

    CONTROLLER = "controller set up"
    RATE = "target rate entered"
    LOWERED = "implement lowered"
    HEIGHT = "height sensor calibrated"
    START_POINT = "start point set"
    GROUND_SPEED = "ground speed above the least value"
    WHEEL_MOTION = "wheel motion seen"
    WHEEL_AGREES = "wheel speed agrees with ground speed"
    CLUTCHES = "row clutches on"
    SUPPLY = "oil flow or current supplied"
    TARGET = "target speed shown as reckoned"
    COMMAND = "drive command given"
    ACTUAL = "actual speed agrees with target"


@dataclass(frozen=True)
class DriveNeeds:
    """The machine and the limits; those with a figure here are common practice, and the user's.

    ``motor_ratio`` is motor turns in one disc turn. ``displacement`` (volume a turn) with
    ``volumetric_efficiency`` (0 to 1) gives the oil flow that a hydraulic motor takes;
    ``least_current`` is that of an electric one. Tolerances and ``saturated_at`` are shares.
    """

    row_spacing: Quantity
    cells: int
    motor_ratio: float = 1.0
    displacement: Quantity | None = None
    volumetric_efficiency: float = 1.0
    least_current: Quantity | None = None
    least_ground_speed: Quantity = LEAST_GROUND_SPEED
    wheel_tolerance: float = 0.05
    speed_tolerance: float = 0.05
    saturated_at: float = 0.95

    def __post_init__(self) -> None:
        bounds.ROW_SPACING.of(self.row_spacing)
        bounds.CELLS.of(self.cells)
        bounds.SPEED.of(self.least_ground_speed)
        if self.motor_ratio <= 0:
            raise Refusal("The motor's ratio to the disc must be above zero.")
        check_kind(self.displacement, "displacement", "The motor's displacement")
        if self.displacement is not None and not self.displacement.to("l").magnitude > 0:
            raise Refusal("The motor's displacement must be above zero.")
        if not 0.3 <= self.volumetric_efficiency <= 1:
            raise Refusal("A volumetric efficiency must be from 30 to 100 %.")
        for share in (self.wheel_tolerance, self.speed_tolerance, self.saturated_at):
            if not 0 < share <= 1:
                raise Refusal("Tolerances and the saturated command must be above 0 to 100 %.")


_READ = {
    **dict.fromkeys(("ground_speed", "wheel_speed"), "speed"),
    "oil_flow": "oil_flow",
    **dict.fromkeys(("target_speed", "actual_speed"), "disc_speed"),
}


@dataclass(frozen=True)
class DriveReadings:
    """The readings; None where nothing was read. ``command`` is a share 0 to 1 of full drive.

    ``supply`` says by eye that oil or current is there, where no gauge was read.
    """

    controller_set_up: bool | None = None
    target_rate: Quantity | None = None
    lowered: bool | None = None
    height_calibrated: bool | None = None
    start_point_set: bool | None = None
    ground_speed: Quantity | None = None
    wheel_speed: Quantity | None = None
    clutches_on: bool | None = None
    supply: bool | None = None
    oil_flow: Quantity | None = None
    current: Quantity | None = None
    target_speed: Quantity | None = None
    command: float | None = None
    actual_speed: Quantity | None = None

    def __post_init__(self) -> None:
        if self.command is not None and not 0 <= self.command <= 1:
            raise Refusal("The drive command must be from 0 to 100 %.")
        for name, measure in _READ.items():
            value = getattr(self, name)
            check_kind(value, measure, f"The {name.replace('_', ' ')}")
            if value is not None and not value.magnitude >= 0:
                raise Refusal(f"The {name.replace('_', ' ')} cannot be below zero; check it.")
        if self.target_rate is not None and self.target_rate.magnitude != 0:
            bounds.RATE.of(self.target_rate)
