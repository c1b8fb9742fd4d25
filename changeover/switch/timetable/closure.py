"""Prerequisites that follow from others: what comes before what comes before."""

from collections.abc import Sequence
from dataclasses import replace

from changeover.switch.timetable.model import Activity


def with_all_before(activities: Sequence[Activity]) -> tuple[Activity, ...]:
    """Return the activities with every prerequisite that follows from theirs.

    What is wholly before, or wholly after, something in between is wholly before what comes
    after that; two that hold by row give one by row. Rows of the outer ones that the one in
    between does not have are held by nothing, so that such are not joined.
    """
    own = {activity.key: activity for activity in activities}
    found: dict[str, dict[str, bool]] = {}

    def before(key: str) -> dict[str, bool]:
        """Return what comes before an activity, true when wholly."""
        if key not in found:
            near = dict.fromkeys(own[key].after_by_row, False) | dict.fromkeys(own[key].after, True)
            found[key] = {each: whole for each, whole in near.items() if each in own}
            for middle, second in list(found[key].items()):
                for first, whole in before(middle).items():
                    if _joins(own[first], own[middle], own[key], whole, second):
                        all_of = whole or second or not own[middle].rows
                        found[key][first] = found[key].get(first, False) or all_of
        return found[key]

    return tuple(
        replace(
            activity,
            after=tuple(key for key, whole in before(activity.key).items() if whole),
            after_by_row=tuple(key for key, whole in before(activity.key).items() if not whole),
        )
        for activity in activities
    )


def _joins(first: Activity, middle: Activity, last: Activity, whole: bool, second: bool) -> bool:
    """Tell whether two prerequisites join: each is whole, or its outer rows are in the middle."""
    return (whole or within(first, middle)) and (second or within(last, middle))


def within(outer: Activity, middle: Activity) -> bool:
    """Tell whether every block of one activity meets some block of another."""
    return not middle.rows or set(outer.rows) <= set(middle.rows)
