"""What a seed rate asks of a variable-rate motor: its speed, its oil, and the ranges it allows."""

from collections.abc import Mapping
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from changeover.planter.drive import MotorDrive
    from changeover.quantities import Quantity, Units
    from changeover.seed.speed import TopSpeed

INPUTS = {
    "motor_ratio": 'motor turns in one disc turn, such as "10"; needs --cells',
    "motor_least": 'least motor speed, such as "40 rpm"; gives the ranges that work',
    "motor_most": 'most motor speed, such as "500 rpm"',
    "displacement": 'oil in one motor turn, such as "5 in^3"; gives the oil flow',
    "volumetric_efficiency": 'share of the oil that turns the motor, such as "92 %%"',
}


def check_drive(given: Mapping[str, str]) -> None:
    """Refuse inputs of the motor that lack their partners. Raises Refusal."""
    from changeover.quantities import Refusal

    asked = given.keys() & INPUTS.keys()
    if asked and "motor_ratio" not in given:
        raise Refusal("Motor: its ratio to the disc is missing; add --motor-ratio.")
    if asked and "cells" not in given:
        raise Refusal("Motor: its speed follows from the disc; add --speed and --cells.")
    if ("motor_least" in given) != ("motor_most" in given):
        raise Refusal("Motor: give both --motor-least and --motor-most, or neither.")
    if "volumetric_efficiency" in given and "displacement" not in given:
        raise Refusal("Volumetric efficiency: it serves for the oil flow; add --displacement.")


def drive_figures(
    given: Mapping[str, "Quantity"], figures: Mapping[str, "Quantity"]
) -> dict[str, "Quantity"]:
    """Return ``motor_speed`` with a ratio, ``oil_flow`` with a displacement, and the ranges.

    ``slowest`` and ``fastest`` are ground speeds at this rate, ``least_rate`` and ``most_rate``
    seed rates at this speed. Raises Refusal for figures out of bounds.
    """
    from changeover.seed import drive
    from changeover.seed.rate import ALL

    if "motor_ratio" not in given:
        return {}
    turns = drive.motor_speed(figures["disc_speed"], given["motor_ratio"])
    found = {"motor_speed": turns}
    if "displacement" in given:
        share = given.get("volumetric_efficiency", ALL)
        found["oil_flow"] = drive.oil_flow(turns, given["displacement"], share)
    if "motor_least" in given:
        motor, cells, row_spacing = _motor(given), given["cells"], given["row_spacing"]
        slow, fast = drive.ground_speed_range(motor, figures["rate"], row_spacing, cells)
        least, most = drive.rate_range(motor, given["speed"], row_spacing, cells)
        found |= {"slowest": slow, "fastest": fast, "least_rate": least, "most_rate": most}
    return found


def warnings(
    given: Mapping[str, "Quantity"], figures: Mapping[str, "Quantity"], units: "Units"
) -> list[str]:
    """Return the sentences that warn of the motor's limits and of too fast a ground speed."""
    from changeover.seed.drive import motor_warnings
    from changeover.seed.speed import speed_warnings

    if "speed" not in given:
        return []
    job = figures["rate"], given["row_spacing"]
    cells, most = _cells(given), given.get("most_disc_speed")
    said = list(speed_warnings(given["speed"], *job, cells, most, units))
    if "motor_least" in given:
        said += motor_warnings(_motor(given), *job, given["speed"], cells, units)
    return said


def top_speed(given: Mapping[str, "Quantity"], rate: "Quantity") -> "TopSpeed":
    """Return the fastest ground speed advised, by the disc's limit where one is given.

    Raises Refusal for input out of bounds.
    """
    from changeover.seed.speed import top_ground_speed

    limit = given.get("most_disc_speed")
    return top_ground_speed(rate, given["row_spacing"], _cells(given), limit)


def _cells(given: Mapping[str, "Quantity"]) -> int:
    return int(given["cells"].to("count").magnitude) if "cells" in given else 1


def _motor(given: Mapping[str, "Quantity"]) -> "MotorDrive":
    from changeover.planter.drive import MotorDrive, MotorKind

    kind = MotorKind.HYDRAULIC if "displacement" in given else MotorKind.ELECTRIC
    return MotorDrive(
        kind,
        float(given["motor_ratio"].to("count").magnitude),
        given["motor_least"],
        given["motor_most"],
        given.get("displacement"),
    )
