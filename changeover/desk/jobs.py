"""From a job as chosen, by names, to the field job that the look-up reckons with."""

from changeover.quantities import Q
from changeover.seed.fields import Field, FieldJob
from changeover.store.unit_of_work import UnitOfWork
from changeover.store.values import NextJob

NO_FIELD = "a field not yet chosen"


def field_job(work: UnitOfWork, chosen: NextJob) -> FieldJob:
    """Return the field job for a choice.

    Without a field the job stands on one acre of loam, so that figures by the acre can be
    read off it. Raises Refusal for a field that the store does not have or impossible inputs.
    """
    return job_in(work.fields.get(chosen.field) if chosen.field else None, chosen)


def job_in(field: Field | None, chosen: NextJob) -> FieldJob:
    """Return the field job for a choice in a field that is given. Raises Refusal."""
    return FieldJob(
        field=field or Field(NO_FIELD, Q(1.0, "acre")),
        lot=chosen.lot,
        speed=chosen.speed,
        seed_rate=chosen.seed_rate,
        stand=chosen.stand,
        emergence=chosen.emergence,
        moisture=chosen.moisture,
        tillage=chosen.tillage,
        soil_temperature=chosen.soil_temperature,
        row_spacing=chosen.row_spacing,
        first_day=chosen.first_day,
        last_day=chosen.last_day,
        area=chosen.area,
        overlap=chosen.overlap,
        reserve=chosen.reserve,
        seed_at_both_ends=chosen.seed_at_both_ends,
        other_lots=chosen.other_lots,
        meter_error=chosen.meter_error,
    )
