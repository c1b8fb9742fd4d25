"""Planning a switch: difference, worklist, progress and kit of one planter in one view."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from changeover.desk.board import Board, board_of
from changeover.desk.jobs import field_job
from changeover.desk.labels import label_next
from changeover.desk.prove.proofs import KeptFinding
from changeover.desk.prove.summary import how_it_proved
from changeover.desk.prove.tasks import FINDING, with_findings
from changeover.desk.tables import switch_rules
from changeover.planter.setup import Setup
from changeover.quantities import Units
from changeover.seed.lots import SeedLot
from changeover.store.opening import Store
from changeover.store.season_values import FlushRecord
from changeover.store.unit_of_work import UnitOfWork
from changeover.store.values import NextJob
from changeover.switch.difference import Difference, difference
from changeover.switch.kit import kit
from changeover.switch.midway import start_of
from changeover.switch.own_tasks import with_own_tasks
from changeover.switch.progress import Progress, progress
from changeover.switch.standard_minutes import Minutes
from changeover.switch.tasks import Kit, Tick, Worklist
from changeover.switch.worklist import plan_worklist


@dataclass(frozen=True)
class WorkView:
    """The work of one switch: ``difference`` is what is still to do, ``whole`` all of it.

    ``board`` is what it was planned from, ``start`` the setup from which each cell goes to its
    target; ``ticks`` and ``progress`` how far it is; ``lots``
    those that the planter holds or is to hold, by number; ``findings`` must be acknowledged in
    words before it is signed off. ``proved`` says what passed, and
    ``flushes`` what was flushed, since the switch began.
    """

    board: Board
    start: Setup
    whole: Difference
    difference: Difference
    worklist: Worklist
    ticks: tuple[Tick, ...]
    progress: Progress
    kit: Kit
    lots: Mapping[str, SeedLot]
    findings: tuple[KeptFinding, ...] = ()
    proved: str = ""
    flushes: tuple[FlushRecord, ...] = ()

    @property
    def ready_to_sign(self) -> bool:
        """Whether all is ticked off and at its target; findings apart, which a reading closes."""
        tasks = [task for task in self.worklist.tasks if not task.key.startswith(FINDING)]
        done = bool(tasks) and all(self.progress.is_done(task.key) for task in tasks)
        return done and not self.difference.changes


def work_view(store: Store, planter_name: str, units: Units = Units.US) -> WorkView:
    """Return the work of a planter's open switch, or of its target alone when none is open."""
    with store.read() as work:
        return view_of(work, board_of(work, planter_name, units, proposal=False))


def work_view_for(
    store: Store, planter_name: str, chosen: NextJob, units: Units = Units.US
) -> WorkView:
    """Return the work that a job would take with all its proposals taken; nothing is saved.

    Raises Refusal for names that the store does not have.
    """
    from changeover.desk.look_up import proposal_of

    with store.read() as work:
        board = board_of(work, planter_name, units, proposal=False)
        lot, job = work.lots.get(chosen.lot), field_job(work, chosen)
        proposal = proposal_of(work, board.planter, board.as_found, lot, job, units)
        planned = replace(
            board,
            lot=lot,
            job=job,
            next_job=chosen,
            label_next=label_next(chosen, lot),
            proposal=proposal,
            before=board.as_found,
            target=board.target.with_values(proposal.values()),
        )
        return view_of(work, planned, ticks=())


def view_of(work: UnitOfWork, board: Board, ticks: tuple[Tick, ...] | None = None) -> WorkView:
    """Plan the work for a board within a unit of work that is already open."""
    first = board.before if board.before is not None else board.as_found
    before = start_of(first, board.as_found, board.target, board.settings)
    lots = {**lots_in(work, board.target), **lots_in(work, first), **lots_in(work, before)}
    worklist = plan_worklist(
        board.planter,
        board.settings,
        before,
        board.target,
        lots,
        board.lot,
        board.parts,
        work.times.all(),
        board.units,
        switch_rules(),
    )
    found: tuple[KeptFinding, ...] = ()
    proved = ""
    if ticks is None:
        name = board.planter.name
        found = work.findings.of(name)
        worklist = with_own_tasks(worklist, work.own_work.tasks(name), work.own_work.splits(name))
        minutes = Minutes.of(switch_rules().minutes, work.times.all())
        worklist = with_findings(worklist, board.planter, found, minutes)
        switch = work.switches.open(board.planter.name)
        ticks = switch.ticks if switch else ()
        if switch is not None and not found:
            proved = how_it_proved(work.proofs.of(name), switch.started, board.units)
    done = progress(worklist, ticks, board.as_found, board.settings)
    return WorkView(
        board=board,
        start=before,
        whole=difference(board.planter, board.settings, before, board.target),
        difference=difference(board.planter, board.settings, board.as_found, board.target),
        worklist=worklist,
        ticks=ticks,
        progress=done,
        kit=kit(done, board.parts, board.shelf),
        lots=lots if board.lot is None else {**lots, board.lot.number: board.lot},
        findings=tuple(one for one in found if one.bars_signing),
        proved=proved,
        flushes=_flushes(work, board),
    )


def _flushes(work: UnitOfWork, board: Board) -> tuple[FlushRecord, ...]:
    """Return what was flushed for the next lot since the switch began."""
    switch = work.switches.open(board.planter.name)
    if switch is None or board.lot is None:
        return ()
    mine = (board.planter.name, board.lot.number)
    made = (one for one in work.flushes.entered() if (one.planter, one.lot) == mine)
    return tuple(one for one in made if one.when >= switch.started)


def lots_in(work: UnitOfWork, setup: Setup) -> dict[str, SeedLot]:
    """Return the lots that a setup has in its tanks and that the store knows, by number."""
    numbers = {str(v) for cell, v in setup.values.items() if cell.setting == "seed"}
    return {lot.number: lot for lot in work.lots.all() if lot.number in numbers}
