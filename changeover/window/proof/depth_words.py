"""Depth digs as a plot and as lines of a table."""

from changeover.desk.board import Board
from changeover.desk.prove.depth import DepthProof, RowDepth
from changeover.desk.prove.row_lines import taken_over
from changeover.proof.bench import Standing
from changeover.proof.intervals import Interval
from changeover.proof.wording import percent
from changeover.quantities import MEASURES, Q, Quantity, Units, show, unit_sign
from changeover.window.entry.list_table import Column
from changeover.window.proof.plot_layout import Level, RowPlot, Series, Shape, Spot


def depth_plot(board: Board, proof: DepthProof, rows: tuple[RowDepth, ...]) -> RowPlot:
    """Return mean depth by row with its interval, the target line and the tolerance."""
    unit = MEASURES["depth"].unit(board.units)
    spots = {one.digs.row: _spot(one, unit) for one in rows}
    levels: tuple[Level, ...] = ()
    band: tuple[float, float] | None = None
    if proof.goal is not None:
        target = _size(proof.goal.target, unit)
        off = _size(proof.goal.tolerance, unit)
        levels, band = (Level(target, "target", limit=False),), (target - off, target + off)
    look = frozenset(one.digs.row for one in rows if falls_short(one))
    return RowPlot(
        tuple(board.planter.row_numbers),
        (Series("mean depth", Shape.RING, spots),),
        levels,
        unit_sign(unit),
        band,
        from_zero=False,
        attention=look,
    )


def falls_short(one: RowDepth) -> bool:
    """Return whether the mean or the share in tolerance falls short beyond doubt."""
    return Standing.SHORT in (one.digs.standing, one.digs.share_standing)


def _spot(one: RowDepth, unit: str) -> Spot:
    mean, interval = one.digs.mean, one.digs.interval
    value = _size(mean, unit)
    if interval is None:
        return Spot(value, value, value, falls_short(one))
    low, high = (_size(Q(end, mean.units), unit) for end in (interval.low, interval.high))
    return Spot(value, low, high, falls_short(one))


def _size(length: Quantity, unit: str) -> float:
    return float(length.to(unit).magnitude)


def depth_columns(units: Units) -> tuple[Column[RowDepth], ...]:
    """Return the columns of the table of digs."""
    return (
        Column("Row", lambda one: str(one.digs.row), number=True),
        Column("Digs", lambda one: str(one.digs.n), number=True),
        Column("Mean", lambda one: show(one.digs.mean, "depth", units), number=True),
        Column("SD", lambda one: _shown(one.digs.sd, units, sign=False), number=True),
        Column("95 %", lambda one: _span(one.digs.interval, one.digs.mean, units), number=True),
        Column("In tol.", _in_tolerance, number=True),
        Column("More", _needed, number=True),
        Column("Notch", lambda one: _or_dash(one.notch), number=True),
        Column("Go to", _go_to, number=True, loud=_moves),
        Column("Takes over", lambda one: taken_over(one.calibration, units), number=True),
        Column("Verdict", verdict_of, loud=falls_short),
    )


def verdict_of(one: RowDepth) -> str:
    """Say how a row stands: the mean, and the share in tolerance where a least one is set."""
    digs = one.digs
    if digs.share_standing is Standing.NO_LIMIT or digs.share_standing == digs.standing:
        return str(digs.standing)
    return f"mean {digs.standing}, share {digs.share_standing}"


def _moves(one: RowDepth) -> bool:
    return one.notch_to is not None and one.notch_to != one.notch


def _go_to(one: RowDepth) -> str:
    if one.notch_to is None or one.notch is None:
        return "–"
    change = one.notch_to - one.notch
    return f"{one.notch_to} ({change:+d})" if change else f"{one.notch_to}"


def _in_tolerance(one: RowDepth) -> str:
    share = one.digs.in_tolerance
    return "–" if share is None else percent(share, 0)


def _needed(one: RowDepth) -> str:
    needed = one.digs.digs_needed
    return "–" if needed is None else str(needed)


def _shown(length: Quantity | None, units: Units, *, sign: bool) -> str:
    return "–" if length is None else show(length, "depth", units, sign=sign)


def _span(interval: Interval | None, mean: Quantity, units: Units) -> str:
    if interval is None:
        return "–"
    low, high = (Q(end, mean.units) for end in (interval.low, interval.high))
    return f"{show(low, 'depth', units, sign=False)} to {show(high, 'depth', units, sign=False)}"


def _or_dash(value: int | None) -> str:
    return "–" if value is None else str(value)
