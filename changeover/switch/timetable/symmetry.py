"""Timetables that differ only by names of persons or by left and right: one stands for all."""

import math
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from changeover.switch.timetable.apart import likeness
from changeover.switch.timetable.model import Activity, Stint
from changeover.switch.timetable.pieces import Piece
from changeover.switch.timetable.rest import Rest
from changeover.switch.timetable.rules import Ruled


def add_symmetry(ruled: Ruled) -> None:
    """Let persons who are alike begin in the order of their names, and the first be on the left.

    Any timetable can be brought to that by exchanging their names, and left with right where
    all rows allow it, so none shorter is lost.
    """
    for names in alike(ruled.rest):
        activity = telling(ruled.rest, names)
        if activity is not None:
            by_name = _by_name(ruled, activity)
            for first, second in pairwise(by_name[name] for name in names):
                ruled.model.add_implication(second.present, first.present)
                ruled.model.add(first.start <= second.start).only_enforce_if(second.present)
    told = _sides(ruled.rest)
    if told is not None:
        activity, pair, _ = told
        left, right = (_by_name(ruled, activity)[name] for name in pair)
        assert left.first is not None
        assert right.first is not None
        ruled.model.add(left.first < right.first).only_enforce_if([left.present, right.present])


def _by_name(ruled: Ruled, activity: Activity) -> dict[str, Piece]:
    return {name: piece for piece in ruled.of(activity.key) for name in piece.persons}


def alike(rest: Rest) -> list[list[str]]:
    """Return the groups of persons whom the rules cannot tell apart, two or more each."""
    busy = {name for stint in rest.under_way for name in stint.persons}
    groups: dict[object, list[str]] = defaultdict(list)
    for person in rest.work.crew:
        if person.name not in busy:
            groups[likeness(person, rest.todo)[:2]].append(person.name)
    return [names for names in groups.values() if len(names) > 1]


def telling(rest: Rest, names: Sequence[str]) -> Activity | None:
    """Return the longest activity with shared rows that the named persons can do, if any."""
    crew = {person.name: person for person in rest.work.crew}
    able = [
        activity
        for activity in rest.todo
        if activity.shared_out and all(crew[name].can(activity) for name in names)
    ]
    return max(able, key=lambda each: each.modes[0].duration(len(each.rows)), default=None)


def _sides(rest: Rest) -> tuple[Activity, tuple[str, str], int] | None:
    """Return an activity, two persons, and the sum of a row and the one it stands opposite to.

    None where the rows are not the same from the left as from the right.
    """
    every = [activity.rows for activity in rest.todo if activity.rows]
    sums = {rows[0] + rows[-1] for rows in every}
    if len(sums) != 1:
        return None
    total = sums.pop()
    if any({total - row for row in rows} != {*rows} for rows in every):
        return None
    for group in (*alike(rest), [person.name for person in rest.work.crew]):
        activity = telling(rest, group[:2]) if len(group) > 1 else None
        if activity is not None:
            return activity, (group[0], group[1]), total
    return None


def one_of_alike(rest: Rest, stints: Sequence[Stint]) -> list[Stint]:
    """Exchange names of persons who are alike, and sides, so that ``add_symmetry`` holds."""
    renamed: dict[str, str] = {}
    for names in alike(rest):
        activity = telling(rest, names)
        if activity is not None:
            begins = {s.persons[0]: s.start for s in stints if s.activity == activity.key}
            order = sorted(names, key=lambda name: begins.get(name, math.inf))
            renamed |= dict(zip(order, names, strict=True))
    return _to_the_left(
        rest,
        [
            replace(stint, persons=tuple(renamed.get(name, name) for name in stint.persons))
            for stint in stints
        ],
    )


def _to_the_left(rest: Rest, stints: list[Stint]) -> list[Stint]:
    told = _sides(rest)
    if told is None:
        return stints
    activity, names, total = told
    at = {s.persons[0]: s.rows[0] for s in stints if s.activity == activity.key and s.persons}
    if not {*names} <= at.keys() or at[names[0]] < at[names[1]]:
        return stints
    return [replace(s, rows=tuple(sorted(total - row for row in s.rows))) for s in stints]
