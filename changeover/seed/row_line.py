"""One row's own depth line from its digs: what the planter takes over, and why just that."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf, isfinite

import numpy as np

from changeover.planter.scales import WIDEST_STEP, DepthScale, DugLine, step_text
from changeover.quantities import Q, Quantity, Refusal, Units, how_many, show, unit_of
from changeover.seed import bounds
from changeover.seed.calibration_line import CalibrationLine
from changeover.seed.depth_calibration import (
    DepthLine,
    common_depth_line,
    fit_depth_line,
    shifted_depth_line,
)

FAR = 2.0  # a step beyond half or double the scale's asks for a second look (from memory)
MILLIMETRE = unit_of("mm")
MISTAKEN = "check which dig belongs to which notch"


@dataclass(frozen=True)
class RowDigs:
    """Digs of one row: those at the notch where it stands, and ``others`` at any notch before.

    ``depths`` are an array of lengths; ``others`` pairs a notch with the array of its digs;
    ``days`` counts the days on which all of them were dug.
    """

    row: int
    notch: int
    depths: Quantity
    others: Sequence[tuple[int, Quantity]] = ()
    days: int = 1

    @property
    def by_notch(self) -> tuple[tuple[int, Quantity], ...]:
        """All digs, a notch with its array."""
        return ((self.notch, self.depths), *self.others)


@dataclass(frozen=True)
class RowCalibration:
    """What the digs of a row make of its place on the scale.

    ``offset`` is the depth added at notch 1, ``step`` the row's own depth between notches, None
    where the scale's stays; ``half_width`` is half the 95 % interval of a measured step, None
    where only the offset was measured. ``why`` says which it is and why.
    """

    row: int
    offset: Quantity
    step: Quantity | None
    half_width: Quantity | None
    line: DepthLine
    why: str
    cautions: tuple[str, ...] = ()

    @property
    def own_line(self) -> bool:
        """Whether offset and step were both measured, not the offset alone."""
        return self.half_width is not None

    def taken_by(self, scale: DepthScale) -> DepthScale:
        """Return the scale with this calibration for the row."""
        return scale.with_row(self.row, self.offset, self.step, dug_line(self.line.line))

    def notch_to(self, scale: DepthScale, target: Quantity, stands: int) -> int | None:
        """Return the notch for a target by the row's new line, None where the digs cannot say.

        They cannot when the interval at the present notch is wider than the way to the target,
        or when no notch reaches it.
        """
        try:
            notch = self.taken_by(scale).notch(target, self.row)
        except Refusal:
            return None
        half = self.line.half_width(stands)
        off = abs(target - self.line.depth(stands))
        return notch if notch == stands or (half is not None and half < off) else None


def calibrate_row(scale: DepthScale, digs: RowDigs, units: Units) -> RowCalibration:
    """Return the row's own line where digs at two notches or more bear it, else its offset.

    The line is that of least squares with its 95 % interval. Only the offset is taken, from the
    digs at the notch where the row stands, when all were dug there, when the depth does not grow
    with the notch, when the digs leave nothing to tell the interval of the step from, and when
    that interval reaches zero or below. Raises Refusal for depths out of bounds.
    """
    flaw, line = fitted_line(digs, units)
    if line is None:
        return _offset_only(scale, digs, flaw, units)
    return _own_line(scale, digs, DepthLine(line, measured=True), units)


def fitted_line(digs: RowDigs, units: Units) -> tuple[str, CalibrationLine | None]:
    """Return the line through all digs of a row in mm, or why none is fit to be taken over.

    The reason is empty where there is a line. Raises Refusal for depths out of bounds.
    """
    parts = [np.atleast_1d(bounds.DEPTH.of(depths)) for _, depths in digs.by_notch]
    notches = [notch for notch, _ in digs.by_notch]
    if len(set(notches)) < 2:
        tell = "tells" if parts[0].size == 1 else "tell"
        told = f"{tell} how deep the row plants, not its step"
        return f"{how_many(parts[0].size, 'dig')} at notch {digs.notch} {told}", None
    each = np.repeat(notches, [part.size for part in parts])
    try:
        line = fit_depth_line(each.tolist(), Q(np.concatenate(parts), "mm")).line
    except Refusal:  # the depths are within bounds, so that only the slope is wrong
        return f"the depth does not grow with the notch; {MISTAKEN}", None
    flaw = _flaw(line, units)
    return ("", line) if flaw is None else (flaw, None)


def row_depth_line(scale: DepthScale, row: int) -> DepthLine:
    """Return a row's depth line with the interval of the digs behind it.

    ``measured`` is False for a row that has no calibration of its own.
    """
    dug, step = scale.digs.get(row), _mm(scale.step_of(row))
    if dug is None:
        line = CalibrationLine(_mm(scale.depth(1, row)), step, 1.0, 0, 0.0, 0.0, 0)
        return DepthLine(line, measured=row in scale.offsets)
    spread = None if dug.spread is None else _mm(dug.spread)
    first = _mm(scale.depth(1, row))
    return DepthLine(line_of_digs(first, step, dug, spread), measured=True)


def line_of_digs(first: float, step: float, dug: DugLine, spread: float | None) -> CalibrationLine:
    """Return a row's line with its interval, from the depth at notch 1 and the step, plain figures.

    ``spread`` is that of ``dug`` in the same unit.
    """
    freedom = dug.digs - (2 if dug.squares else 1) if spread is not None else 0
    level = first + (dug.middle - 1) * step
    squares = dug.squares or inf
    return CalibrationLine(level, step, dug.middle, dug.digs, squares, spread or 0.0, freedom)


def dug_line(line: CalibrationLine) -> DugLine:
    """Return what a fitted or moved line rests on, so that its interval can be told again."""
    squares = line.squares if isfinite(line.squares) else 0.0
    spread = Q(line.spread, "mm") if line.freedom > 0 else None
    return DugLine(line.readings, line.middle, squares, spread)


def _own_line(scale: DepthScale, digs: RowDigs, line: DepthLine, units: Units) -> RowCalibration:
    unit = scale.step.units
    step = Q(line.line.slope, "mm").to(unit)
    half = Q(line.line.slope_half_width(), "mm")
    offset = (line.depth(1) - scale.first).to(unit)
    notches = " and ".join(str(notch) for notch in sorted({notch for notch, _ in digs.by_notch}))
    shown = f"{show(step, 'depth_step', units, sign=False)} ± {show(half, 'depth_step', units)}"
    common = step_text(scale.step, units)
    within = abs(step - scale.step) <= half
    beside = "which lies within that" if within else "which lies outside of that"
    why = (
        f"{how_many(line.line.readings, 'dig')} at notches {notches} give this row its own line "
        f"by least squares: {shown} a notch (95 %); the scale says {common}, {beside}."
    )
    return RowCalibration(
        digs.row, offset, step, half, line, why, _cautions(scale, digs, line, units)
    )


def _offset_only(scale: DepthScale, digs: RowDigs, why: str, units: Units) -> RowCalibration:
    step = scale.step_of(digs.row)
    line = shifted_depth_line(common_depth_line(scale.first, step), digs.notch, digs.depths)
    offset = Q(line.line.at(1), "mm").to(scale.step.units) - scale.first.to(scale.step.units)
    own = scale.steps.get(digs.row)
    kept = f"{'its own' if own is not None else 'the scale’s'} {step_text(step, units)}"
    says = f"Only the offset. {why[0].upper()}{why[1:]}; {kept} a notch stays."
    return RowCalibration(digs.row, offset, own, None, line, says)


def _flaw(line: CalibrationLine, units: Units) -> str | None:
    """Say why a fitted step is not fit to be taken over, None when it is."""
    if line.freedom < 1:
        return (
            f"{how_many(line.readings, 'dig')} leave nothing to tell how sure the step is; dig more"
        )
    half = line.slope_half_width()
    figure = _step(line.slope, units).partition(" ")[0]
    shown = f"{figure} ± {_step(half, units)} a notch"
    if line.slope - half <= 0:
        return f"the step of {shown} could as well be none; dig more, at notches further apart"
    if line.slope > _mm(WIDEST_STEP):
        return f"a step of {shown} is not possible; {MISTAKEN}"
    return None


def _cautions(scale: DepthScale, digs: RowDigs, line: DepthLine, units: Units) -> tuple[str, ...]:
    says = []
    times = line.line.slope / _mm(scale.step)
    if not 1 / FAR <= times <= FAR:
        says.append(
            f"Row {digs.row}: {_step(line.line.slope, units)} a notch is far from the scale’s "
            f"{step_text(scale.step, units)}; {MISTAKEN}."
        )
    if line.depth(1).magnitude < 0:
        says.append(
            f"Row {digs.row}: by its line notch 1 would lie above the ground; trust the line only "
            "near the notches that were dug."
        )
    widest = max((1, scale.count), key=line.line.half_width)
    half = line.line.half_width(widest)
    if half > line.line.slope:
        says.append(
            f"Row {digs.row}: at notch {widest} the depth is known only to "
            f"± {show(Q(half, 'mm'), 'depth', units)}; dig at notches further apart."
        )
    if digs.days > 1:
        says.append(
            f"Row {digs.row} was dug on {digs.days} days; where the soil differed between them, "
            "the interval is too narrow."
        )
    return tuple(says)


def _step(mm: float, units: Units) -> str:
    return show(Q(mm, "mm"), "depth_step", units)


def _mm(length: Quantity) -> float:
    return float(length.to(MILLIMETRE).magnitude)
