"""Jobs of the season that a person has fixed on a planter, and on a day where one is given."""

from datetime import date

from changeover.desk.shop_edits import PutFixing
from changeover.quantities import Refusal
from changeover.store.opening import Store
from changeover.store.season_values import Fixing


def fixings(store: Store) -> tuple[Fixing, ...]:
    """Return the jobs that are fixed."""
    with store.read() as work:
        return work.fixings.all()


def fix_job(store: Store, job: str, planter: str, day: date | None = None) -> PutFixing:
    """Return the edit that fixes a job on a planter, and on a day where one is given.

    Raises Refusal when the job is meant for another planter.
    """
    with store.read() as work:
        wanted, before = work.jobs.get(job), work.fixings.find((job,))
    if wanted.planter not in (None, planter):
        raise Refusal(
            f"Job {job} is meant for {wanted.planter}; change the job to put it on {planter}."
        )
    return PutFixing(Fixing(job, planter, day), before=before)


def let_go(store: Store, job: str) -> PutFixing:
    """Return the edit that lets a fixed job go. Raises Refusal when it is not fixed."""
    with store.read() as work:
        return PutFixing(None, before=work.fixings.get(job))
