"""Looking up: the proposed settings for a lot and a field on one planter, with every reason."""

from changeover.desk.jobs import field_job
from changeover.desk.tables import crops
from changeover.planter.machine import Planter
from changeover.planter.setup import Setup
from changeover.quantities import Units
from changeover.seed.fields import FieldJob
from changeover.seed.lots import SeedLot
from changeover.seed.proposal import propose
from changeover.seed.reasons import Proposal
from changeover.store.opening import Store
from changeover.store.unit_of_work import UnitOfWork
from changeover.store.values import NextJob, Side


def propose_for(
    store: Store,
    planter_name: str,
    chosen: NextJob,
    units: Units = Units.US,
    *,
    lot: SeedLot | None = None,
) -> Proposal:
    """Return the proposal for a job that need not be saved; ``lot`` may be an unsaved lot too.

    Raises Refusal for an unknown planter, lot or field, or impossible inputs.
    """
    with store.read() as work:
        planter = work.planters.get(planter_name)
        as_found = work.cells.read(planter_name, Side.AS_FOUND)
        seed = lot if lot is not None else work.lots.get(chosen.lot)
        return proposal_of(work, planter, as_found, seed, field_job(work, chosen), units)


def proposal_of(
    work: UnitOfWork,
    planter: Planter,
    as_found: Setup,
    lot: SeedLot,
    job: FieldJob,
    units: Units,
) -> Proposal:
    """Return the proposal with all that this store knows. Raises Refusal."""
    return propose(
        planter,
        work.settings.all(),
        as_found,
        lot,
        job,
        crops(),
        work.parts.all(),
        work.shelf.all(),
        work.manual.all(),
        work.setups.records(),
        tuple(meter for meter in work.meters.all() if meter.planter == planter.name),
        units,
    )
