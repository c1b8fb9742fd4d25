"""Rows down or locked up: what the row spacing wanted asks of a split-row planter."""

from dataclasses import dataclass

from changeover.planter.machine import Planter
from changeover.planter.places import Place
from changeover.planter.settings import DOWN, LOCKED_UP, Setting, standard
from changeover.planter.setup import Cell, Setup, Value, working_rows, working_spacing
from changeover.quantities import Quantity, Units, show
from changeover.seed.reasons import Input, Proposed, Reason, Trust
from changeover.seed.trust_order import reasoned

RULE = "rows by the row spacing wanted"
SAME_WITHIN = 0.02  # row spacings closer than this share of each other are one (from memory)


@dataclass(frozen=True)
class RowPlan:
    """Which rows plant, how far apart, the cells that say so, and what cannot be met."""

    rows: tuple[int, ...]
    spacing: Quantity
    cells: dict[Cell, Proposed]
    warnings: tuple[str, ...] = ()


def plan_rows(planter: Planter, as_found: Setup, wanted: Quantity | None, units: Units) -> RowPlan:
    """Return the rows that plant for a row spacing wanted, None when any will do.

    Without a wanted spacing the rows stay as found; rows not known are down. A spacing that the
    planter does not have is said in a warning and left as found.
    """
    warnings: tuple[str, ...] = ()
    word, why = _lock_word(planter, wanted, units)
    if word is None and wanted is not None:
        warnings = (_cannot(planter, wanted, units),)
    cells = _cells(planter, as_found, standard("row_lock"), word, why, units)
    setup = Setup({cell: one.value for cell, one in cells.items() if one.value is not None})
    rows, spacing = working_rows(planter, setup), working_spacing(planter, setup)
    return RowPlan(rows, spacing, cells, warnings)


def _lock_word(planter: Planter, wanted: Quantity | None, units: Units) -> tuple[str | None, str]:
    if wanted is None:
        return None, "You asked for no row spacing: the rows stay as found."
    shown = show(wanted, "row_spacing", units)
    if planter.split_rows and _alike(wanted, planter.narrow_spacing):
        return DOWN, f"Rows {shown} apart: every row is down."
    if _alike(wanted, planter.row_spacing):
        return LOCKED_UP, f"Rows {shown} apart: the rows between the main rows are locked up."
    return None, f"Rows {shown} apart cannot be planted: the rows stay as found."


def _alike(one: Quantity, other: Quantity) -> bool:
    return bool(abs(one - other) <= SAME_WITHIN * other)


def _cells(
    planter: Planter, as_found: Setup, setting: Setting, word: str | None, why: str, units: Units
) -> dict[Cell, Proposed]:
    if not planter.split_rows:
        return {}
    narrow, wide = planter.narrow_spacing, planter.row_spacing
    offered = " or ".join(show(one, "row_spacing", units) for one in (narrow, wide))
    inputs = (Input("row spacings of the planter", offered),)
    reason = reasoned(RULE, why, "your field job", Trust.RECORD, inputs=inputs)
    main = reasoned(RULE, "A main row is always down.", "your planter", Trust.RECORD, inputs=inputs)
    cells = {}
    for row in planter.row_numbers:
        cell = Cell(setting.key, Place.of_row(row))
        between = row in planter.split_rows
        value = _value(as_found.get(cell), word) if between else DOWN
        cells[cell] = Proposed(cell, value, reason if between else main)
    return cells


def _value(found: Value | None, word: str | None) -> Value:
    return word or found or DOWN


def _cannot(planter: Planter, wanted: Quantity, units: Units) -> str:
    offered = show(planter.row_spacing, "row_spacing", units)
    if planter.split_rows:
        offered = f"{show(planter.narrow_spacing, 'row_spacing', units)} or {offered}"
    return (
        f"{planter.name} cannot plant rows {show(wanted, 'row_spacing', units)} apart: it has "
        f"{offered}; the rows stay as found."
    )


LOCKED_REASON: Reason = reasoned(
    "row locked up",
    "The row is locked up for this job: nothing to set.",
    "your field job",
    Trust.RECORD,
)
