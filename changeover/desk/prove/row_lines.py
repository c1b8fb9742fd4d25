"""Digs of a row gathered from a proof and from earlier ones, and the line that they give it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from changeover.planter.scales import DepthScale
from changeover.quantities import Quantity, Units, show
from changeover.seed.depth_rows import named_rows
from changeover.seed.row_line import RowCalibration, RowDigs, calibrate_row

# A year: what was dug before is of another season, with other wear (from memory).
AS_LONG_AS = timedelta(days=365)


@dataclass(frozen=True)
class EarlierDigs:
    """Digs of one row at one notch, dug some days before."""

    row: int
    notch: int
    depths: Quantity
    days_before: int


def calibration_of(
    scale: DepthScale,
    row: int,
    dug: Mapping[int, Quantity],
    stands: int,
    earlier: Iterable[EarlierDigs],
    units: Units,
) -> RowCalibration:
    """Return what the digs of a row make of its place on the scale.

    ``dug`` holds the digs of the proof by notch, those at ``stands`` among them; ``earlier``
    those of other days, of any row. Raises Refusal for depths out of bounds.
    """
    others = [(notch, depths) for notch, depths in dug.items() if notch != stands]
    before = [one for one in earlier if one.row == row and 1 <= one.notch <= scale.count]
    days = len({0, *(one.days_before for one in before)})
    others += [(one.notch, one.depths) for one in before]
    return calibrate_row(scale, RowDigs(row, stands, dug[stands], others, days), units)


def taken_over(found: RowCalibration | None, units: Units) -> str:
    """Say in a word or two what is taken over: the row's own step with interval, or its offset."""
    if found is None:
        return "–"
    if found.half_width is None or found.step is None:
        return f"offset {show(found.offset, 'depth', units)}"
    step = show(found.step, "depth_step", units, sign=False)
    return f"step {step} ± {show(found.half_width, 'depth_step', units)}"


def calibration_words(found: Iterable[RowCalibration]) -> tuple[str, ...]:
    """Say what is taken over for which rows and why, rows of which the same is said together."""
    rows: dict[str, list[int]] = {}
    cautions: list[str] = []
    for one in found:
        rows.setdefault(one.why, []).append(one.row)
        cautions += one.cautions
    said = (f"{named_rows(named)}: {why[0].lower()}{why[1:]}" for why, named in rows.items())
    return (*said, *cautions)


def days_before(taken: str, day: date) -> int | None:
    """Return how many days before a day a proof was taken, None for later or over a year ago."""
    past = day - datetime.fromisoformat(taken).date()
    return past.days if timedelta(0) <= past <= AS_LONG_AS else None
