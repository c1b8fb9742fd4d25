"""A first timetable by simple rules: the longest chain of work first, each as early as it fits."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

from changeover.switch.timetable.apart import cases
from changeover.switch.timetable.model import Activity, Mode, Person, Stint
from changeover.switch.timetable.rest import Rest, shares_rows


def first_timetable(rest: Rest) -> list[Stint] | None:
    """Return new stints for all that remains, or None when the hours of the crew run out.

    Where different persons must do two things, the shortest of the cases. Within hours, rows
    are divided among all who can do them as well, since short blocks fit before a break.
    """
    hours = any(person.hours for person in rest.work.crew)
    tries = [
        _by_rules(replace(rest, todo=todo), short)
        for todo in cases(rest.work.crew, rest.todo)
        for short in ([False, True] if hours else [False])
    ]
    found = [stints for stints in tries if stints is not None]
    return min(found, key=lambda each: max((s.end for s in each), default=0), default=None)


def _by_rules(rest: Rest, short: bool) -> list[Stint] | None:
    board = Board(rest, short=short)
    waiting = list(rest.todo)
    tails = _tails(rest)
    state: str | None = None
    while waiting:
        names = {each.key for each in waiting}
        ready = [
            each for each in waiting if not names & {*each.after, *each.after_by_row} - {each.key}
        ]
        chosen = max(ready, key=lambda each: (each.state in (state, None), tails[each.key]))
        if not board.place(chosen):
            return None
        state = chosen.state or state
        waiting.remove(chosen)
    return board.new


def _shortest(activity: Activity, rows: int) -> int:
    return min(range(len(activity.modes)), key=lambda way: activity.modes[way].duration(rows))


def _tails(rest: Rest) -> dict[str, int]:
    """Return for each activity the minutes of the longest chain that begins with it."""
    people = max(1, len(rest.work.crew))
    tails: dict[str, int] = {}

    def tail(key: str) -> int:
        if key not in tails:
            activity = own[key]
            rows = len(activity.rows)
            share = -(-rows // people) if activity.shared_out else rows
            minutes = activity.modes[_shortest(activity, rows)].duration(share)
            tails[key] = minutes + max((tail(each) for each in followers[key]), default=0)
        return tails[key]

    own = {activity.key: activity for activity in rest.todo}
    followers: dict[str, list[str]] = {key: [] for key in own}
    for activity in rest.todo:
        for before in {*activity.after, *activity.after_by_row}:
            if before in own:
                followers[before].append(activity.key)
    for key in own:
        tail(key)
    return tails


class Board:
    """The stints placed so far, and the search for the earliest place of the next.

    Rows are divided among as many as the shared tools let work at once, or for ``short`` blocks
    among all who can.
    """

    def __init__(self, rest: Rest, *, short: bool = False) -> None:
        self._rest, self._short = rest, short
        self._placed = list(rest.under_way)
        self.new: list[Stint] = []

    def ready(self, activity: Activity, own: Collection[str] = ()) -> bool:
        """Tell whether all prerequisites of an activity are placed, or its ``own`` company."""
        placed = {*own, *(each.activity for each in self.new)}
        later = {each.key for each in self._rest.todo} - placed
        return not later & {*activity.after, *activity.after_by_row}

    def has(self, key: str) -> bool:
        """Tell whether an activity is placed."""
        return any(stint.activity == key for stint in self.new)

    def place(self, activity: Activity) -> bool:
        """Place all that remains of an activity; false when it does not fit in the hours."""
        way = _shortest(activity, len(activity.rows))
        mode = activity.modes[way]
        able = [person for person in self._rest.work.crew if person.can(activity)]
        if not activity.shared_out:
            return self._put(activity, way, activity.rows, able) is not None
        for block in _blocks(activity.rows, self._shares(mode, len(able))):
            stint = self._put(activity, way, block, able)
            if stint is None:
                return False
            able = [person for person in able if person.name not in stint.persons]
        return True

    def place_together(self, stints: Sequence[Stint]) -> bool:
        """Place stints that keep their distances in time, together as early as they fit.

        False when a prerequisite of them is not placed yet.
        """
        own = {stint.activity for stint in stints}
        if not all(self.ready(self._rest.work.activity(key), own) for key in own):
            return False
        shift, moved = 0, True
        while moved:
            moved = False
            for stint in stints:
                begin = self._begin(
                    replace(stint, start=stint.start + shift, end=stint.end + shift)
                )
                if begin > stint.start + shift:
                    shift, moved = begin - stint.start, True
        new = [replace(each, start=each.start + shift, end=each.end + shift) for each in stints]
        self._placed += new
        self.new += new
        return True

    def _begin(self, stint: Stint) -> int:
        """Return a stint's start, or when something is in the way, a later minute to try."""
        activity = self._rest.work.activity(stint.activity)
        earliest = max(stint.start, self._earliest(activity, stint.rows))
        crew = [person for person in self._rest.work.crew if person.name in stint.persons]
        if earliest > stint.start:
            return earliest
        if self._fits(activity, stint) and all(self._free(person, stint) for person in crew):
            return stint.start
        return stint.start + 1

    def _shares(self, mode: Mode, able: int) -> int:
        tools = self._rest.work.tools
        at_once = [tools[tool] // amount for tool, amount in mode.uses.items() if amount]
        return max(1, able if self._short else min([able, *at_once]))

    def _put(
        self, activity: Activity, way: int, rows: tuple[int, ...], able: Sequence[Person]
    ) -> Stint | None:
        mode = activity.modes[way]
        minutes = mode.duration(len(rows))
        for start in self._moments(activity, rows, able):
            stint = Stint(activity.key, start, start + minutes, (), rows, way)
            if not self._fits(activity, stint):
                continue
            free = [person for person in able if self._free(person, stint)]
            if len(free) >= mode.persons:
                names = tuple(person.name for person in free[: mode.persons])
                stint = Stint(activity.key, start, start + minutes, names, rows, way)
                self._placed.append(stint)
                self.new.append(stint)
                return stint
        return None

    def _moments(
        self, activity: Activity, rows: tuple[int, ...], able: Iterable[Person]
    ) -> list[int]:
        """Return the moments at which a stint can begin as early as anything allows."""
        earliest = self._earliest(activity, rows)
        gap = self._rest.work.state_minutes
        moments = {earliest, *(stint.end for stint in self._placed)}
        moments |= {stint.end + gap for stint in self._placed}
        moments |= {begin for person in able for begin, _ in person.hours}
        return sorted(moment for moment in moments if moment >= earliest)

    def _earliest(self, activity: Activity, rows: tuple[int, ...]) -> int:
        """Return the minute from which the prerequisites allow work on rows."""
        earliest = self._rest.release(activity)
        for stint in self._placed:
            by_row = stint.activity in activity.after_by_row and shares_rows(stint.rows, rows)
            if stint.activity in activity.after or by_row:
                wait = self._rest.gap(self._rest.work.activity(stint.activity), activity) or 0
                earliest = max(earliest, stint.end + wait)
        return earliest

    def _fits(self, activity: Activity, new: Stint) -> bool:
        """Tell whether the state of the machine and the shared tools allow a stint."""
        for stint in self._placed:
            gap = self._rest.gap(self._rest.work.activity(stint.activity), activity)
            if gap is not None and new.start < stint.end + gap and stint.start < new.end + gap:
                return False
        during = [each for each in self._placed if each.start < new.end and new.start < each.end]
        moments = {new.start, *(each.start for each in during if each.start > new.start)}
        return all(
            amount + sum(self._held(tool, each) for each in during if each.start <= at < each.end)
            <= self._rest.work.tools[tool]
            for tool, amount in activity.modes[new.mode].uses.items()
            for at in moments
        )

    def _held(self, tool: str, stint: Stint) -> int:
        return self._rest.work.activity(stint.activity).modes[stint.mode].uses.get(tool, 0)

    def _free(self, person: Person, new: Stint) -> bool:
        at_work = not person.hours or any(
            begin <= new.start and new.end <= end for begin, end in person.hours
        )
        return at_work and not any(
            person.name in stint.persons and stint.start < new.end and new.start < stint.end
            for stint in self._placed
        )


def _blocks(rows: tuple[int, ...], shares: int) -> list[tuple[int, ...]]:
    """Divide rows into even blocks that follow one another."""
    cuts = [len(rows) * share // shares for share in range(shares + 1)]
    return [rows[begin:end] for begin, end in pairwise(cuts) if begin < end]
