"""A season as CP-SAT constraints: one round of jobs for each planter, with times and days."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import combinations, pairwise
from typing import TYPE_CHECKING

from changeover.switch.search import Answer
from changeover.switch.season.numbers import Numbers, Placed

if TYPE_CHECKING:
    from ortools.sat.python import cp_model


@dataclass
class Exact:
    """The model with its variables: ``arcs[planter][from, to]`` with the yard as the last index."""

    numbers: Numbers
    model: "cp_model.CpModel"
    horizon: int
    start: "list[cp_model.IntVar]" = field(default_factory=list)
    end: "list[cp_model.IntVar]" = field(default_factory=list)
    on: "list[dict[int, cp_model.IntVar]]" = field(default_factory=list)
    arcs: "list[dict[tuple[int, int], cp_model.IntVar]]" = field(default_factory=list)
    late: "cp_model.LinearExprT" = 0
    between: "cp_model.LinearExprT" = 0


def exact_model(numbers: Numbers, horizon: int) -> Exact:
    """Return the model of all plans that end by minute ``horizon`` of work."""
    from ortools.sat.python import cp_model

    exact = Exact(numbers, cp_model.CpModel(), horizon)
    for job in numbers.jobs:
        _times(exact, job)
    for planter in numbers.planters:
        _round(exact, planter)
    exact.between = sum(
        numbers.change[planter][come][go] * literal
        for planter, arcs in enumerate(exact.arcs)
        for (come, go), literal in arcs.items()
        if numbers.change[planter][come][go]
    )
    exact.late = sum(cost for job in numbers.jobs if (cost := _late(exact, job)) is not None)
    _share_parts(exact)
    return exact


def _times(exact: Exact, job: int) -> None:
    """Add start, end and planter of a job."""
    model, numbers = exact.model, exact.numbers
    able = numbers.able(job)
    fixed = numbers.start[job]
    start = model.new_int_var(numbers.release[job], exact.horizon, f"start {job}")
    end = model.new_int_var(numbers.release[job], exact.horizon, f"end {job}")
    if fixed is not None:
        model.add(start == fixed)
    on = {planter: model.new_bool_var(f"{job} on {planter}") for planter in able}
    model.add_exactly_one(on.values())
    minutes = sum(numbers.minutes[planter][job] * literal for planter, literal in on.items())
    model.add(end == start + minutes)
    exact.start.append(start)
    exact.end.append(end)
    exact.on.append(on)


def _round(exact: Exact, planter: int) -> None:
    """Let a planter leave the yard, do its jobs one after another, and come home."""
    model, numbers, yard = exact.model, exact.numbers, exact.numbers.yard
    change = numbers.change[planter]
    own = [job for job in numbers.jobs if planter in exact.on[job]]
    arcs: dict[tuple[int, int], cp_model.IntVar] = {}
    for job in own:
        arcs[yard, job] = model.new_bool_var("leave")
        arcs[job, yard] = model.new_bool_var("home")
        first = numbers.ready[planter] + change[yard][job]
        model.add(exact.start[job] >= first).only_enforce_if(arcs[yard, job])
        for other in own:
            if other != job:
                arcs[job, other] = then = model.new_bool_var("then")
                after = exact.end[job] + change[job][other]
                model.add(exact.start[other] >= after).only_enforce_if(then)
    exact.arcs.append(arcs)
    circuit: list[tuple[int, int, cp_model.LiteralT]] = [
        (come, go, literal) for (come, go), literal in arcs.items()
    ]
    circuit += [(job, job, ~exact.on[job][planter]) for job in own]
    idle = model.new_bool_var("idle")
    for job in own:
        model.add_implication(idle, ~exact.on[job][planter])
    model.add_circuit([*circuit, (yard, yard, idle)])
    model.add_no_overlap(
        [
            model.new_optional_fixed_size_interval_var(
                exact.start[job], numbers.minutes[planter][job], exact.on[job][planter], "job"
            )
            for job in own
        ]
    )


def _late(exact: Exact, job: int) -> "cp_model.LinearExprT | None":
    """Return the cost of lateness of a job in cents, None when it can have none."""
    numbers, model = exact.numbers, exact.model
    due = numbers.due[job]
    if due is None or not numbers.cents[job]:
        return None
    days = model.new_int_var(0, max(0, exact.horizon // numbers.day + 1 - due), f"late {job}")
    model.add(numbers.day * days >= exact.end[job] - numbers.day * (due + 1))
    return numbers.cents[job] * days


def _share_parts(exact: Exact) -> None:
    """Keep jobs that need one set of parts on one planter, or on different days."""
    numbers, model = exact.numbers, exact.model
    days: dict[int, tuple[cp_model.IntVar, cp_model.IntVar]] = {}
    for one, other in combinations(numbers.jobs, 2):
        if not numbers.parts[one] & numbers.parts[other] or len(numbers.planters) == 1:
            continue
        for job in (one, other):
            if job not in days:
                days[job] = _days(exact, job)
        before, after = model.new_bool_var("before"), model.new_bool_var("after")
        model.add(days[one][1] + 1 <= days[other][0]).only_enforce_if(before)
        model.add(days[other][1] + 1 <= days[one][0]).only_enforce_if(after)
        together = []
        for planter in exact.on[one].keys() & exact.on[other].keys():
            both = model.new_bool_var("both")
            model.add_implication(both, exact.on[one][planter])
            model.add_implication(both, exact.on[other][planter])
            together.append(both)
        model.add_bool_or([before, after, *together])


def _days(exact: Exact, job: int) -> "tuple[cp_model.IntVar, cp_model.IntVar]":
    """Return the first and last day of a job."""
    model, day = exact.model, exact.numbers.day
    first = model.new_int_var(0, exact.horizon // day, "first day")
    last = model.new_int_var(0, exact.horizon // day, "last day")
    model.add_division_equality(first, exact.start[job], day)
    model.add_division_equality(last, exact.end[job] - 1, day)
    return first, last


def add_order_hint(exact: Exact, placed: Sequence[Sequence[Placed]]) -> None:
    """Give the solver an order to begin with."""
    for planter, row in enumerate(placed):
        stops = [exact.numbers.yard, *(each.job for each in row), exact.numbers.yard]
        taken = set(pairwise(stops))
        for pair, literal in exact.arcs[planter].items():
            exact.model.add_hint(literal, pair in taken)
        for job, start, end in row:
            exact.model.add_hint(exact.start[job], start)
            exact.model.add_hint(exact.end[job], end)
            for other, literal in exact.on[job].items():
                exact.model.add_hint(literal, other == planter)


def read_order(exact: Exact, answer: Answer) -> list[list[Placed]]:
    """Return the order that was found, with its times."""
    solver = answer.solver
    rows: list[list[Placed]] = []
    for planter in exact.numbers.planters:
        row = [
            Placed(job, solver.value(exact.start[job]), solver.value(exact.end[job]))
            for job, on in enumerate(exact.on)
            if planter in on and solver.value(on[planter])
        ]
        rows.append(sorted(row, key=lambda each: each.start))
    return rows
