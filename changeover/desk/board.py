"""The board: all that is to be seen of one planter, read in one go as a frozen value."""

from dataclasses import dataclass

from changeover.desk.jobs import field_job
from changeover.desk.labels import label_next, label_now
from changeover.planter.machine import Planter
from changeover.planter.parts import Meter, Part, ShelfCount
from changeover.planter.settings import Setting
from changeover.planter.setup import Setup
from changeover.quantities import Units
from changeover.seed.fields import FieldJob
from changeover.seed.lots import SeedLot
from changeover.seed.reasons import Proposal
from changeover.store.opening import Store
from changeover.store.unit_of_work import UnitOfWork
from changeover.store.values import NextJob, Side


@dataclass(frozen=True)
class Board:
    """One planter with its settings as found and wanted, what comes next, and what goes with it.

    ``settings`` holds all of them in the user's order, hidden ones too; ``before`` the as-found
    setup when the open switch began, None when none is open; ``next_job`` the inputs as chosen,
    ``job`` the same with its field; ``proposal`` is None when no lot is chosen or it was not
    asked for. ``demo`` says that all names in this store are invented; ``findings`` counts the
    proofs' findings that are open and work to do.
    """

    planter: Planter
    settings: tuple[Setting, ...]
    as_found: Setup
    target: Setup
    before: Setup | None
    lot: SeedLot | None
    job: FieldJob | None
    next_job: NextJob | None
    label_now: str
    label_next: str
    proposal: Proposal | None
    meters: tuple[Meter, ...]
    parts: tuple[Part, ...]
    shelf: tuple[ShelfCount, ...]
    units: Units
    demo: bool
    findings: int = 0


def read_board(
    store: Store, planter_name: str, units: Units = Units.US, *, proposal: bool = True
) -> Board:
    """Read everything about one planter; ``proposal`` False leaves the look-up out, for speed.

    Raises Refusal when the store has no planter of that name.
    """
    with store.read() as work:
        return board_of(work, planter_name, units, proposal=proposal)


def board_of(work: UnitOfWork, planter_name: str, units: Units, *, proposal: bool = True) -> Board:
    """Read the board within a unit of work that is already open. Raises Refusal."""
    planter = work.planters.get(planter_name)
    switch = work.switches.open(planter_name)
    chosen = switch.job if switch else None
    lot = work.lots.get(chosen.lot) if chosen else None
    job = field_job(work, chosen) if chosen else None
    as_found = work.cells.read(planter_name, Side.AS_FOUND)
    return Board(
        planter=planter,
        settings=work.settings.all(),
        as_found=as_found,
        target=work.cells.read(planter_name, Side.TARGET),
        before=switch.before if switch else None,
        lot=lot,
        job=job,
        next_job=chosen,
        label_now=label_now(work, planter_name, as_found),
        label_next=label_next(chosen, lot),
        proposal=_proposal(work, planter, as_found, lot, job, units) if proposal else None,
        meters=tuple(m for m in work.meters.all() if m.planter == planter_name),
        parts=work.parts.all(),
        shelf=work.shelf.all(),
        units=units,
        demo=work.demo,
        findings=sum(one.bars_signing for one in work.findings.of(planter_name)),
    )


def _proposal(
    work: UnitOfWork,
    planter: Planter,
    as_found: Setup,
    lot: SeedLot | None,
    job: FieldJob | None,
    units: Units,
) -> Proposal | None:
    if lot is None or job is None:
        return None
    from changeover.desk.look_up import proposal_of

    return proposal_of(work, planter, as_found, lot, job, units)
