"""Bench counts: skips and doubles of each meter at each level of vacuum, checked and in tables."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from changeover.quantities import Quantity, Refusal
from changeover.seed import bounds
from changeover.seed.bounds import Floats


@dataclass(frozen=True)
class Reading:
    """One bench run: a meter (or row) at a vacuum, the cells that passed, skips and doubles.

    ``position`` is the singulator position as named on the planter, empty when not varied;
    ``where`` says where the reading stands, such as ``line 4``. Raises Refusal for counts below
    zero, more skips and doubles than cells, or a vacuum out of bounds.
    """

    meter: str
    vacuum: Quantity
    cells: int
    skips: int
    doubles: int
    position: str = ""
    where: str = ""

    def __post_init__(self) -> None:
        at = f"{self.where}: " if self.where else f"Meter {self.meter}: "
        bounds.PRESSURE.of(self.vacuum)
        if self.cells < 1 or self.skips < 0 or self.doubles < 0:
            raise Refusal(f"{at}count at least one cell, and no skips or doubles below zero.")
        if self.skips + self.doubles > self.cells:
            raise Refusal(
                f"{at}{self.skips} skips and {self.doubles} doubles are more than the "
                f"{self.cells} cells; check the counts."
            )


@dataclass(frozen=True)
class BenchCounts:
    """Counts as tables of meters by levels; a level that a meter was not run at has no cells.

    ``names`` says which meter a table row is, ``levels`` are kPa, ``cells``, ``skips`` and
    ``doubles`` counts, all of one shape.
    """

    names: tuple[str, ...]
    levels: Floats
    cells: Floats
    skips: Floats
    doubles: Floats


def counts_by_meter(readings: Sequence[Reading]) -> BenchCounts:
    """Gather readings into tables of meters by levels, runs at the same level added up.

    Meters keep the order in which they come, levels rise. Meters with several singulator
    positions are kept apart as ``meter, position``. Raises Refusal when there is no reading.
    """
    if not readings:
        raise Refusal("Bench counts: there is no run; count skips and doubles at some levels.")
    named = [_name(reading) for reading in readings]
    names = tuple(dict.fromkeys(named))
    pressures = [round(float(bounds.PRESSURE.of(reading.vacuum)), 6) for reading in readings]
    levels = sorted(set(pressures))
    tables = np.zeros((3, len(names), len(levels)))
    row_of = {name: row for row, name in enumerate(names)}
    column_of = {level: column for column, level in enumerate(levels)}
    for reading, name, pressure in zip(readings, named, pressures, strict=True):
        counts = (reading.cells, reading.skips, reading.doubles)
        tables[:, row_of[name], column_of[pressure]] += counts
    spread = np.broadcast_to(np.array(levels), tables.shape[1:])
    return BenchCounts(names, spread, tables[0], tables[1], tables[2])


def pooled(counts: BenchCounts, name: str = "all") -> BenchCounts:
    """Return the counts of all meters as one, for a level that a whole fan group shares.

    Each meter's runs stay apart, so that their differences widen the interval.
    """
    flat = [
        table.reshape(1, -1)
        for table in (counts.levels, counts.cells, counts.skips, counts.doubles)
    ]
    return BenchCounts((name,), *flat)


def _name(reading: Reading) -> str:
    return f"{reading.meter}, {reading.position}" if reading.position else reading.meter
