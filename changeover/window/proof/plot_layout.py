"""What a plot by row shows, and where its figures lie: plain values and geometry, in pixels."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from math import ceil, floor, log10

from changeover.quantities import how_many


class Shape(StrEnum):
    """The shapes of marks, so that no series is told by its colour alone."""

    RING = "ring"
    SQUARE = "square"


@dataclass(frozen=True)
class Spot:
    """One figure with its interval; ``loud`` draws it in the colour of work."""

    value: float
    low: float
    high: float
    loud: bool = False


@dataclass(frozen=True)
class Series:
    """Figures by row, drawn with one shape of mark."""

    name: str
    shape: Shape
    spots: Mapping[int, Spot]


@dataclass(frozen=True)
class Level:
    """A line across the plot, such as a target or a limit, with its name."""

    value: float
    name: str
    limit: bool = True


@dataclass(frozen=True)
class RowPlot:
    """A plot with one column for each row; ``unit`` stands behind the figures of the scale.

    ``band`` shades a range, such as a tolerance. ``attention`` are rows that need a look.
    """

    rows: tuple[int, ...]
    series: tuple[Series, ...]
    levels: tuple[Level, ...] = ()
    unit: str = ""
    band: tuple[float, float] | None = None
    from_zero: bool = True
    attention: frozenset[int] = frozenset()
    factor: float = 1.0

    @property
    def says(self) -> str:
        """The plot in words: each series' least and most, for those who cannot see it."""
        told = []
        for one in self.series:
            values = [spot.value for spot in one.spots.values()]
            if values:
                low, high = min(values) * self.factor, max(values) * self.factor
                told.append(f"{one.name} {low:.3g} to {high:.3g} {self.unit}".rstrip())
        return (
            f"{how_many(len(self.rows), 'row')}: " + ", ".join(told)
            if told
            else "nothing to show yet"
        )


@dataclass(frozen=True)
class Scale:
    """A vertical scale from ``low`` to ``high`` with its ticks."""

    low: float
    high: float
    ticks: tuple[float, ...] = field(default=())

    def place(self, value: float, top: float, foot: float) -> float:
        """Return how far down a value lies between two heights, kept within them."""
        share = (value - self.low) / (self.high - self.low)
        return foot - min(1.0, max(0.0, share)) * (foot - top)


def scale_of(plot: RowPlot, ticks: int = 5) -> Scale:
    """Return the scale that shows every figure, interval and level of a plot."""
    values = [level.value for level in plot.levels]
    values += list(plot.band or ())
    for one in plot.series:
        for spot in one.spots.values():
            values += [spot.value, spot.high, spot.low]
    return scale_for(values, ticks, from_zero=plot.from_zero, factor=plot.factor)


def scale_for(
    values: Sequence[float], ticks: int = 5, *, from_zero: bool = True, factor: float = 1.0
) -> Scale:
    """Return a scale with round ticks in units of 1/``factor`` over the values."""
    shown = [value * factor for value in values] or [0.0, 1.0]
    low, high = (0.0 if from_zero else min(shown)), max(shown)
    if high <= low:
        high = low + 1.0
    step = _round_step((high - low) / ticks)
    first, last = floor(low / step + 1e-9), ceil(high / step - 1e-9)
    marks = tuple(number * step / factor for number in range(first, last + 1))
    return Scale(marks[0], marks[-1], marks)


def _round_step(size: float) -> float:
    """Return 1, 2, 2.5 or 5 times a power of ten, at least ``size``."""
    power = 10.0 ** floor(log10(size))
    return next(power * m for m in (1.0, 2.0, 2.5, 5.0, 10.0) if power * m >= size * (1 - 1e-9))


def columns(rows: Sequence[int], left: float, right: float) -> dict[int, float]:
    """Return the middle of each row's column, spread evenly between two edges."""
    width = (right - left) / max(1, len(rows))
    return {row: left + (number + 0.5) * width for number, row in enumerate(rows)}
