"""Looking up: the proposed settings for a lot and a field on one planter, with every reason."""

from dataclasses import dataclass

from changeover.desk.bench_known import bench_seen
from changeover.desk.jobs import field_job, job_in
from changeover.desk.tables import crops
from changeover.planter.machine import Planter
from changeover.planter.parts import Meter, Part, ShelfCount
from changeover.planter.settings import Setting
from changeover.planter.setup import Setup
from changeover.quantities import Refusal, Units
from changeover.seed.bench_run import BenchSeen
from changeover.seed.fields import Field, FieldJob
from changeover.seed.lots import SeedLot
from changeover.seed.manual import ManualValue, ProvedSetup
from changeover.seed.proposal import propose
from changeover.seed.reasons import Proposal
from changeover.store.opening import Store
from changeover.store.unit_of_work import UnitOfWork
from changeover.store.values import NextJob, Side


@dataclass(frozen=True)
class Known:
    """All that a store knows for looking up on one planter, read once for many look-ups."""

    planter: Planter
    settings: tuple[Setting, ...]
    as_found: Setup
    lots: tuple[SeedLot, ...]
    fields: tuple[Field, ...]
    parts: tuple[Part, ...]
    shelf: tuple[ShelfCount, ...]
    manual: tuple[ManualValue, ...]
    records: tuple[ProvedSetup, ...]
    meters: tuple[Meter, ...]
    bench: tuple[BenchSeen, ...] = ()

    def lot(self, number: str) -> SeedLot:
        """Return a lot by its number. Raises Refusal when there is none."""
        for lot in self.lots:
            if lot.number == number:
                return lot
        raise Refusal(f"There is no lot “{number}” in this store; choose one of the list.")

    def job(self, chosen: NextJob) -> FieldJob:
        """Return the field job for a choice. Raises Refusal."""
        fields = {field.name: field for field in self.fields}
        if chosen.field is not None and chosen.field not in fields:
            raise Refusal(f"There is no field “{chosen.field}” in this store; choose another.")
        return job_in(fields.get(chosen.field or ""), chosen)

    def propose(self, chosen: NextJob, units: Units = Units.US) -> Proposal:
        """Return the proposal for a job that need not be saved. Raises Refusal."""
        job = self.job(chosen)
        return propose(
            self.planter,
            self.settings,
            self.as_found,
            self.lot(chosen.lot),
            job,
            crops(),
            self.parts,
            self.shelf,
            self.manual,
            self.records,
            self.meters,
            units,
            other_lots={place: self.lot(number) for place, number in job.other_lots},
            bench=self.bench,
        )


def read_known(store: Store, planter_name: str) -> Known:
    """Read what a look-up on a planter needs. Raises Refusal for an unknown planter."""
    with store.read() as work:
        planter = work.planters.get(planter_name)
        return Known(
            planter,
            work.settings.all(),
            work.cells.read(planter_name, Side.AS_FOUND),
            work.lots.all(),
            work.fields.all(),
            work.parts.all(),
            work.shelf.all(),
            work.manual.all(),
            work.setups.records(),
            tuple(meter for meter in work.meters.all() if meter.planter == planter_name),
            bench_seen(work, planter),
        )


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
        other_lots={place: work.lots.get(number) for place, number in job.other_lots},
        bench=bench_seen(work, planter),
    )
