"""Runs of work in one machine state: which activities go together between two changes of state."""

from collections import defaultdict
from collections.abc import Mapping, Sequence

from changeover.switch.timetable.closure import with_all_before, within
from changeover.switch.timetable.model import Activity
from changeover.switch.timetable.rest import Rest


def least_changes(rest: Rest) -> int:
    """Return how often the machine must change its state at least."""
    states = {activity.state for activity in rest.todo} - {None}
    return max([len(states) - 1, 0, *_changes_before(rest).values()])


def _changes_before(rest: Rest) -> dict[str, int]:
    """Return how often the state changes at least before any work on an activity."""
    own = {activity.key: activity for activity in with_all_before(rest.todo)}
    found: dict[str, int] = {}

    def changes(key: str) -> int:
        if key not in found:
            activity = own[key]
            by_row = (near for near in activity.after_by_row if within(activity, own[near]))
            found[key] = max(
                (
                    changes(near) + (rest.gap(own[near], activity) is not None)
                    for near in (*activity.after, *by_row)
                ),
                default=0,
            )
        return found[key]

    for key in own:
        changes(key)
    return found


def runs_of(rest: Rest) -> list[frozenset[str]]:
    """Divide the keys of work that has a state into runs of one state each, in a possible order.

    An activity goes into the run at the nearest level where others of its state must be.
    """
    before = _all_before(rest)
    soonest = _levels(rest, before)
    latest = _latest(rest, before, max(soonest.values(), default=0))
    anchors: dict[str | None, set[int]] = defaultdict(set)
    for activity in rest.todo:
        if activity.state and soonest[activity.key] == latest[activity.key]:
            anchors[activity.state].add(soonest[activity.key])
    chosen: dict[str, int] = {}
    runs: dict[tuple[int, str], list[str]] = defaultdict(list)
    for activity in sorted(rest.todo, key=lambda each: len(before[each.key])):
        if activity.state is None:
            continue
        steps = _steps(rest, activity, before)
        least = max((chosen[key] + step for key, step in steps), default=0)
        fits = [at for at in anchors[activity.state] if least <= at <= latest[activity.key]]
        chosen[activity.key] = min(fits, default=least)
        anchors[activity.state].add(chosen[activity.key])
        runs[chosen[activity.key], activity.state].append(activity.key)
    return [frozenset(runs[key]) for key in sorted(runs)]


def _all_before(rest: Rest) -> dict[str, set[str]]:
    """Return for each activity all that must come before it, however indirectly."""
    own = {activity.key: activity for activity in rest.todo}
    found: dict[str, set[str]] = {}

    def gather(key: str) -> set[str]:
        if key not in found:
            near = {each for each in (*own[key].after, *own[key].after_by_row) if each in own}
            found[key] = near.union(*(gather(each) for each in near))
        return found[key]

    for key in own:
        gather(key)
    return found


def _steps(
    rest: Rest, activity: Activity, before: Mapping[str, set[str]]
) -> Sequence[tuple[str, int]]:
    """Return what comes before an activity, each with 1 when the state must change between."""
    return [
        (other.key, int(other.state != activity.state))
        for other in rest.todo
        if other.key in before[activity.key] and other.state is not None
    ]


def _levels(rest: Rest, before: Mapping[str, set[str]]) -> dict[str, int]:
    """Return for each activity with a state how often the state must change before it."""
    levels: dict[str, int] = {}
    for activity in sorted(rest.todo, key=lambda each: len(before[each.key])):
        if activity.state is not None:
            steps = _steps(rest, activity, before)
            levels[activity.key] = max((levels[key] + step for key, step in steps), default=0)
    return levels


def _latest(rest: Rest, before: Mapping[str, set[str]], top: int) -> dict[str, int]:
    """Return for each activity the latest level that leaves room for all that comes after."""
    latest: dict[str, int] = {}
    for activity in sorted(rest.todo, key=lambda each: -len(before[each.key])):
        after = [
            latest[other.key] - int(other.state != activity.state)
            for other in rest.todo
            if activity.key in before[other.key] and other.state is not None
        ]
        latest[activity.key] = min(after, default=top)
    return latest
