"""Taking a proposal over: the lot, field and job, and the target, as one edit."""

from changeover.desk.board import Board
from changeover.desk.edits import ChooseNext, NextJob, SetCells, Several, Side, TakeProposal
from changeover.desk.plan_switch import WorkView
from changeover.planter.setup import Cell, Value
from changeover.quantities import Units
from changeover.seed.reasons import Proposal
from changeover.window.asking import Asking


def taking_over(board: Board, job: NextJob, proposal: Proposal, units: Units) -> Several:
    """Return the edit that makes a job the next one and its proposal the target.

    With another lot, targets that the proposal has no value for are emptied: they were meant for
    the lot before.
    """
    planter = board.planter.name
    edits: list[ChooseNext | SetCells | TakeProposal] = [
        ChooseNext(planter, job, before=board.next_job)
    ]
    left = leftovers(board, job, proposal)
    if left:
        emptied: dict[Cell, Value | None] = dict.fromkeys(left)
        edits.append(SetCells(planter, Side.TARGET, emptied, before=left))
    edits.append(TakeProposal(planter, units=units))
    return Several(tuple(edits), "Take over as target", f"Lot {job.lot} taken over as target")


def leftovers(board: Board, job: NextJob, proposal: Proposal) -> dict[Cell, Value | None]:
    """Return the targets of another lot that the proposal has no value for."""
    if board.next_job is None or board.next_job.lot == job.lot:
        return {}
    proposed = proposal.values()
    return {cell: value for cell, value in board.target.values.items() if cell not in proposed}


def half_done(view: WorkView, job: NextJob) -> int:
    """Return how many places are ticked off, where the job would be for another lot."""
    chosen = view.board.next_job
    return len(view.ticks) if chosen is not None and chosen.lot != job.lot else 0


def confirmed(view: WorkView, job: NextJob, asking: Asking) -> bool:
    """Ask whether to go on when another lot is chosen while a switch is half done."""
    done, chosen = half_done(view, job), view.board.next_job
    if not done or chosen is None:
        return True
    places = f"{done} place{'s are' if done > 1 else ' is'} ticked off"
    return asking.confirm(
        f"The switch of {view.board.planter.name} to lot {chosen.lot} is half done. "
        f"Go on to lot {job.lot}?",
        f"{places}; that stays, and the rows stay as they are now. The rest is planned anew.",
        f"Go on to {job.lot}",
    )
