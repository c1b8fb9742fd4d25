"""A bound on the cost of lateness that no plan of a season beats."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from changeover.switch.season.numbers import Numbers

if TYPE_CHECKING:
    from ortools.sat.python import cp_model


def late_model(numbers: Numbers, last_day: int) -> "cp_model.CpModel":
    """Return a model whose least value is a bound on the cost of lateness in cents.

    It leaves the order of the jobs out and keeps this: what a planter has done by the end of a
    day takes no more than its minutes until then, the least move to each job and the least
    switch into each kind of setup included. Days after ``last_day`` cost nothing.
    """
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    tight = [job for job in numbers.jobs if numbers.due[job] is not None and numbers.cents[job]]
    done = {
        (job, planter, day): model.new_bool_var(f"{job} done on {planter} by {day}")
        for job in tight
        for planter in numbers.able(job)
        for day in range(numbers.due[job] or 0, last_day + 1)
    }
    costs: list[cp_model.LinearExprT] = []
    for job in tight:
        for day in range(numbers.due[job] or 0, last_day + 1):
            somewhere = [done[job, planter, day] for planter in numbers.able(job)]
            model.add_at_most_one(somewhere)
            costs.append(numbers.cents[job] * (1 - sum(somewhere)))
    _stay_done(model, numbers, done)
    for planter in numbers.planters:
        kinds = setup_kinds(numbers, planter)
        for day in range(last_day + 1):
            by_day = {job: done[job, planter, day] for job in tight if (job, planter, day) in done}
            if by_day:
                _fit(model, numbers, planter, day, by_day, kinds)
    model.minimize(sum(costs))
    return model


def _stay_done(
    model: "cp_model.CpModel",
    numbers: Numbers,
    done: "dict[tuple[int, int, int], cp_model.IntVar]",
) -> None:
    for (job, planter, day), literal in done.items():
        if (job, planter, day + 1) in done:
            model.add_implication(literal, done[job, planter, day + 1])
        begin = numbers.ready[planter] + _least_move(numbers, planter, job)
        begin = max(begin, numbers.release[job], numbers.start[job] or 0)
        if begin + numbers.minutes[planter][job] > (day + 1) * numbers.day:
            model.add(literal == 0)


def _fit(
    model: "cp_model.CpModel",
    numbers: Numbers,
    planter: int,
    day: int,
    by_day: "dict[int, cp_model.IntVar]",
    kinds: Sequence[tuple[frozenset[int], int]],
) -> None:
    """Keep the work done by a day within the minutes from each release until then."""
    switched: list[cp_model.LinearExprT] = []
    for jobs, least in kinds:
        inside = [by_day[job] for job in jobs if job in by_day]
        if least and inside:
            used = model.new_bool_var("setup used")
            for literal in inside:
                model.add_implication(literal, used)
            switched.append(least * used)
    moves = {job: _least_move(numbers, planter, job) for job in by_day}
    work = {job: numbers.minutes[planter][job] + moves[job] for job in by_day}
    room = (day + 1) * numbers.day - numbers.ready[planter]
    model.add(sum([*switched, *(work[job] * each for job, each in by_day.items())]) <= room)
    for release in {numbers.release[job] for job in by_day}:
        if release > numbers.ready[planter]:
            late = {job: each for job, each in by_day.items() if numbers.release[job] >= release}
            spare = max(moves[job] for job in late)
            load = sum(work[job] * literal for job, literal in late.items())
            model.add(load <= max(0, (day + 1) * numbers.day - release) + spare)


def _least_move(numbers: Numbers, planter: int, job: int) -> int:
    """Return the least minutes of moving to a job from anywhere, switches left aside."""
    key = numbers.season.jobs[job].key
    move = numbers.season.planters[planter].move
    froms = [each.key for each in numbers.season.jobs if each.key != key]
    return min(move.get((come, key), 0) for come in [*froms, ""])


def setup_kinds(numbers: Numbers, planter: int) -> list[tuple[frozenset[int], int]]:
    """Return the jobs of a planter by kind of setup, with the least switch into each kind.

    Jobs are of one kind when no switch lies between them, either way.
    """
    keys = [job.key for job in numbers.season.jobs]
    switch = numbers.season.planters[planter].switch
    left = [job for job in numbers.jobs if numbers.minutes[planter][job]]
    kinds = []
    while left:
        first = keys[left[0]]
        kind = frozenset(
            job
            for job in left
            if not switch.get((first, keys[job]), 0) and not switch.get((keys[job], first), 0)
        )
        left = [job for job in left if job not in kind]
        outside = ["", *(key for job, key in enumerate(keys) if job not in kind)]
        entries = [switch.get((come, keys[job]), 0) for come in outside for job in kind]
        kinds.append((kind, min(entries)))
    return kinds
