"""Refuse work that no timetable can hold, naming the activity and what to change."""

from collections.abc import Iterable, Sequence

from changeover.quantities import Refusal, how_many
from changeover.switch.timetable.apart import cases
from changeover.switch.timetable.model import Activity, Mode, Person, Stint, Work
from changeover.switch.timetable.rest import Rest


def refuse_impossible(work: Work, done: Sequence[Stint], now: int) -> None:
    """Raise Refusal when the work, or what is said to be done of it, cannot hold together."""
    _refuse_twice("activity", [activity.key for activity in work.activities])
    _refuse_twice("person", [person.name for person in work.crew])
    for person in work.crew:
        _refuse_hours(person)
    if work.state_minutes < 0:
        raise Refusal("The minutes between machine states are below zero; give 0 or more.")
    known = {activity.key for activity in work.activities}
    for activity in work.activities:
        _refuse_activity(activity, known, work)
    _refuse_circle(work.activities)
    for stint in done:
        _refuse_done(stint, work, now)


def refuse_too_few(rest: Rest) -> None:
    """Raise Refusal when nobody is left for work that others must not have done."""
    for activity in rest.todo:
        if activity.not_by and not cases(rest.work.crew, _alone_with(activity, rest.todo)):
            others = ", ".join(f"“{key}”" for key in activity.not_by)
            raise Refusal(
                f"“{activity.key}” must be done by nobody who does {others}, and the crew has "
                "not enough persons for that; add a person who can do it."
            )


def _alone_with(activity: Activity, todo: Sequence[Activity]) -> list[Activity]:
    return [each for each in todo if each is activity or each.key in activity.not_by]


def _refuse_twice(what: str, names: Iterable[str]) -> None:
    seen: set[str] = set()
    for name in names:
        if name in seen:
            raise Refusal(f"The {what} “{name}” is there twice; give each {what} its own name.")
        seen.add(name)


def _refuse_hours(person: Person) -> None:
    last = 0
    for begin, end in person.hours:
        if not last <= begin < end:
            raise Refusal(
                f"The hours of {person.name} are not in order ({begin} to {end}); "
                "give stretches one after another, each ending after it begins."
            )
        last = end


def _refuse_activity(activity: Activity, known: set[str], work: Work) -> None:
    for before in (*activity.after, *activity.after_by_row):
        if before not in known:
            raise Refusal(
                f"“{activity.key}” comes after “{before}”, which is not in the work; "
                "add that activity or take the prerequisite away."
            )
    for other in activity.not_by:
        if other not in known or other == activity.key:
            raise Refusal(
                f"“{activity.key}” must be done by somebody else than “{other}”, which is "
                "not other work of the timetable; name other work or take that away."
            )
    if not activity.modes:
        raise Refusal(f"“{activity.key}” has no way to be done; give it minutes and persons.")
    if list(activity.rows) != sorted(set(activity.rows)):
        raise Refusal(f"The rows of “{activity.key}” are not ascending; name each row once.")
    able = [person for person in work.crew if person.can(activity)]
    for mode in activity.modes:
        _refuse_mode(activity, mode, work, len(able))
    _refuse_long(activity, able)


def _refuse_mode(activity: Activity, mode: Mode, work: Work, able: int) -> None:
    if min(mode.minutes, mode.minutes_per_row, mode.persons, *mode.uses.values(), 0) < 0:
        raise Refusal(f"“{activity.key}” has a time or number below zero; give 0 or more.")
    if mode.persons > able:
        skill = f" with the skill “{activity.skill}”" if activity.skill else ""
        raise Refusal(
            f"“{activity.key}” needs {how_many(mode.persons, 'person')}{skill} and the crew has "
            f"{able}; add a person to the crew or the skill to a person."
        )
    for tool, amount in mode.uses.items():
        if amount > work.tools.get(tool, 0):
            raise Refusal(
                f"“{activity.key}” needs {amount} of “{tool}” at once and there are "
                f"{work.tools.get(tool, 0)}; get more of it or do the work another way."
            )


def _refuse_long(activity: Activity, able: Sequence[Person]) -> None:
    """Refuse an activity in one go that no stretch of anyone's hours can hold."""
    stretches = [end - begin for person in able for begin, end in person.hours]
    timed = [person for person in able if person.hours]
    if activity.shared_out or not able or len(timed) < len(able):
        return
    shortest = min(mode.duration(len(activity.rows)) for mode in activity.modes)
    if all(mode.persons for mode in activity.modes) and shortest > max(stretches):
        raise Refusal(
            f"“{activity.key}” takes {shortest} min in one go and the longest stretch of hours is "
            f"{max(stretches)} min; lengthen the hours or split the activity."
        )


def _refuse_circle(activities: Sequence[Activity]) -> None:
    before = {each.key: (*each.after, *each.after_by_row) for each in activities}
    finished: set[str] = set()
    for key in before:
        circle = _circle(key, before, finished)
        if circle:
            raise Refusal(
                f"The prerequisites go round in a circle: {' after '.join(circle)}; "
                "take one of them away."
            )


def _circle(key: str, before: dict[str, tuple[str, ...]], finished: set[str]) -> list[str]:
    """Return a circle of prerequisites that can be reached from an activity, or nothing."""
    path: list[str] = [key]
    choices = [iter(before[key])]
    while path:
        nearest = next(choices[-1], None)
        if nearest is None:
            finished.add(path.pop())
            choices.pop()
        elif nearest in path:
            return [*path[path.index(nearest) :], nearest]
        elif nearest not in finished:
            path.append(nearest)
            choices.append(iter(before[nearest]))
    return []


def _refuse_done(stint: Stint, work: Work, now: int) -> None:
    keys = {activity.key for activity in work.activities}
    if stint.activity not in keys:
        raise Refusal(
            f"“{stint.activity}” is said to be done and is not in the work; "
            "add the activity or take the entry away."
        )
    activity = work.activity(stint.activity)
    if not set(stint.rows) <= set(activity.rows):
        raise Refusal(
            f"Row(s) {', '.join(str(row) for row in sorted(set(stint.rows) - set(activity.rows)))} "
            f"are said to be done in “{stint.activity}”, which has no such rows; correct the rows."
        )
    if stint.start > now or stint.end < stint.start:
        raise Refusal(
            f"“{stint.activity}” is said to have begun at minute {stint.start}, and it is minute "
            f"{now}; leave out what has not begun."
        )
