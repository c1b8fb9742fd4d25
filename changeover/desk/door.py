"""The one door: every change of a store is an edit that goes through here, in one transaction."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from changeover.desk import edit_proofs, edit_rows, edit_stock, edit_switch
from changeover.desk.changed import Changed
from changeover.desk.edits import (
    AbandonSwitch,
    ChooseNext,
    CloseSwitch,
    Edit,
    Put,
    PutOwnWork,
    ReopenSwitch,
    RestoreSwitch,
    SaveSetup,
    SetCells,
    Several,
    TakeProposal,
    TickTask,
    WithdrawSetup,
)
from changeover.desk.effects import Effect
from changeover.desk.proof_edits import MakeTask, PutProof, WithdrawProof
from changeover.store.opening import Store
from changeover.store.refusals import Busy
from changeover.store.unit_of_work import UnitOfWork

_CARRY: Mapping[type, Callable[[UnitOfWork, Any], Effect]] = {
    SetCells: edit_rows.set_cells,
    TakeProposal: edit_rows.take_proposal,
    ChooseNext: edit_switch.choose_next,
    AbandonSwitch: edit_switch.abandon,
    RestoreSwitch: edit_switch.restore,
    TickTask: edit_switch.tick,
    PutOwnWork: edit_switch.put_own_work,
    CloseSwitch: edit_switch.close,
    ReopenSwitch: edit_switch.reopen,
    SaveSetup: edit_switch.save_setup,
    WithdrawSetup: edit_switch.withdraw_setup,
    PutProof: edit_proofs.put,
    WithdrawProof: edit_proofs.withdraw,
    MakeTask: edit_proofs.make_task,
}


@dataclass(frozen=True)
class Outcome:
    """What an edit did: the kinds of data that changed, its inverse, and its history entry.

    ``entry`` is 0 when everything was as wanted already.
    """

    changed: frozenset[Changed]
    inverse: Edit
    entry: int


def apply(store: Store, edit: Edit, who: str) -> Outcome:
    """Carry an edit out in one transaction with one history entry.

    Raises Conflict when somebody else changed the same thing meanwhile, Refusal when the edit
    is not possible; then nothing is changed.
    """
    try:
        return _once(store, edit, who)
    except Busy:  # another writer came in between: look again at what is there now
        return _once(store, edit, who)


def _once(store: Store, edit: Edit, who: str) -> Outcome:
    with store.work(who, edit.why or edit.says) as work:
        effect = _carry(work, edit)
    return Outcome(effect.changed, effect.inverse, work.entry)


def _carry(work: UnitOfWork, edit: Edit) -> Effect:
    if isinstance(edit, Several):
        return _several(work, edit)
    if isinstance(edit, Put):
        return edit_stock.carry(work, edit)
    return _CARRY[type(edit)](work, edit)


def _several(work: UnitOfWork, edit: Several) -> Effect:
    """Carry edits out one after the other; the inverse takes them back in reverse."""
    effects = [_carry(work, one) for one in edit.edits]
    changed = frozenset[Changed]().union(*(one.changed for one in effects))
    back = tuple(one.inverse for one in reversed(effects))
    return Effect(changed, Several(back, edit.says, edit.why))
