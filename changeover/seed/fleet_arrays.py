"""Many planters as plain arrays: spacing, depth scales, positions and hubs, one entry a planter."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from changeover.planter.machine import Planter
from changeover.planter.parts import Meter
from changeover.planter.places import Place
from changeover.planter.settings import Setting
from changeover.planter.setup import Cell, Setup, working_rows
from changeover.quantities import Quantity, Refusal, is_quantity
from changeover.seed.bounds import Floats
from changeover.seed.load_lines import LoadLines

Counts = NDArray[np.int64]
Marks = NDArray[np.bool_]
NOTHING_FOUND: Mapping[str, Setup] = MappingProxyType({})


@dataclass(frozen=True)
class Fleet:
    """p planters of at most r rows, as arrays that the bulk look-up reckons with.

    Shapes are (p,) unless said. (p, r) are ``exists``, ``between`` (rows that can be locked up),
    ``up`` (those that are found locked up), ``track`` (rows behind a tire), ``depth_step`` and
    ``offset`` (mm that a row plants deeper than its scale says), ``hub_zero`` and ``hub_found``
    (mm, NaN where none is found); ``open_share`` is (p, k), NaN where not known, ``positions``
    marks those that a planter has. ``row_spacing``, ``narrow`` and ``width`` in metres, other
    lengths in millimetres; ``fan_limit`` in kPa, infinite where none was entered. ``load`` holds
    the lines of the down pressure of each circuit.
    """

    planters: tuple[Planter, ...]
    found: tuple[Setup, ...]
    meters: tuple[Meter, ...]
    row_spacing: Floats
    narrow: Floats
    width: Floats
    split: Marks
    twin: Marks
    exists: Marks
    between: Marks
    up: Marks
    track: Marks
    depth_first: Floats
    depth_step: Floats
    notches: Floats
    offset: Floats
    open_share: Floats
    positions: Marks
    closing: Counts
    hub_step: Floats
    hub_zero: Floats
    hub_found: Floats
    fan_limit: Floats
    load: LoadLines

    @staticmethod
    def of(
        planters: Sequence[Planter],
        meters: Sequence[Meter] = (),
        found: Mapping[str, Setup] = NOTHING_FOUND,
        load: Setting | None = None,
    ) -> "Fleet":
        """Return the arrays of planters and of the meters mounted on them.

        ``found`` holds what each planter is set to now, by its name; ``load`` is the setting for
        which down pressure is proposed. Raises Refusal when there is no planter.
        """
        if not planters:
            raise Refusal("Bulk look-up: there is no planter; add one.")
        setups = tuple(found.get(planter.name, Setup()) for planter in planters)
        rows = max(planter.rows for planter in planters)
        places = max(len(planter.singulator) for planter in planters)
        zeros = _zeros(meters)

        def marks(marked: Callable[[Planter], Iterable[int]]) -> Marks:
            return np.array([_marks(rows, marked(planter)) for planter in planters])

        both = tuple(zip(planters, setups, strict=True))
        up = [set(p.row_numbers) - set(working_rows(p, s)) for p, s in both]
        hubs = [_hubs(rows, planter, s) for planter, s in both]
        return Fleet(
            tuple(planters),
            setups,
            tuple(meters),
            _each(planter.row_spacing.to("m").magnitude for planter in planters),
            _each(planter.narrow_spacing.to("m").magnitude for planter in planters),
            _each(planter.width.to("m").magnitude for planter in planters),
            np.array([bool(planter.split_rows) for planter in planters]),
            np.array([planter.twin_rows for planter in planters]),
            marks(lambda planter: planter.row_numbers),
            marks(lambda planter: planter.split_rows),
            np.array([_marks(rows, one) for one in up]),
            marks(lambda planter: planter.wheel_track_rows),
            _each(planter.depth.first.to("mm").magnitude for planter in planters),
            np.array([_steps(rows, planter) for planter in planters]),
            _each(planter.depth.count for planter in planters),
            np.array([_by_row(rows, planter.depth.offsets) for planter in planters]),
            np.array([_shares(places, planter) for planter in planters]),
            np.array([_marks(places, range(1, len(p.singulator) + 1)) for p in planters]),
            np.array([len(planter.closing) for planter in planters], dtype=np.int64),
            _each(planter.hub_spacing_step.to("mm").magnitude for planter in planters),
            np.array([_by_row(rows, zeros.get(planter.name, {})) for planter in planters]),
            np.array(hubs),
            _each(_limit(planter) for planter in planters),
            LoadLines.of(planters, setups, load),
        )


def _each(values: Iterable[float]) -> Floats:
    return np.fromiter(values, dtype=np.float64)


def _marks(rows: int, marked: Iterable[int]) -> Marks:
    marks = np.zeros(rows, dtype=np.bool_)
    marks[[row - 1 for row in marked]] = True
    return marks


def _by_row(rows: int, lengths: Mapping[int, Quantity], default: float = 0.0) -> Floats:
    line = np.full(rows, default)
    for row, length in lengths.items():
        line[row - 1] = length.to("mm").magnitude
    return line


def _steps(rows: int, planter: Planter) -> Floats:
    scale = planter.depth
    return _by_row(rows, scale.steps, float(scale.step.to("mm").magnitude))


def _hubs(rows: int, planter: Planter, found: Setup) -> Floats:
    values = {row: found.get(Cell("hub_spacing", Place.of_row(row))) for row in planter.row_numbers}
    known = {row: value for row, value in values.items() if is_quantity(value)}
    return _by_row(rows, known, np.nan)


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
