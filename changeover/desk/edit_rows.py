"""Editing rows: values of cells as found or wanted, typed, pasted or taken from the proposal."""

from collections.abc import Mapping

from changeover.desk.board import Board, board_of
from changeover.desk.changed import Changed
from changeover.desk.edits import SetCells, TakeProposal
from changeover.desk.effects import Effect, effect
from changeover.planter.entry import check_value, index_of, show_value
from changeover.planter.known_parts import known_code
from changeover.planter.machine import Planter
from changeover.planter.settings import Kind
from changeover.planter.setup import Cell, Value
from changeover.quantities import Refusal, Units, is_quantity
from changeover.store.cells import Words
from changeover.store.journal import in_words
from changeover.store.unit_of_work import UnitOfWork
from changeover.store.values import Side

CHANGES = {Side.AS_FOUND: Changed.AS_FOUND, Side.TARGET: Changed.TARGET}


def set_cells(work: UnitOfWork, edit: SetCells) -> Effect:
    """Set cells. Raises Refusal for a value that the planter cannot have, Conflict."""
    check_cells(work, work.planters.get(edit.planter), edit.side, edit.values)
    if not edit.restoring:
        refuse_unknown_parts(work, edit.values)
    words = words_of(work, edit.planter)
    old = work.cells.set(edit.planter, edit.side, edit.values, edit.before, words)
    return effect(_back(edit.planter, edit.side, edit.values, old), CHANGES[edit.side])


def take_proposal(work: UnitOfWork, edit: TakeProposal) -> Effect:
    """Write proposed values into the target. Raises Refusal when no lot is chosen."""
    board = board_of(work, edit.planter, edit.units)
    if board.proposal is None:
        raise Refusal(f"{edit.planter}: no next lot is chosen; choose one first.")
    own = {setting.key for setting in board.settings if setting.record_only}
    values: dict[Cell, Value | None] = {
        cell: value
        for cell, value in board.proposal.values().items()
        if cell.setting not in own and (edit.cells is None or cell in edit.cells)
    }
    check_cells(work, board.planter, Side.TARGET, values)
    refuse_unknown_parts(work, values)
    values = {c: v for c, v in values.items() if not _looks_the_same(board, c, v)}
    old = work.cells.set(edit.planter, Side.TARGET, values, words=words_of(work, edit.planter))
    return effect(_back(edit.planter, Side.TARGET, values, old), Changed.TARGET)


def _looks_the_same(board: Board, cell: Cell, value: Value | None) -> bool:
    """Say whether the target shows just this quantity already, in either system of units."""
    standing = board.target.get(cell)
    if not is_quantity(standing) or not is_quantity(value):
        return False
    setting = next(one for one in board.settings if one.key == cell.setting)
    return all(
        show_value(setting, board.planter, cell.place, standing, units)
        == show_value(setting, board.planter, cell.place, value, units)
        for units in Units
    )


def check_cells(
    work: UnitOfWork, planter: Planter, side: Side, values: Mapping[Cell, Value | None]
) -> None:
    """Refuse cells that the planter does not have and values that it cannot have."""
    settings = {setting.key: setting for setting in work.settings.all()}
    places = {key: frozenset(planter.places(one.scope)) for key, one in settings.items()}
    for cell, value in values.items():
        setting = settings.get(cell.setting)
        if setting is None:
            raise Refusal(f"There is no setting “{cell.setting}” in this store; add it first.")
        if value is None:
            continue
        if cell.place not in places[cell.setting]:
            raise Refusal(f"{planter.name} has no {cell.place.label} for {setting.name}.")
        if side is Side.TARGET and setting.record_only:
            raise Refusal(f"{setting.name} is a record of what is there; it cannot be a target.")
        check_value(setting, planter, cell.place, value)


def refuse_unknown_parts(work: UnitOfWork, values: Mapping[Cell, Value | None]) -> None:
    """Refuse the code of a part that is not entered in the store, or is of another sort."""
    sorts = {one.key: one for one in work.settings.all() if one.kind is Kind.PART}
    mounted = {
        (cell.setting, str(value)): cell
        for cell, value in values.items()
        if cell.setting in sorts and value is not None
    }
    parts = work.parts.all() if mounted else ()
    for (key, code), cell in mounted.items():
        setting = sorts[key]
        known = known_code(
            parts, setting.part_sort or "", code, f"{setting.name}, {cell.place.label}"
        )
        if known != code:
            raise Refusal(f"{setting.name}, {cell.place.label}: write “{known}” for “{code}”.")


def words_of(work: UnitOfWork, planter_name: str) -> Words:
    """Return how the values of a planter are said in its history: positions by their names."""
    planter = work.planters.get(planter_name)
    settings = {setting.key: setting for setting in work.settings.all()}

    def words(cell: Cell, value: Value | None) -> str:
        setting = settings.get(cell.setting)
        if value is None or setting is None or setting.kind is not Kind.INDEX:
            return in_words(value)
        index = index_of(setting, planter)
        number = int(value)
        if index is None:
            return f"notch {number}"
        return index.name(number) if 1 <= number <= len(index) else str(number)

    return words


def _back(
    planter: str,
    side: Side,
    values: Mapping[Cell, Value | None],
    old: Mapping[Cell, Value | None],
) -> SetCells:
    before = {cell: values[cell] for cell in old}
    return SetCells(planter, side, values=old, before=before, restoring=True)
