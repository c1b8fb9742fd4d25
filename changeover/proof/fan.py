"""Vacuum and fan: gauge readings by row, fall along the manifold, leaks, and two fans compared."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import sqrt

import numpy as np

from changeover.proof.advice import Advice
from changeover.proof.intervals import Floats
from changeover.proof.source import PRACTICE
from changeover.quantities import Q, Quantity, Refusal, figure_in

MOST_FAR_LOSS = 0.10  # of the set value, at the far row: common practice, no source
LEAK_STEP = 0.10  # of the set value, below both neighbours: common practice, no source
MOST_FAN_DIFFERENCE = 0.05  # of the greater: common practice, no source
CLEAR_OF_FAN = "Keep clear of the fan's inlet and of its outlet's dust while it runs."
MOST_VACUUM = Q(60.0, "inH2O")  # a bound against slips of the pen, from memory


@dataclass(frozen=True)
class FanLimits:
    """The user's limits, shares of the set value; the defaults are common practice."""

    far_loss: float = MOST_FAR_LOSS
    leak_step: float = LEAK_STEP
    fan_difference: float = MOST_FAN_DIFFERENCE

    def __post_init__(self) -> None:
        if not all(0 < x < 1 for x in (self.far_loss, self.leak_step, self.fan_difference)):
            raise Refusal("Limits on vacuum must be shares above 0 and below 100 %.")


class Place(StrEnum):
    """Where along the manifold a row stands out."""

    FINE = "as its neighbours"
    LEAK = "below both neighbours"
    STEP = "a step down from here outward"
    NONE = "no vacuum"


@dataclass(frozen=True)
class RowVacuum:
    """One row's gauge: the reading, its share of the set value, and how its neighbours compare."""

    row: int
    vacuum: Quantity
    share: float
    place: Place


@dataclass(frozen=True)
class Manifold:
    """One fan's rows in order from the fan outward.

    ``loss`` is the far row below the nearest one, as a share of the set value; ``per_row`` the
    least-squares fall from row to row, a pressure; ``far_ok`` whether the far row holds the set
    value within the limit; ``advice`` what to look at.
    """

    fan: str
    set_value: Quantity
    rows: tuple[RowVacuum, ...]
    mean: Quantity
    loss: float
    per_row: Quantity | None
    far_ok: bool
    advice: tuple[Advice, ...]


@dataclass(frozen=True)
class FansCompared:
    """Two fans side by side: the difference of their means over the greater, and if it is fine."""

    first: str
    second: str
    difference: float
    alike: bool


def judge_manifold(
    fan: str,
    readings: Mapping[int, Quantity],
    order: Sequence[int],
    set_value: Quantity,
    limits: FanLimits | None = None,
) -> Manifold:
    """Return the verdict on one fan's gauge readings.

    ``readings`` are vacuum by row, ``order`` the rows from the fan outward, ``set_value`` the
    vacuum wanted. Raises Refusal for a missing row, a vacuum outside 0 to 60 inH2O, or a set
    value of zero.
    """
    limits = limits or FanLimits()
    wanted = _checked("set value", set_value)
    if wanted == 0:
        raise Refusal("The vacuum's set value must be above zero.")
    missing = [row for row in order if row not in readings]
    if not order:
        raise Refusal(f"No row of {fan} is named; say in which order its manifold feeds them.")
    if missing:
        raise Refusal(f"Row {missing[0]} of {fan} has no gauge reading; read it too.")
    x = np.array([_checked(f"row {row}", readings[row]) for row in order])
    places = [_place(x, i, limits.leak_step * wanted) for i in range(x.size)]
    rows = tuple(
        RowVacuum(row, readings[row], float(v) / wanted, place)
        for row, v, place in zip(order, x, places, strict=True)
    )
    slope = float(np.polyfit(np.arange(x.size), x, 1)[0]) if x.size > 1 else None
    return Manifold(
        fan=fan,
        set_value=set_value,
        rows=rows,
        mean=Q(float(x.mean()), "inH2O"),
        loss=float(x[0] - x[-1]) / wanted,
        per_row=None if slope is None else Q(-slope, "inH2O"),
        far_ok=bool(x[-1] >= wanted * (1 - limits.far_loss) * (1 - 1e-9)),
        advice=_advice(rows, float(x[0]) / wanted, float(x[-1]) / wanted, limits),
    )


def compare_fans(
    first: Manifold, second: Manifold, limits: FanLimits | None = None
) -> FansCompared:
    """Return how two fans' mean vacuum differs, over the greater of them."""
    a, b = (float(one.mean.to("inH2O").magnitude) for one in (first, second))
    difference = abs(a - b) / max(a, b) if max(a, b) > 0 else 0.0
    alike = difference <= (limits or FanLimits()).fan_difference
    return FansCompared(first.fan, second.fan, difference, alike)


def speed_factor(now: Quantity, wanted: Quantity) -> float:
    """Return the factor on the fan's speed that brings the vacuum from ``now`` to ``wanted``.

    √(wanted / now), as pressure goes with the square of speed in an unchanged system: the fan
    laws. Raises Refusal for a vacuum out of bounds or a present one of zero.
    """
    here = _checked("vacuum now", now)
    if here == 0:
        raise Refusal("Without any vacuum the fan laws say nothing; find out why there is none.")
    return sqrt(_checked("vacuum wanted", wanted) / here)


def _place(x: Floats, i: int, step: float) -> Place:
    if x[i] <= 0:
        return Place.NONE
    inner = x[i - 1] if i > 0 else None
    outer = x[i + 1] if i + 1 < x.size else None
    below_inner = inner is None or inner - x[i] >= step
    below_outer = outer is None or outer - x[i] >= step
    if below_inner and below_outer and (inner is not None or outer is not None):
        return Place.LEAK
    return Place.STEP if inner is not None and below_inner else Place.FINE


def _checked(what: str, vacuum: Quantity) -> float:
    size = figure_in("inH2O", vacuum, "pressure", f"Vacuum, {what}")
    if not 0 <= size <= float(MOST_VACUUM.magnitude):
        raise Refusal(f"Vacuum, {what}: {size:g} inH2O is not possible; enter 0 to 60 inH2O.")
    return size


def _advice(
    rows: tuple[RowVacuum, ...], near: float, far: float, limits: FanLimits
) -> tuple[Advice, ...]:
    places = {one.place for one in rows}
    found: list[str] = []
    if Place.NONE in places:
        found.append("No vacuum at a row: look for a hose off, a blocked hose or an open meter.")
    if Place.LEAK in places:
        found.append("Low at one row: check that row's hose, seal, disc seat and meter cover.")
    if Place.STEP in places:
        found.append("A step down: look for a leak or blockage in the manifold at that place.")
    if near < 1 - limits.far_loss:
        found.append("Low from the fan on: raise the fan, check its intake screen and drive.")
    elif far < 1 - limits.far_loss and not places & {Place.NONE, Place.LEAK, Place.STEP}:
        found.append("A steady fall to the far row: raise the fan until the far row holds.")
    return tuple(Advice(text, PRACTICE, CLEAR_OF_FAN) for text in found)
