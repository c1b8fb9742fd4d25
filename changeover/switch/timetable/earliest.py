"""How soon work can begin and be over at best, in the crew's hours, reckoned without a search."""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace
from itertools import combinations

from changeover.switch.timetable.closure import with_all_before, within
from changeover.switch.timetable.model import Activity, Person
from changeover.switch.timetable.reach import earliest_end, reach, reach_any
from changeover.switch.timetable.rest import Rest
from changeover.switch.timetable.runs import least_changes

Parts = Mapping[frozenset[str], int]
"""Proven least minutes of work in one machine state alone, by the keys of its activities."""


class Earliest:
    """Proven earliest minutes: of each activity's beginning, and of the end of all.

    Work that comes after other work begins at the earliest when that can be over. From then on
    it must be held by those who can do it in their hours, by the shared tools, and by the states
    of the machine in turn, and leave the time that what follows takes at least.
    """

    def __init__(self, rest: Rest, parts: Parts) -> None:
        self._rest, self._parts = rest, parts
        closed = with_all_before(rest.todo)
        self._own = {each.key: each for each in closed}
        crew = rest.work.crew
        self._able = {each.key: tuple(p for p in crew if p.can(each)) for each in closed}
        self._minutes = {each.key: _person_minutes(each) for each in closed}
        self._groups = _groups(crew, self._able.values())
        self._heads: dict[str, int] = {}
        self._tails: dict[str, int] = {}

    @property
    def end(self) -> int:
        """The minute before which no timetable ends."""
        over = max((stint.end for stint in self._rest.fixed), default=self._rest.now)
        tails = {0, *(self.tail(key) for key in self._own)}
        ends = (
            self._over([key for key in self._own if self.tail(key) >= tail]) + tail
            for tail in tails
        )
        return max([over, *ends])

    def head(self, key: str) -> int:
        """Return the minute before which no work on an activity begins."""
        if key not in self._heads:
            activity = self._own[key]
            minutes = [self._rest.release(activity)]
            if activity.after:
                minutes.append(self._over(activity.after))
            for near, whole in self._near(activity):
                wait = self._rest.gap(near, activity) or 0
                minutes.append(self.head(near.key) + self._shortest(near, whole) + wait)
            self._heads[key] = max(minutes)
        return self._heads[key]

    def tail(self, key: str) -> int:
        """Return the least minutes between the end of any work on an activity and of all work."""
        if key not in self._tails:
            own = self._own[key]
            minutes = [
                0,
                self._alone([each.key for each in self._own.values() if key in each.after]),
            ]
            for after in self._own.values():
                whole = key in after.after
                if whole or (key in after.after_by_row and within(own, after)):
                    wait = self._rest.gap(own, after) or 0
                    minutes.append(self._shortest(after, whole) + wait + self.tail(after.key))
            self._tails[key] = max(minutes)
        return self._tails[key]

    def _near(self, activity: Activity) -> Iterable[tuple[Activity, bool]]:
        """Yield what every block of an activity waits for, true when wholly."""
        for key in activity.after:
            yield self._own[key], True
        for key in activity.after_by_row:
            if within(activity, self._own[key]):
                yield self._own[key], False

    def _shortest(self, activity: Activity, whole: bool) -> int:
        """Return the least minutes from the begin of an activity to its end, or of one block."""
        if not activity.shared_out:
            return min(mode.duration(len(activity.rows)) for mode in activity.modes)
        one = min(mode.duration(1) for mode in activity.modes)
        able = len(self._able[activity.key])
        return max(one, -(-self._minutes[activity.key] // able)) if whole and able else one

    def _over(self, keys: Collection[str]) -> int:
        """Return the minute before which some activities cannot all be over."""
        rest, crew = self._rest, self._rest.work.crew
        ends = [rest.now]
        for head in {self.head(key) for key in keys}:
            later = [key for key in keys if self.head(key) >= head]
            manned = all(mode.persons for key in later for mode in self._own[key].modes)
            held = max(self._by_tools(later), self._by_states(later))
            ends.append(head + self._by_states(later) + self._waits(later))
            ends.append(reach_any(crew, head, held) if manned else head + held)
            for group in self._groups:
                minutes = self._for(group, later)
                if minutes:
                    ends.append(reach(group, head, minutes))
        at_once = (key for key in keys if not self._own[key].shared_out)
        return max(
            *ends,
            0,
            *(earliest_end(self._own[key], self._able[key], self.head(key)) for key in at_once),
        )

    def _alone(self, keys: Collection[str]) -> int:
        """Return the least minutes that some activities take, hours left aside."""
        by_states = self._by_states(keys) + self._waits(keys)
        return max(by_states, self._by_tools(keys), self._by_persons(keys))

    def _by_persons(self, keys: Collection[str]) -> int:
        loads = (-(-self._for(group, keys) // len(group)) for group in self._groups)
        return max(loads, default=0)

    def _for(self, group: Collection[Person], keys: Iterable[str]) -> int:
        """Return the least person minutes of the activities that nobody outside a group can do."""
        names = {person.name for person in group}
        return sum(
            self._minutes[key] for key in keys if all(p.name in names for p in self._able[key])
        )

    def _by_tools(self, keys: Collection[str]) -> int:
        """Return the least minutes for which the shared tools are held one after another."""
        loads = [
            -(-sum(_tool_minutes(self._own[key], tool) for key in keys) // capacity)
            for tool, capacity in self._rest.work.tools.items()
            if capacity
        ]
        return max(loads, default=0)

    def _by_states(self, keys: Collection[str]) -> int:
        """Return the least minutes that the machine is in its states, one after another."""
        states = {self._own[key].state for key in keys} - {None}
        return sum(
            self._in_state([key for key in keys if self._own[key].state == state])
            for state in states
        )

    def _in_state(self, keys: Collection[str]) -> int:
        proven = (least for part, least in self._parts.items() if part <= {*keys})
        shortest = (self._shortest(self._own[key], whole=True) for key in keys)
        return max([self._by_persons(keys), self._by_tools(keys), *shortest, *proven])

    def _waits(self, keys: Collection[str]) -> int:
        todo = tuple(each for each in self._own.values() if each.key in keys)
        return self._rest.work.state_minutes * least_changes(replace(self._rest, todo=todo))


def _person_minutes(activity: Activity) -> int:
    rows = len(activity.rows)
    return min(mode.persons * mode.duration(rows) for mode in activity.modes)


def _tool_minutes(activity: Activity, tool: str) -> int:
    rows = len(activity.rows)
    return min(mode.uses.get(tool, 0) * mode.duration(rows) for mode in activity.modes)


def _groups(
    crew: Collection[Person], able: Iterable[tuple[Person, ...]]
) -> list[tuple[Person, ...]]:
    """Return the groups that can do some activity, any two of them together, and the crew."""
    sets = {frozenset(person.name for person in each) for each in able if each}
    pairs = {one | other for one, other in combinations(sets, 2)}
    named = sorted({*sets, *pairs, frozenset(p.name for p in crew)} - {frozenset()}, key=sorted)
    return [tuple(person for person in crew if person.name in names) for names in named]
