"""Work for crew timetables: drawn at random, and small enough to try everything."""

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import replace

from hypothesis import strategies as st

from changeover.switch.timetable.solve import Activity, Mode, Person, Stint, Work

STATES = (None, "raised", "lowered")


@st.composite
def works(draw: st.DrawFn, most: int = 5, rows: int = 6) -> Work:
    """Draw work that a crew of up to three can do, without hours."""
    crew = tuple(
        Person(name, draw(st.sampled_from([frozenset[str](), frozenset({"meters"})])))
        for name in ("Ann", "Bo", "Cy")[: draw(st.integers(1, 3))]
    )
    skilled = any(person.skills for person in crew)
    activities: list[Activity] = []
    for number in range(draw(st.integers(1, most))):
        activities.append(draw(_activities(number, activities, len(crew), skilled, rows)))
    return Work(tuple(activities), crew, {"vacuum": 1}, draw(st.integers(0, 3)))


@st.composite
def with_breaks(draw: st.DrawFn, work: Work) -> Work:
    """Draw a break for some of the crew of a work."""
    crew = []
    for person in work.crew:
        begin, minutes = draw(st.integers(2, 12)), draw(st.integers(1, 9))
        hours = draw(st.sampled_from([(), ((0, begin), (begin + minutes, 400))]))
        crew.append(replace(person, hours=hours))
    return replace(work, crew=tuple(crew))


@st.composite
def _activities(
    draw: st.DrawFn, number: int, earlier: Sequence[Activity], crew: int, skilled: bool, rows: int
) -> Activity:
    skill = draw(st.sampled_from([None, "meters"])) if skilled else None
    persons = 1 if skill else draw(st.integers(1, crew))
    modes = tuple(
        Mode(
            draw(st.integers(1, 4)),
            draw(st.sampled_from([0, 0.5, 1, 1.25])),
            persons,
            {"vacuum": draw(st.integers(0, 1))},
        )
        for _ in range(draw(st.integers(1, 2)))
    )
    before = [each.key for each in earlier if draw(st.integers(0, 3)) == 0]
    by_row = draw(st.booleans())
    others = [] if skill or persons > 1 or crew == 1 else [None, None, *_by_one(earlier)]
    other = draw(st.sampled_from(others)) if others else None
    return Activity(
        f"task {number}",
        modes,
        rows=tuple(sorted(draw(st.sets(st.integers(1, rows))))),
        after=() if by_row else tuple(before),
        after_by_row=tuple(before) if by_row else (),
        state=draw(st.sampled_from(STATES)),
        skill=skill,
        place=draw(st.one_of(st.none(), st.integers(1, rows))),
        not_by=() if other is None else (other,),
    )


def _by_one(activities: Sequence[Activity]) -> list[str]:
    """Return the keys of work that one person does, so that somebody else is left."""
    return [each.key for each in activities if each.modes[0].persons == 1]


def least_by_trying(work: Work) -> int:
    """Return the least length over all divisions, persons, ways and orders of the work.

    Taking blocks in every order, each as early as it fits, meets a shortest timetable.
    """
    choices = [list(_divisions(work, activity)) for activity in work.activities]
    best = 10_000
    for chosen in itertools.product(*choices):
        blocks = [block for division in chosen for block in division]
        if same_persons(work, blocks):
            continue
        for order in itertools.permutations(blocks):
            best = min(best, _length(work, order, best))
    return best


def same_persons(work: Work, stints: Sequence[Stint]) -> list[str]:
    """Return what somebody does who does what only others may do beside it."""
    who = {
        activity.key: {n for s in stints if s.activity == activity.key for n in s.persons}
        for activity in work.activities
    }
    return [
        f"{activity.key} is done by somebody who does {key}"
        for activity in work.activities
        for key in activity.not_by
        if who[activity.key] & who[key]
    ]


def _divisions(work: Work, activity: Activity) -> Iterator[list[Stint]]:
    able = [person.name for person in work.crew if person.can(activity)]
    rows = activity.rows
    if not activity.shared_out:
        for way, mode in enumerate(activity.modes):
            for names in itertools.combinations(able, mode.persons):
                yield [_stint(activity, names, rows, way)]
        return
    for shares in range(1, min(len(able), len(rows)) + 1):
        for cuts in itertools.combinations(range(1, len(rows)), shares - 1):
            ends = (0, *cuts, len(rows))
            for names in itertools.permutations(able, shares):
                for ways in itertools.product(range(len(activity.modes)), repeat=shares):
                    yield [
                        _stint(activity, (names[at],), rows[ends[at] : ends[at + 1]], ways[at])
                        for at in range(shares)
                    ]


def _stint(activity: Activity, names: tuple[str, ...], rows: tuple[int, ...], way: int) -> Stint:
    return Stint(activity.key, 0, activity.modes[way].duration(len(rows)), names, rows, way)


def _length(work: Work, order: Sequence[Stint], best: int) -> int:
    placed: list[Stint] = []
    for block in order:
        activity = work.activity(block.activity)
        waiting = [each for each in order if each not in placed and _waits(activity, block, each)]
        if waiting:
            return best
        start = 0
        while _clashes(work, moved(block, start), placed):
            start += 1
        placed.append(moved(block, start))
        if placed[-1].end >= best:
            return best
        order = [placed[-1] if each is block else each for each in order]
    return max(each.end for each in placed)


def moved(block: Stint, start: int) -> Stint:
    """Return a block of which only the length counts, begun at a start."""
    length = block.end - block.start
    return Stint(block.activity, start, start + length, block.persons, block.rows, block.mode)


def _waits(activity: Activity, block: Stint, other: Stint) -> bool:
    meet = not block.rows or not other.rows or _spans_meet(block.rows, other.rows)
    return other.activity in activity.after or (other.activity in activity.after_by_row and meet)


def _spans_meet(one: Sequence[int], other: Sequence[int]) -> bool:
    return one[0] <= other[-1] and other[0] <= one[-1]


def _away(work: Work, block: Stint) -> bool:
    """Tell whether somebody at a block is not at work all the while."""
    return any(
        person.hours and not any(a <= block.start and block.end <= b for a, b in person.hours)
        for person in work.crew
        if person.name in block.persons
    )


def _clashes(work: Work, block: Stint, placed: Sequence[Stint]) -> bool:
    activity = work.activity(block.activity)
    vacuum = activity.modes[block.mode].uses.get("vacuum", 0)
    if _away(work, block):
        return True
    for other in placed:
        theirs = work.activity(other.activity)
        apart = None not in (activity.state, theirs.state) and activity.state != theirs.state
        gap = work.state_minutes if apart else 0
        shared = (
            apart
            or set(block.persons) & set(other.persons)
            or (vacuum and theirs.modes[other.mode].uses.get("vacuum", 0))
        )
        if _waits(activity, block, other) and block.start < other.end + gap:
            return True
        if shared and block.start < other.end + gap and other.start < block.end + gap:
            return True
    return False
