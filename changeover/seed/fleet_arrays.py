"""Many planters as plain arrays: spacing, depth scales, positions and hubs, one entry a planter."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from changeover.planter.machine import Planter
from changeover.planter.parts import Meter
from changeover.quantities import Quantity, Refusal
from changeover.seed.bounds import Floats

Counts = NDArray[np.int64]
Marks = NDArray[np.bool_]


@dataclass(frozen=True)
class Fleet:
    """p planters of at most r rows, as arrays that the bulk look-up reckons with.

    Shapes are (p,) unless said: ``exists``, ``between`` (rows that can be locked up), ``offset``
    (mm that a row plants deeper than its scale says) and ``hub_zero`` (mm) are (p, r);
    ``open_share`` is (p, k), NaN where
    not known, ``positions`` marks those that a planter has. Lengths in metres for
    ``row_spacing``, else in millimetres; ``fan_limit`` in kPa, infinite where none was entered.
    """

    planters: tuple[Planter, ...]
    row_spacing: Floats
    split: Marks
    exists: Marks
    between: Marks
    depth_first: Floats
    depth_step: Floats
    notches: Floats
    offset: Floats
    open_share: Floats
    positions: Marks
    closing: Counts
    hub_step: Floats
    hub_zero: Floats
    fan_limit: Floats

    @staticmethod
    def of(planters: Sequence[Planter], meters: Sequence[Meter] = ()) -> "Fleet":
        """Return the arrays of planters and of the meters mounted on them.

        Raises Refusal when there is no planter.
        """
        if not planters:
            raise Refusal("Bulk look-up: there is no planter; add one.")
        rows = max(planter.rows for planter in planters)
        places = max(len(planter.singulator) for planter in planters)
        zeros = _zeros(meters)
        return Fleet(
            tuple(planters),
            _each(planter.row_spacing.to("m").magnitude for planter in planters),
            np.array([bool(planter.split_rows) for planter in planters]),
            np.array([_marks(rows, planter.row_numbers) for planter in planters]),
            np.array([_marks(rows, planter.split_rows) for planter in planters]),
            _each(planter.depth.first.to("mm").magnitude for planter in planters),
            _each(planter.depth.step.to("mm").magnitude for planter in planters),
            _each(planter.depth.count for planter in planters),
            np.array([_by_row(rows, planter.depth.offsets) for planter in planters]),
            np.array([_shares(places, planter) for planter in planters]),
            np.array([_marks(places, range(1, len(p.singulator) + 1)) for p in planters]),
            np.array([len(planter.closing) for planter in planters], dtype=np.int64),
            _each(planter.hub_spacing_step.to("mm").magnitude for planter in planters),
            np.array([_by_row(rows, zeros.get(planter.name, {})) for planter in planters]),
            _each(_limit(planter) for planter in planters),
        )


def _each(values: object) -> Floats:
    return np.fromiter(values, dtype=np.float64)  # type: ignore[call-overload, no-any-return]


def _marks(rows: int, marked: object) -> Marks:
    marks = np.zeros(rows, dtype=np.bool_)
    marks[[row - 1 for row in marked]] = True  # type: ignore[attr-defined]
    return marks


def _by_row(rows: int, lengths: Mapping[int, Quantity]) -> Floats:
    line = np.zeros(rows)
    for row, length in lengths.items():
        line[row - 1] = length.to("mm").magnitude
    return line


def _shares(places: int, planter: Planter) -> Floats:
    line = np.full(places, np.nan)
    for number, position in enumerate(planter.singulator.positions):
        if position.open_share is not None:
            line[number] = position.open_share
    return line


def _limit(planter: Planter) -> float:
    return np.inf if planter.fan_limit is None else float(planter.fan_limit.to("kPa").magnitude)


def _zeros(meters: Sequence[Meter]) -> dict[str, dict[int, Quantity]]:
    zeros: dict[str, dict[int, Quantity]] = {}
    for meter in meters:
        if meter.planter and meter.row and meter.hub_zero is not None:
            zeros.setdefault(meter.planter, {})[meter.row] = meter.hub_zero
    return zeros
