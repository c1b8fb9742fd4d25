"""Fields and the season's field jobs: lists, and the edits that remove one."""

from changeover.desk.edits import PutField, PutJob
from changeover.seed.fields import Field
from changeover.store.opening import Store
from changeover.store.values import PlannedJob


def fields(store: Store) -> tuple[Field, ...]:
    """Return every field, sorted by name."""
    with store.read() as work:
        return work.fields.all()


def field(store: Store, name: str) -> Field:
    """Return one field. Raises Refusal when there is none of that name."""
    with store.read() as work:
        return work.fields.get(name)


def remove_field(store: Store, name: str) -> PutField:
    """Return the edit that removes a field. Raises Refusal when there is none of that name."""
    return PutField(None, before=field(store, name))


def jobs(store: Store) -> tuple[PlannedJob, ...]:
    """Return the field jobs of the season, sorted by name."""
    with store.read() as work:
        return work.jobs.all()


def remove_job(store: Store, name: str) -> PutJob:
    """Return the edit that removes a job. Raises Refusal when there is none of that name."""
    with store.read() as work:
        return PutJob(None, before=work.jobs.get(name))
