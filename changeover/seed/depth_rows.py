"""Each row's own notch for the depth wanted, through the scale and what digs showed of the row."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from changeover.planter.places import Place
from changeover.planter.settings import Setting
from changeover.planter.setup import Cell
from changeover.quantities import MEASURES, Quantity, grouped, is_quantity, unit_sign
from changeover.seed.case import Case
from changeover.seed.depth import depth_wanted
from changeover.seed.reasons import Proposed, Reason
from changeover.seed.trust_order import NO_GROUND, Answer

Found = tuple[dict[Cell, Proposed], tuple[str, ...]]


@dataclass(frozen=True)
class _Scale:
    """A planter's depth scale as plain figures in one unit, with the words to show them."""

    first: float
    step: float
    count: int
    offsets: Mapping[int, float]
    unit: str
    digits: int

    @staticmethod
    def of(case: Case) -> "_Scale":
        scale, shown = case.planter.depth, MEASURES["depth"]
        unit = shown.unit(case.units)
        return _Scale(
            _in(scale.first, unit),
            _in(scale.step, unit),
            scale.count,
            {row: _in(offset, unit) for row, offset in scale.offsets.items()},
            unit,
            shown.digits(case.units),
        )

    def depth(self, notch: int, offset: float) -> float:
        return self.first + (notch - 1) * self.step + offset

    def notch(self, depth: float, offset: float) -> int | None:
        """Return the nearest notch, the deeper of two as near; None beyond the scale."""
        nearest = round((depth - self.first - offset) / self.step + 1.0 + 1e-9)
        return nearest if 1 <= nearest <= self.count else None

    def show(self, depth: float) -> str:
        return f"{grouped(depth, self.digits)} {unit_sign(self.unit)}"


def propose_depth(case: Case, setting: Setting) -> Found:
    """Return the notch of every row, and a sentence for the rows that cannot reach the depth.

    Rows whose scale does not reach get no value. Rows with the same notch and offset share a
    reason. A notch from the manual is the same on every row.
    """
    answer, scale = depth_wanted(case, setting), _Scale.of(case)
    if not is_quantity(answer.value):
        return _one_notch(case, setting, answer, scale)
    depth = _in(answer.value, scale.unit)
    shared: dict[float, tuple[int | None, Reason]] = {}
    cells: dict[Cell, Proposed] = {}
    for row in case.rows:
        offset = scale.offsets.get(row, 0.0)
        if offset not in shared:
            notch = scale.notch(depth, offset)
            shared[offset] = notch, _row_reason(scale, answer.reason, depth, offset, notch)
        cell = Cell(setting.key, Place.of_row(row))
        cells[cell] = Proposed(cell, *shared[offset], answer.low, answer.high)
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
    scale: _Scale, reason: Reason, depth: float, offset: float, notch: int | None
) -> Reason:
    if notch is None:
        low, high = scale.depth(1, offset), scale.depth(scale.count, offset)
        why = (
            f"{NO_GROUND} This row cannot plant {scale.show(depth)} deep: its notches reach "
            f"{scale.show(low)} to {scale.show(high)}."
        )
        return replace(reason, why=why, rule="depth out of reach")
    there = scale.show(scale.depth(notch, offset))
    how = f"{reason.how}. Notch {notch} of {scale.count} gives {there}"
    how += f" ({scale.show(scale.step)} a notch)"
    if offset:
        way = "deeper" if offset > 0 else "shallower"
        how += f"; this row plants {scale.show(abs(offset))} {way} than its scale says"
    return replace(reason, how=how)


def _unreached(scale: _Scale, depth: float, found: Iterable[Proposed]) -> tuple[str, ...]:
    rows = [one.cell.place.row or 0 for one in found if one.value is None]
    if not rows:
        return ()
    offset = scale.offsets.get(rows[0], 0.0)
    reach = [scale.show(scale.depth(notch, offset)) for notch in (1, scale.count)]
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
    return float(length.to(unit).magnitude)
