"""Prerequisites that follow from others: what comes before what comes before."""

from collections.abc import Sequence
from dataclasses import replace

from changeover.switch.timetable.model import Activity


def with_all_before(activities: Sequence[Activity]) -> tuple[Activity, ...]:
    """Return the activities with every prerequisite that follows from theirs.

    Two that hold by row give one by row; a whole one before or after makes it whole. Where the
    rows of the three differ, only two whole ones are joined, since a row might be left out.
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
                    if _joins(own[first], own[middle], own[key], both=whole and second):
                        found[key][first] = found[key].get(first, False) or whole or second
        return found[key]

    return tuple(
        replace(
            activity,
            after=tuple(key for key, whole in before(activity.key).items() if whole),
            after_by_row=tuple(key for key, whole in before(activity.key).items() if not whole),
        )
        for activity in activities
    )


def _joins(first: Activity, middle: Activity, last: Activity, *, both: bool) -> bool:
    """Tell whether two prerequisites join: both whole, or the same rows all along."""
    return both or all(each.rows in ((), middle.rows) for each in (first, last)) or not middle.rows
