"""What is still to be done of a timetable's work, given what is done or under way."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from changeover.switch.timetable.apart import barred_by_done
from changeover.switch.timetable.model import Activity, Stint, Work


@dataclass(frozen=True)
class Rest:
    """The work, the stints that stand, and the activities (with their rows) that remain.

    ``now`` is the minute before which nothing new begins.
    """

    work: Work
    fixed: tuple[Stint, ...]
    todo: tuple[Activity, ...]
    now: int

    def release(self, activity: Activity) -> int:
        """Return the earliest minute for new work on an activity, as the fixed stints allow."""
        earliest = self.now
        for stint in self.fixed:
            wait = self.gap(self.work.activity(stint.activity), activity)
            held = stint.activity in activity.after or (
                stint.activity in activity.after_by_row and shares_rows(stint.rows, activity.rows)
            )
            if wait is not None or held:
                earliest = max(earliest, stint.end + (wait or 0))
        return earliest

    def gap(self, one: Activity, other: Activity) -> int | None:
        """Return the minutes between two activities whose states exclude each other, or None."""
        if one.state is None or other.state is None or one.state == other.state:
            return None
        return self.work.state_minutes

    @property
    def under_way(self) -> tuple[Stint, ...]:
        """The fixed stints that go on after now."""
        return tuple(stint for stint in self.fixed if stint.end > self.now)


def rest_of(work: Work, done: Sequence[Stint], now: int) -> Rest:
    """Return what remains of the work; an activity without rows is whole once it is begun."""
    begun = {stint.activity for stint in done}
    todo = []
    for activity in work.activities:
        over = {row for stint in done if stint.activity == activity.key for row in stint.rows}
        left = tuple(row for row in activity.rows if row not in over)
        if activity.key not in begun or left:
            todo.append(replace(activity, rows=left))
    return Rest(work, tuple(done), tuple(barred_by_done(work, todo, done)), now)


def shares_rows(one: Sequence[int], other: Sequence[int]) -> bool:
    """Tell whether two blocks meet between their first and last rows; no rows means all."""
    if not one or not other:
        return True
    return min(one) <= max(other) and min(other) <= max(one)
