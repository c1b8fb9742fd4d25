"""Simple orders of a season: jobs one by one, each to the planter that is done with it first."""

from collections.abc import Iterable, Iterator

from changeover.switch.season.numbers import Numbers, Sequences


def as_entered(numbers: Numbers) -> Sequences:
    """Return the jobs in the order in which they were entered."""
    return one_by_one(numbers, numbers.jobs)


def nearest_due(numbers: Numbers) -> Sequences:
    """Return the jobs by due date, then by the day on which they can begin; no due date last."""

    def key(job: int) -> tuple[bool, int, int]:
        due = numbers.due[job]
        return (due is None, due or 0, numbers.release[job])

    return one_by_one(numbers, sorted(numbers.jobs, key=key))


def one_by_one(numbers: Numbers, order: Iterable[int]) -> Sequences:
    """Give each job in turn to the planter that is done with it first.

    Jobs fixed at a minute are there from the beginning; a job goes before them where that does
    not push them.
    """
    timed = sorted((start, job) for job, start in enumerate(numbers.start) if start is not None)
    sequences: Sequences = tuple(
        tuple(job for _, job in timed if numbers.minutes[planter][job])
        for planter in numbers.planters
    )
    placed = {job for _, job in timed}
    for job in order:
        if job not in placed:
            choices = _appended(numbers, sequences, job)
            sequences = min(choices, key=lambda each: _ended(numbers, each, job))
    return sequences


def _appended(numbers: Numbers, sequences: Sequences, job: int) -> Iterator[Sequences]:
    """Yield the sequences with a job at the end, or before fixed jobs at the end."""
    for planter in numbers.able(job):
        own = sequences[planter]
        at = len(own)
        while True:
            new = (*own[:at], job, *own[at:])
            yield (*sequences[:planter], new, *sequences[planter + 1 :])
            if at == 0 or numbers.start[own[at - 1]] is None:
                break
            at -= 1


def _ended(numbers: Numbers, sequences: Sequences, job: int) -> tuple[int, int]:
    """Return how far fixed jobs are pushed, and when a job ends."""
    end = 0
    for row in numbers.placed(sequences):
        for placed in row:
            if placed.job == job:
                end = placed.end
    return numbers.cost(sequences).broken, end
