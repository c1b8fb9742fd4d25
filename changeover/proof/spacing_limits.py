"""The verdict on spacing in the furrow by the user's limits, or by one standard that has some."""

from dataclasses import dataclass

from changeover.proof.bench import Standing, standing_at_most, worst
from changeover.proof.intervals import Interval, wilson
from changeover.proof.source import YOUR_LIMIT, Source
from changeover.proof.spacing import SpacingMeasures
from changeover.quantities import Refusal
from changeover.seed.reasons import Trust


@dataclass(frozen=True)
class SpacingLimits:
    """Limits on shares of spacings and on precision over the target, 0 to 1; None for no limit."""

    quality_least: float | None = None
    multiples_most: float | None = None
    misses_most: float | None = None
    precision_most: float | None = None
    source: Source = YOUR_LIMIT

    def __post_init__(self) -> None:
        limits = (self.quality_least, self.multiples_most, self.misses_most, self.precision_most)
        if any(one is not None and not 0 <= one <= 1 for one in limits):
            raise Refusal("A limit on spacing must be a share from 0 to 100 %.")


PROVINCIAL = SpacingLimits(
    0.80, 0.08, 0.08, 0.30, Source("DB32/T 1023-2007, one provincial standard", Trust.PUBLISHED)
)


@dataclass(frozen=True)
class JudgedFigure:
    """One measure with its interval, its limit and how it stands; shares 0 to 1."""

    name: str
    value: float
    interval: Interval | None
    limit: float | None
    standing: Standing


@dataclass(frozen=True)
class SpacingVerdict:
    """The figures judged, and the worst standing among them."""

    figures: tuple[JudgedFigure, ...]
    source: Source

    @property
    def standing(self) -> Standing:
        return worst(one.standing for one in self.figures)


def judge_spacing(
    measures: SpacingMeasures,
    limits: SpacingLimits,
    precision: Interval | None = None,
    level: float = 0.95,
) -> SpacingVerdict:
    """Return how the shares of spacings and the precision stand to the limits.

    Shares with Wilson intervals, which take spacings as independent; ``precision`` is the
    interval of precision over the target, from a bootstrap, without which precision is judged
    by its value alone.
    """
    first, second, *gaps = measures.counts
    figures = [
        _share("quality of feed", second, measures.n, limits.quality_least, level, least=True),
        _share("multiples", first, measures.n, limits.multiples_most, level),
        _share("misses", sum(gaps), measures.n, limits.misses_most, level),
    ]
    if measures.precision_ref is not None:
        figures.append(_precision(measures.precision_ref, precision, limits.precision_most, level))
    return SpacingVerdict(tuple(figures), limits.source)


def _share(
    name: str, events: int, n: int, limit: float | None, level: float, *, least: bool = False
) -> JudgedFigure:
    interval = wilson(events, n, level)
    bound, turned = limit, interval
    if least and limit is not None:
        bound, turned = 1 - limit, Interval(1 - interval.high, 1 - interval.low, level)
    return JudgedFigure(name, events / n, interval, limit, standing_at_most(turned, bound))


def _precision(
    value: float, interval: Interval | None, limit: float | None, level: float
) -> JudgedFigure:
    standing = standing_at_most(interval or Interval(value, value, level), limit)
    return JudgedFigure("precision", value, interval, limit, standing)
