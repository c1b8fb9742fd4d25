"""What must hold in every timetable, checked minute by minute apart from the solver."""

from collections.abc import Sequence

from changeover.switch.timetable.solve import Activity, Stint, Work
from tests.switch.timetable_cases import same_persons


def broken(
    work: Work, stints: Sequence[Stint], done: Sequence[Stint] = (), now: int = 0
) -> list[str]:
    """Return what is wrong with a timetable, in words; nothing when it is right."""
    new = [stint for stint in stints if stint not in done]
    return [
        *(f"{stint} begins before {now}" for stint in new if stint.start < now),
        *(f"{stint} is lost" for stint in done if stint not in stints),
        *_wrong_stints(work, new),
        *_wrong_rows(work, stints),
        *same_persons(work, stints),
        *_wrong_order(work, new, stints),
        *_wrong_minutes(work, stints, now),
    ]


def _wrong_stints(work: Work, stints: Sequence[Stint]) -> list[str]:
    wrong = []
    for stint in stints:
        activity = work.activity(stint.activity)
        mode = activity.modes[stint.mode]
        crew = [person for person in work.crew if person.name in stint.persons]
        if stint.end - stint.start != mode.duration(len(stint.rows)):
            wrong.append(f"{stint} has the wrong length")
        if len(crew) != mode.persons or len(stint.persons) != mode.persons:
            wrong.append(f"{stint} has the wrong number of persons")
        for person in crew:
            if activity.skill is not None and activity.skill not in person.skills:
                wrong.append(f"{person.name} lacks {activity.skill}")
            hours = person.hours or ((stint.start, stint.end),)
            if not any(begin <= stint.start and stint.end <= end for begin, end in hours):
                wrong.append(f"{stint} is outside the hours of {person.name}")
    return wrong


def _wrong_rows(work: Work, stints: Sequence[Stint]) -> list[str]:
    wrong = []
    for activity in work.activities:
        mine = [stint for stint in stints if stint.activity == activity.key]
        rows = sorted(row for stint in mine for row in stint.rows)
        if not mine or rows != list(activity.rows):
            wrong.append(f"{activity.key} covers {rows}")
    return wrong


def contiguous(activity: Activity, stint: Stint) -> bool:
    """Tell whether the rows of a stint follow one another in the activity."""
    first = activity.rows.index(min(stint.rows))
    return tuple(sorted(stint.rows)) == activity.rows[first : first + len(stint.rows)]


def _wrong_order(work: Work, new: Sequence[Stint], stints: Sequence[Stint]) -> list[str]:
    wrong = []
    for stint in new:
        activity = work.activity(stint.activity)
        for other in stints:
            by_row = other.activity in activity.after_by_row and (
                not stint.rows or not other.rows or set(stint.rows) & set(other.rows)
            )
            if (other.activity in activity.after or by_row) and other.end > stint.start:
                wrong.append(f"{stint} begins before {other} has ended")
    return wrong


def _wrong_minutes(work: Work, stints: Sequence[Stint], now: int) -> list[str]:
    wrong = []
    for minute in range(now, max((stint.end for stint in stints), default=0)):
        during = [stint for stint in stints if stint.start <= minute < stint.end]
        names = [name for stint in during for name in stint.persons]
        if len(names) != len(set(names)):
            wrong.append(f"a person is at two places in minute {minute}")
        for tool, capacity in work.tools.items():
            modes = [work.activity(each.activity).modes[each.mode] for each in during]
            if sum(mode.uses.get(tool, 0) for mode in modes) > capacity:
                wrong.append(f"too much {tool} in minute {minute}")
        wrong += _wrong_states(work, stints, during, minute)
    return wrong


def _wrong_states(
    work: Work, stints: Sequence[Stint], during: Sequence[Stint], minute: int
) -> list[str]:
    """Return clashes between work of a minute and other states within the minutes between."""
    near = [
        stint
        for stint in stints
        if stint.start <= minute + work.state_minutes and minute - work.state_minutes < stint.end
    ]
    states = {work.activity(stint.activity).state for stint in near}
    here = {work.activity(stint.activity).state for stint in during}
    return [
        f"states {one} and {other} meet in minute {minute}"
        for one in here - {None}
        for other in states - {None}
        if one != other
    ]
