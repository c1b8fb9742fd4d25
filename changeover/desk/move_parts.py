"""Moving parts between shelf and planter when work on them is ticked off or taken back."""

from collections.abc import Mapping

from changeover.desk.edits import TickTask
from changeover.planter.parts import Condition
from changeover.planter.settings import Kind
from changeover.planter.setup import Cell, Value
from changeover.store.unit_of_work import UnitOfWork
from changeover.switch.kit import COMES_BACK_AS
from changeover.switch.shelf_moves import LAID_OUT, TAKEN_BACK, ShelfInHand, Swap, make_swap

_Mounted = Mapping[Cell, tuple[str, Condition | None]]


def move_parts(
    work: UnitOfWork,
    edit: TickTask,
    since: str,
    old: Mapping[Cell, Value | None],
    new: Mapping[Cell, Value | None],
) -> dict[Cell, Swap]:
    """Move the parts of the cells that a tick changed from ``old`` to ``new``; one swap a cell.

    Ticked off: the new part leaves the shelf, good ones first, and the old one comes back to be
    inspected. Where the shelf has none its counts stay, for the part was evidently there.
    Taken back: each returns to what it was; a part that no tick of the switch since ``since``
    mounted moves nothing. Codes that are no kind of part of the shop move nothing either.
    """
    kinds = {setting.key for setting in work.settings.all() if setting.kind is Kind.PART}
    cells = [cell for cell in old if cell.setting in kinds]
    if not cells:
        return {}
    shelf = ShelfInHand(work.shelf.all(), (part.code for part in work.parts.all()))
    asked = edit.done or edit.swaps is not None
    mounted = {} if asked else work.switches.part_moves.mounted_by_tick(edit.planter, since)
    order = LAID_OUT if edit.done else TAKEN_BACK
    swaps = {
        cell: make_swap(shelf, wanted, order)
        for cell in cells
        if (wanted := _wanted(edit, mounted, cell, _code(old[cell]), _code(new[cell])))
        and shelf.kept & {wanted.off, wanted.on}
    }
    for value, before in shelf.changes():
        work.shelf.put(value, before)
    work.switches.part_moves.note(edit.planter, swaps, shelf.kept)
    return swaps


def _wanted(
    edit: TickTask, mounted: _Mounted, cell: Cell, off: str | None, on: str | None
) -> Swap | None:
    """Return where the parts of a cell are to come from and go, None when they do not move."""
    if edit.swaps is not None:
        swap = edit.swaps.get(cell)
        return swap if swap is not None and (swap.off, swap.on) == (off, on) else None
    if edit.done:
        return Swap(off, COMES_BACK_AS, on)
    part, condition = mounted.get(cell, (None, None))
    return Swap(off, condition, on) if part is not None and part == off else None


def _code(value: Value | None) -> str | None:
    return None if value is None else str(value)
