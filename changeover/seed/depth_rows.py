"""Each row's own notch for the depth wanted, through the scale and what digs showed of the row."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import isfinite

from changeover.planter.places import Place
from changeover.planter.scales import DepthScale, DugLine, step_text
from changeover.planter.settings import Setting
from changeover.planter.setup import Cell
from changeover.quantities import (
    MEASURES,
    Quantity,
    Units,
    grouped,
    how_many,
    is_quantity,
    show,
    unit_of,
    unit_sign,
)
from changeover.seed.case import Case
from changeover.seed.depth import depth_wanted
from changeover.seed.reasons import Evidence, Proposed, Reason, Trust
from changeover.seed.row_line import line_of_digs
from changeover.seed.trust_order import NO_GROUND, Answer

Found = tuple[dict[Cell, Proposed], tuple[str, ...]]


@dataclass(frozen=True)
class _RowLine:
    """The notches of some rows as plain figures; ``says`` tells of a calibration of their own."""

    first: float
    step: float
    says: str = ""
    dug: tuple[float, ...] = ()

    def depth(self, notch: int) -> float:
        return self.first + (notch - 1) * self.step

    def notch(self, depth: float, count: int) -> int | None:
        """Return the nearest notch, the deeper of two as near; None beyond the scale."""
        nearest = round((depth - self.first) / self.step + 1.0 + 1e-9)
        return nearest if 1 <= nearest <= count else None


@dataclass(frozen=True)
class _Scale:
    """A planter's depth scale in the unit that is shown, with the words to show its depths."""

    scale: DepthScale
    units: Units
    unit: str
    digits: int
    common: _RowLine

    @staticmethod
    def of(case: Case) -> "_Scale":
        scale, shown = case.planter.depth, MEASURES["depth"]
        unit = shown.unit(case.units)
        common = _RowLine(_in(scale.first, unit), _in(scale.step, unit))
        return _Scale(scale, case.units, unit, shown.digits(case.units), common)

    @property
    def count(self) -> int:
        return self.scale.count

    def line(self, row: int) -> _RowLine:
        """Return the line of a row: its own where it was calibrated, else that of the scale."""
        if row not in self.scale.offsets:
            return self.common
        first = self.common.first + _in(self.scale.offsets[row], self.unit)
        step, says = _in(self.scale.step_of(row), self.unit), own_words(self.scale, row, self.units)
        return _RowLine(first, step, says, self._dug(row))

    def _dug(self, row: int) -> tuple[float, ...]:
        """Return what tells the interval of a row: digs, their middle and squares, the spread."""
        dug = self.scale.digs.get(row)
        if dug is None or dug.spread is None:
            return ()
        return dug.digs, dug.middle, dug.squares, _in(dug.spread, self.unit)

    def show(self, depth: float) -> str:
        return f"{grouped(depth, self.digits)} {unit_sign(self.unit)}"


def propose_depth(case: Case, setting: Setting) -> Found:
    """Return the notch of every row, and a sentence for the rows that cannot reach the depth.

    Rows whose scale does not reach get no value. Rows with the same line share a reason. A notch
    from the manual is the same on every row.
    """
    answer, scale = depth_wanted(case, setting), _Scale.of(case)
    if not is_quantity(answer.value):
        return _one_notch(case, setting, answer, scale)
    depth = _in(answer.value, scale.unit)
    shared: dict[_RowLine, tuple[int | None, Reason]] = {}
    cells: dict[Cell, Proposed] = {}
    for row in case.rows:
        line = scale.line(row)
        if line not in shared:
            notch = line.notch(depth, scale.count)
            shared[line] = notch, _row_reason(scale, line, answer.reason, depth, notch)
        cell = Cell(setting.key, Place.of_row(row))
        cells[cell] = Proposed(cell, *shared[line], answer.low, answer.high)
    return cells, _unreached(scale, depth, cells.values())


def _one_notch(case: Case, setting: Setting, answer: Answer, scale: _Scale) -> Found:
    warnings: tuple[str, ...] = ()
    value, reason = answer.value, answer.reason
    if isinstance(value, int) and not 1 <= value <= scale.count:
        says = f"Depth: notch {value} does not exist; the planter has 1 to {scale.count}."
        value, warnings = None, (says,)
        reason = replace(reason, why=f"{NO_GROUND} {says}")
    places = [Cell(setting.key, Place.of_row(row)) for row in case.rows]
    return {cell: Proposed(cell, value, reason) for cell in places}, warnings


def _row_reason(
    scale: _Scale, line: _RowLine, reason: Reason, depth: float, notch: int | None
) -> Reason:
    if notch is None:
        low, high = scale.show(line.depth(1)), scale.show(line.depth(scale.count))
        why = (
            f"{NO_GROUND} This row cannot plant {scale.show(depth)} deep: its notches reach "
            f"{low} to {high}."
        )
        return replace(reason, why=why, rule="depth out of reach")
    how = f"{reason.how}. Notch {notch} of {scale.count} gives {scale.show(line.depth(notch))}"
    how += _interval_words(scale, line, notch)
    if not line.says:
        return replace(reason, how=f"{how} ({step_text(scale.scale.step, scale.units)} a notch)")
    source = f"{reason.source}; the row’s notch: your record"
    return replace(
        reason,
        how=f"{how}; {line.says}",
        source=source,
        evidence=_with_record(reason.evidence, f"the row’s notch: {line.says}"),
    )


def own_words(scale: DepthScale, row: int, units: Units) -> str:
    """Say how a row's own calibration differs from the scale, and what it rests on."""
    offset, step = scale.offsets[row], scale.steps.get(row)
    way = "deeper" if offset.magnitude > 0 else "shallower"
    size: Quantity = offset if offset.magnitude > 0 else -1 * offset
    by = f"{show(size, 'depth', units)} {way}" if offset.magnitude else ""
    dug = scale.digs.get(row)
    whence = f", by {how_many(dug.digs, 'dig')} in your record" if dug else ""
    if step is not None:
        at_first = f", {by} at notch 1" if by else ""
        own = f"this row’s own line, {step_text(step, units)} a notch{at_first}"
        return f"{own}{whence or ', as you entered it'}"
    if not by:
        return f"this row plants as its scale says{whence}" if dug else ""
    return f"this row plants {by} than its scale says{whence}"


def _interval_words(scale: _Scale, line: _RowLine, notch: int) -> str:
    if not line.dug:
        return ""
    digs, middle, squares, spread = line.dug
    dug = DugLine(int(digs), middle, squares)
    half = line_of_digs(line.first, line.step, dug, spread).half_width(notch)
    return f" ± {scale.show(half)} (95 %)" if isfinite(half) else ""


def _with_record(evidence: Iterable[Evidence], says: str) -> tuple[Evidence, ...]:
    """Return the rungs with words added to your record's, which is used for the notch."""
    return tuple(
        replace(rung, says=f"{rung.says}; {says}") if rung.trust is Trust.RECORD else rung
        for rung in evidence
    )


def _unreached(scale: _Scale, depth: float, found: Iterable[Proposed]) -> tuple[str, ...]:
    rows = [one.cell.place.row or 0 for one in found if one.value is None]
    if not rows:
        return ()
    line = scale.line(rows[0])
    reach = [scale.show(line.depth(notch)) for notch in (1, scale.count)]
    says = (
        f"{named_rows(rows)} cannot plant {scale.show(depth)} deep: the {scale.count} notches "
        f"reach {reach[0]} to {reach[1]}; choose another depth or mend the planter's depth scale."
    )
    return (says,)


def named_rows(rows: Iterable[int]) -> str:
    """Return rows in words, runs drawn together: ``Rows 1 to 4, 7``."""
    runs: list[list[int]] = []
    for row in sorted(rows):
        if runs and row == runs[-1][1] + 1:
            runs[-1][1] = row
        else:
            runs.append([row, row])
    words = [f"{low}" if low == high else f"{low} to {high}" for low, high in runs]
    one = len(runs) == 1 and runs[0][0] == runs[0][1]
    return f"{'Row' if one else 'Rows'} {', '.join(words)}"


def _in(length: Quantity, unit: str) -> float:
    return float(length.to(unit_of(unit)).magnitude)
