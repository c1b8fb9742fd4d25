"""How long a group of persons needs for work, from a minute on and within their hours."""

from collections.abc import Iterable, Iterator, Sequence

from changeover.switch.timetable.model import Activity, Person

NEVER = 10**7
"""Stands for a minute that never comes, some nineteen years on."""


def reach(group: Sequence[Person], start: int, minutes: int) -> int:
    """Return the minute by which a group has been at work for so many person minutes."""
    return _spent(group, start, minutes, at_once=True)


def reach_any(group: Sequence[Person], start: int, minutes: int) -> int:
    """Return the minute by which somebody of a group has been at work for so many minutes."""
    return _spent(group, start, minutes, at_once=False)


def earliest_end(activity: Activity, able: Sequence[Person], start: int) -> int:
    """Return the minute before which work in one go cannot end, as the hours allow it."""
    ends = []
    for mode in activity.modes:
        minutes = mode.duration(len(activity.rows))
        fits = sorted(_fit(person, start, minutes) for person in able)
        if not mode.persons:
            ends.append(start + minutes)
        elif len(fits) >= mode.persons:
            ends.append(fits[mode.persons - 1] + minutes)
    return min(ends, default=NEVER)


def _fit(person: Person, start: int, minutes: int) -> int:
    if not person.hours:
        return start
    starts = (max(a, start) for a, b in person.hours if max(a, start) + minutes <= b)
    return min(starts, default=NEVER)


def _spent(group: Sequence[Person], start: int, minutes: int, *, at_once: bool) -> int:
    at = start
    for end, there in _stretches(group, start):
        rate = there if at_once else min(1, there)
        if minutes <= 0:
            return at
        if rate and (end is None or rate * (end - at) >= minutes):
            return at + -(-minutes // rate)
        if end is None:
            return NEVER
        minutes -= rate * (end - at)
        at = end
    return at


def _stretches(group: Iterable[Person], start: int) -> Iterator[tuple[int | None, int]]:
    """Yield the end of each stretch of time, the last None, and how many are at work in it."""
    persons = list(group)
    moments = sorted({m for p in persons for hours in p.hours for m in hours if m > start})
    at = start
    for end in [*moments, None]:
        yield end, sum(_there(person, at) for person in persons)
        at = end if end is not None else at


def _there(person: Person, minute: int) -> bool:
    return not person.hours or any(begin <= minute < end for begin, end in person.hours)
