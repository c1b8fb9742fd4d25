"""How the meters of a drive group are turned: by the ground wheel or by a motor."""

from dataclasses import dataclass
from enum import StrEnum

from changeover.quantities import Quantity, Refusal, check_kind, figure_in


class MotorKind(StrEnum):
    """What turns a variable-rate drive."""

    HYDRAULIC = "hydraulic"
    ELECTRIC = "electric"


@dataclass(frozen=True)
class GroundDrive:
    """A drive from the ground wheel through one changeable pair of sprockets.

    ``driver`` and ``driven`` are the tooth counts to choose from, ``rolling_circumference`` the
    ground covered in one wheel turn under load, ``ratio`` the turns of the disc in one wheel
    turn with equal sprockets, ``slip`` the share of ground distance lost, 0 to 1.
    """

    driver: tuple[int, ...]
    driven: tuple[int, ...]
    rolling_circumference: Quantity
    ratio: float
    slip: float = 0.0

    def __post_init__(self) -> None:
        if not self.driver or not self.driven or min(self.driver + self.driven) < 5:
            raise Refusal("A ground drive needs driver and driven sprockets of 5 teeth or more.")
        ground = "A ground drive's rolling circumference"
        if figure_in("m", self.rolling_circumference, "row_length", ground) <= 0 or self.ratio <= 0:
            raise Refusal("A ground drive's rolling circumference and ratio must be above zero.")
        if not 0 <= self.slip < 0.5:
            raise Refusal("Wheel slip must be from 0 to below 50 %.")

    @property
    def pairs(self) -> tuple[str, ...]:
        """Every sprocket pair as ``driver/driven``, the way it is written on a setting."""
        return tuple(f"{a}/{b}" for a in sorted(self.driver) for b in sorted(self.driven))


@dataclass(frozen=True)
class MotorDrive:
    """A variable-rate motor: ``ratio`` is motor turns in one disc turn.

    ``least_speed`` and ``most_speed`` bound the motor (turns per time); ``displacement`` is the
    oil that a hydraulic motor takes in one turn (volume), None for an electric one.
    """

    kind: MotorKind
    ratio: float
    least_speed: Quantity
    most_speed: Quantity
    displacement: Quantity | None = None

    def __post_init__(self) -> None:
        if self.ratio <= 0:
            raise Refusal("A motor's ratio to the disc must be above zero.")
        low = figure_in("rpm", self.least_speed, "disc_speed", "A motor's least speed")
        high = figure_in("rpm", self.most_speed, "disc_speed", "A motor's most speed")
        if not 0 <= low < high:
            raise Refusal("A motor's least speed must lie below its most speed.")
        check_kind(self.displacement, "displacement", "A hydraulic motor's displacement")
        if self.displacement is not None and self.displacement.to("l").magnitude <= 0:
            raise Refusal("A hydraulic motor's displacement must be above zero.")


Drive = GroundDrive | MotorDrive
