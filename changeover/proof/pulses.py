"""Pulses and distance: calibration of the wheel sensor, and ground speed timed over a course."""

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import mean, stdev

from changeover.quantities import Q, Quantity, Refusal
from changeover.seed.bounds import Bound

LEAST_RUNS = 2  # two or three loaded runs at work speed: common practice, no source
_COURSE = Bound("course", "m", 1.0, 100_000.0)
_TIME = Bound("time", "s", 0.01, 86_400.0)


@dataclass(frozen=True)
class WheelRun:
    """One run over a measured course: pulses counted, and the course's length."""

    pulses: int
    distance: Quantity

    def __post_init__(self) -> None:
        if self.pulses < 1:
            raise Refusal("A run without pulses calibrates nothing; check the wheel sensor.")
        _COURSE.of(self.distance)


@dataclass(frozen=True)
class WheelCalibration:
    """The calibration in both conventions, and how far the runs disagree.

    ``pulses_per_distance`` and ``distance_per_pulse`` are each other's inverse: enter the one
    that the controller asks for. ``spread`` is the standard deviation between runs as a share,
    None for one run.
    """

    pulses_per_distance: Quantity
    distance_per_pulse: Quantity
    runs: int
    spread: float | None

    @property
    def enough_runs(self) -> bool:
        return self.runs >= LEAST_RUNS


def calibrate(runs: Sequence[WheelRun]) -> WheelCalibration:
    """Return the calibration from all runs together: total pulses over total distance.

    By definition. Raises Refusal when there are no runs.
    """
    if not runs:
        raise Refusal("There are no calibration runs; drive the measured course at least once.")
    pulses = sum(run.pulses for run in runs)
    metres = sum(float(run.distance.to("m").magnitude) for run in runs)
    each = [run.pulses / float(run.distance.to("m").magnitude) for run in runs]
    return WheelCalibration(
        Q(pulses / metres, "pulse/m"),
        Q(metres / pulses, "m/pulse"),
        len(runs),
        stdev(each) / mean(each) if len(each) > 1 else None,
    )


def corrected_pulses_per_distance(old: Quantity, shown: Quantity, true: Quantity) -> Quantity:
    """Return the new pulses per distance when a course shows another length than it has.

    old · shown / true: a controller that shows too much distance needs more pulses for it.
    Raises Refusal for a course out of bounds or a calibration not above zero.
    """
    factor = _shown_over_true(old, shown, true)
    return Q(float(old.magnitude) * factor, old.units)


def corrected_distance_per_pulse(old: Quantity, shown: Quantity, true: Quantity) -> Quantity:
    """Return the new distance per pulse: old · true / shown, the inverse of the other convention.

    Raises Refusal for a course out of bounds or a calibration not above zero.
    """
    factor = _shown_over_true(old, shown, true)
    return Q(float(old.magnitude) / factor, old.units)


def timed_speed(course: Quantity, time: Quantity) -> Quantity:
    """Return ground speed from the time over a course; 88 ft gives 60/s mph, 100 m 360/s km/h.

    By definition. Raises Refusal for a course or time out of bounds.
    """
    return Q(_COURSE.of(course) / _TIME.of(time), "m/s")


def _shown_over_true(old: Quantity, shown: Quantity, true: Quantity) -> float:
    if not float(old.magnitude) > 0:
        raise Refusal("The calibration in use must be above zero.")
    return float(_COURSE.of(shown) / _COURSE.of(true))
