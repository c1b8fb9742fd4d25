"""Bench run of meters: single-seed, skip and double shares with intervals, and their verdict."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from changeover.proof.intervals import Interval, wilson
from changeover.proof.source import YOUR_LIMIT, Source
from changeover.quantities import Refusal

MOST_CELLS = 1_000_000_000  # of all rows: more is a slip of the pen (from memory)
_MOST_TO_SETTLE = 1_000_000


@dataclass(frozen=True)
class BenchCount:
    """What one row's meter did on the bench.

    ``cells`` passed, of which ``skips`` held no seed and ``doubles`` held two or more.
    """

    row: int
    cells: int
    skips: int
    doubles: int
    meter: str = ""

    def __post_init__(self) -> None:
        if not 1 <= self.cells <= MOST_CELLS:
            raise Refusal(f"Row {self.row}: a bench run passes 1 to {MOST_CELLS} cells.")
        if self.skips < 0 or self.doubles < 0:
            raise Refusal(f"Row {self.row}: skips and doubles cannot be below zero.")
        if self.skips + self.doubles > self.cells:
            raise Refusal(
                f"Row {self.row}: {self.skips} skips and {self.doubles} doubles are more than the "
                f"{self.cells} cells passed; check the counts."
            )

    @property
    def singles(self) -> int:
        return self.cells - self.skips - self.doubles


class Standing(StrEnum):
    """How a figure stands to its limit, the confidence interval taken into account."""

    WITHIN = "within limits"
    OPEN = "not proved"
    SHORT = "falls short"
    NO_LIMIT = "no limit set"


@dataclass(frozen=True)
class BenchLimits:
    """The user's limits, shares 0 to 1, None where there is none; no figure is built in."""

    single_least: float | None = None
    skip_most: float | None = None
    double_most: float | None = None
    source: Source = YOUR_LIMIT

    def __post_init__(self) -> None:
        for limit in (self.single_least, self.skip_most, self.double_most):
            if limit is not None and not 0 <= limit <= 1:
                raise Refusal("A limit of a bench run must be a share from 0 to 100 %.")


@dataclass(frozen=True)
class JudgedShare:
    """A share 0 to 1 of the cells passed, its Wilson interval, its limit and how it stands."""

    events: int
    cells: int
    interval: Interval
    limit: float | None
    standing: Standing

    @property
    def share(self) -> float:
        return self.events / self.cells


@dataclass(frozen=True)
class RowBench:
    """The verdict on one row: its three shares, and the worst of their standings."""

    count: BenchCount
    single: JudgedShare
    skip: JudgedShare
    double: JudgedShare

    @property
    def standing(self) -> Standing:
        return worst(one.standing for one in (self.single, self.skip, self.double))


def worst(standings: Iterable[Standing]) -> Standing:
    """Return the worst of several standings; without a limit counts only when there is no other."""
    found = set(standings)
    order = (Standing.SHORT, Standing.OPEN, Standing.WITHIN)
    return next((one for one in order if one in found), Standing.NO_LIMIT)


def judge_row(count: BenchCount, limits: BenchLimits, level: float = 0.95) -> RowBench:
    """Return the shares of one row with Wilson intervals at ``level``, judged by the limits."""
    return RowBench(
        count,
        _at_least(count.singles, count.cells, limits.single_least, level),
        _at_most(count.skips, count.cells, limits.skip_most, level),
        _at_most(count.doubles, count.cells, limits.double_most, level),
    )


def _at_most(events: int, cells: int, limit: float | None, level: float) -> JudgedShare:
    interval = wilson(events, cells, level)
    return JudgedShare(events, cells, interval, limit, standing_at_most(interval, limit))


def _at_least(events: int, cells: int, limit: float | None, level: float) -> JudgedShare:
    interval = wilson(events, cells, level)
    turned = Interval(1 - interval.high, 1 - interval.low, level)
    most = None if limit is None else 1 - limit
    return JudgedShare(events, cells, interval, limit, standing_at_most(turned, most))


def standing_at_most(interval: Interval, limit: float | None) -> Standing:
    """Return how a figure stands to the most it may be: beyond doubt only if all of it is."""
    if limit is None:
        return Standing.NO_LIMIT
    if interval.high <= limit:
        return Standing.WITHIN
    return Standing.SHORT if interval.low > limit else Standing.OPEN


def pooled(counts: Sequence[BenchCount]) -> tuple[BenchCount, ...]:
    """Return one count for each row, its replicates added, in order of row.

    Raises Refusal when there is no count, or when one row carries two meters.
    """
    if not counts:
        raise Refusal("The bench run has no rows; enter at least one.")
    total: dict[int, BenchCount] = {}
    for one in counts:
        had = total.get(one.row)
        total[one.row] = one if had is None else _added(had, one)
    return tuple(total[row] for row in sorted(total))


def _added(a: BenchCount, b: BenchCount) -> BenchCount:
    if a.meter and b.meter and a.meter != b.meter:
        raise Refusal(
            f"Row {a.row} carries two meters, {a.meter} and {b.meter}; keep their runs apart."
        )
    return replace(
        a,
        cells=a.cells + b.cells,
        skips=a.skips + b.skips,
        doubles=a.doubles + b.doubles,
        meter=a.meter or b.meter,
    )


def cells_to_settle(judged: JudgedShare, most: bool = True) -> int | None:
    """Return the further cells after which this share would be beyond doubt, if it stays as it is.

    ``most`` says that the limit is an upper one. 0 when it is settled, None when the share lies
    so near the limit that no sensible run settles it, or when there is no limit.
    """
    limit = judged.limit
    if limit is None:
        return None
    share, bound = (judged.share, limit) if most else (1 - judged.share, 1 - limit)
    low, high = judged.cells, judged.cells
    while not _settled(share, high, bound, judged.interval.level):
        low, high = high, high * 2
        if high > _MOST_TO_SETTLE:
            return None
    while high - low > 1:
        middle = (low + high) // 2
        settled = _settled(share, middle, bound, judged.interval.level)
        low, high = (low, middle) if settled else (middle, high)
    return high - judged.cells


def _settled(share: float, cells: int, limit: float, level: float) -> bool:
    interval = wilson(round(share * cells), cells, level)
    return standing_at_most(interval, limit) is not Standing.OPEN
