"""Row sensors: whether the controllers can read them all, and which rows do not report."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from changeover.quantities import Refusal

SENSORS_PER_CONTROLLER = 24  # common practice, no source; the user's controller states its own


@dataclass(frozen=True)
class SensorCapacity:
    """How many controllers the row sensors need, and how many there are."""

    sensors: int
    per_controller: int
    controllers: int

    @property
    def needed(self) -> int:
        return -(-self.sensors // self.per_controller)

    @property
    def enough(self) -> bool:
        return self.controllers >= self.needed

    @property
    def unread(self) -> int:
        """Sensors that no controller can read."""
        return max(0, self.sensors - self.controllers * self.per_controller)


def sensor_capacity(
    sensors: int, controllers: int, per_controller: int = SENSORS_PER_CONTROLLER
) -> SensorCapacity:
    """Return whether the controllers read all row sensors; raises Refusal for a count below 1."""
    if sensors < 1 or per_controller < 1 or controllers < 0:
        raise Refusal("Sensors and sensors a controller must be 1 or more, controllers 0 or more.")
    return SensorCapacity(sensors, per_controller, controllers)


@dataclass(frozen=True)
class Silence:
    """Rows whose sensor does not report, and the controllers of which every row is silent."""

    rows: tuple[int, ...]
    controllers: tuple[str, ...]


def rows_not_reporting(
    rows: Collection[int], reporting: Collection[int], controller: Mapping[int, str]
) -> Silence:
    """Return the silent rows of those that should report.

    ``controller`` names the controller that each row's sensor is wired to; where all of a
    controller's rows are silent, look at it and its harness before the sensors. Raises Refusal
    when a row reports that the planter does not have, or one has no controller.
    """
    unknown = sorted(set(reporting) - set(rows)) + sorted(set(rows) - set(controller))
    if unknown:
        raise Refusal(f"Row {unknown[0]} is not among the rows wired to a controller; check it.")
    silent = sorted(set(rows) - set(reporting))
    names = dict.fromkeys(controller[row] for row in sorted(rows))
    whole = [n for n in names if all(r in silent for r in rows if controller[r] == n)]
    return Silence(tuple(silent), tuple(whole))
