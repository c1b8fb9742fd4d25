"""Work that must not be done by whoever did other work: who may do what, case by case."""

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import combinations, islice, product

from changeover.switch.timetable.model import Activity, Person, Stint, Work

MOST = 60
"""Up to this many cases are looked at one by one; our own choice."""


def pairs_apart(activities: Sequence[Activity]) -> list[tuple[Activity, Activity]]:
    """Return the pairs of which the first is done by nobody who does the second."""
    own = {activity.key: activity for activity in activities}
    return [(each, own[key]) for each in activities for key in each.not_by if key in own]


def kept_apart(activities: Sequence[Activity], stints: Iterable[Stint]) -> bool:
    """Tell whether nobody does two things that different persons must do."""
    who: dict[str, set[str]] = {activity.key: set() for activity in activities}
    for stint in stints:
        who.setdefault(stint.activity, set()).update(stint.persons)
    return not any(who[one.key] & who[other.key] for one, other in pairs_apart(activities))


def barred_by_done(work: Work, todo: Iterable[Activity], done: Sequence[Stint]) -> list[Activity]:
    """Return what remains, barred to those who have done what it must not be done beside."""
    reverse: dict[str, set[str]] = {}
    for activity in work.activities:
        for key in activity.not_by:
            reverse.setdefault(key, set()).add(activity.key)
    return [
        _barred(
            activity,
            {
                name
                for stint in done
                if stint.activity in {*activity.not_by, *reverse.get(activity.key, ())}
                for name in stint.persons
            },
        )
        for activity in todo
    ]


def cases(crew: Sequence[Person], todo: Sequence[Activity]) -> list[tuple[Activity, ...]]:
    """Return what remains with each choice of who does what others must not have done.

    In each, what must be done by somebody else is barred to all but some persons, who are barred
    from the rest. One case stands for all that differ only by persons who are alike. Without
    such work there is one case, the work as it is; there is none when the crew is too small.
    """
    centres = [activity for activity in todo if {*activity.not_by} & {each.key for each in todo}]
    choices = [list(_choices(crew, todo, centre)) for centre in centres]
    made = (_with_choice(crew, todo, centres, chosen) for chosen in product(*choices))
    return list(islice((each for each in made if _manned(crew, each)), MOST))


def _choices(
    crew: Sequence[Person], todo: Sequence[Activity], centre: Activity
) -> Iterator[tuple[str, ...]]:
    """Yield who may do an activity, persons who are alike in the order of their names only."""
    able = [person for person in crew if person.can(centre)]
    sizes = {mode.persons for mode in centre.modes}
    if centre.shared_out:
        sizes = {*range(1, len(able) + 1)}
    seen: set[tuple[object, ...]] = set()
    for size in sorted(sizes):
        for chosen in combinations(able, size):
            kinds = tuple(sorted((repr(likeness(each, todo)) for each in chosen), key=str))
            if kinds not in seen:
                seen.add(kinds)
                yield tuple(person.name for person in chosen)


def likeness(person: Person, todo: Iterable[Activity]) -> tuple[object, ...]:
    """Return all by which a person can be told from others, but the name."""
    can = tuple(activity.key for activity in todo if person.can(activity))
    return can, person.hours, person.place


def _with_choice(
    crew: Sequence[Person],
    todo: Sequence[Activity],
    centres: Sequence[Activity],
    chosen: Sequence[tuple[str, ...]],
) -> tuple[Activity, ...]:
    names = {person.name for person in crew}
    barred: dict[str, set[str]] = {activity.key: set() for activity in todo}
    for centre, mine in zip(centres, chosen, strict=True):
        barred[centre.key] |= names - {*mine}
        for key in centre.not_by:
            if key in barred:
                barred[key] |= {*mine}
    return tuple(_barred(activity, barred[activity.key]) for activity in todo)


def _barred(activity: Activity, names: Collection[str]) -> Activity:
    return replace(activity, barred=activity.barred | {*names}) if names else activity


def _manned(crew: Sequence[Person], todo: Iterable[Activity]) -> bool:
    return all(
        sum(person.can(each) for person in crew) >= min(mode.persons for mode in each.modes)
        for each in todo
    )
