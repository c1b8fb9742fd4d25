"""Switches of 48 rows with 12 kinds of task for a crew of four, made up for the benchmark."""

from dataclasses import replace

from changeover.switch.timetable import Activity, Mode, Person, Work

ROWS = tuple(range(1, 49))
RAISED, LOWERED, FAN, OFF = "raised and locked", "lowered", "fan running", "power off"


def _at_once(key: str, minutes: int, state: str | None, *after: str, persons: int = 1) -> Activity:
    return Activity(key, (Mode(minutes, persons=persons),), after=after, state=state, place=24)


def _on_rows(
    key: str,
    once: int,
    each: float,
    state: str | None,
    after: str = "",
    by_row: str = "",
    skill: str | None = None,
    **uses: int,
) -> Activity:
    return Activity(
        key,
        (Mode(once, each, uses=uses),),
        ROWS,
        after=tuple(filter(None, [after])),
        after_by_row=tuple(filter(None, [by_row])),
        state=state,
        skill=skill,
    )


def corn_to_beans() -> Work:
    """Return the tasks of a switch with clean-out, their minutes as the standard minutes give."""
    return Work(
        activities=(
            _at_once("stop", 5, OFF),
            Activity(
                "tanks", (Mode(29, uses={"vacuum": 1}),), after=("stop",), state=OFF, place=24
            ),
            _on_rows("hoses", 3, 1, OFF, "tanks", vacuum=1),
            _on_rows("meters", 4, 5.5, OFF, by_row="hoses", vacuum=1),
            _at_once("raise", 5, RAISED),
            _on_rows("tubes", 3, 1, RAISED, "raise", "meters"),
            _on_rows("depth", 2, 1, RAISED, "raise"),
            _on_rows("closing", 1, 0.5, RAISED, "raise"),
            _at_once("floor", 10, OFF, "tubes"),
            _at_once("fill", 25, OFF, "floor"),
            _at_once("fans", 12, FAN, "fill"),
            _on_rows("bench", 5, 1, None, by_row="meters", stand=1),
        ),
        crew=tuple(Person(name, place=24) for name in ("Ann", "Bo", "Cy", "Di")),
        tools={"vacuum": 1, "stand": 2},
        state_minutes=3,
    )


def with_lunch() -> Work:
    """Return the switch from corn to beans begun at 7:00 by a crew that eats from 12 to 13."""
    work = corn_to_beans()
    hours = ((0, 5 * 60), (6 * 60, 12 * 60))
    return replace(work, crew=tuple(replace(person, hours=hours) for person in work.crew))


def by_turns() -> Work:
    """Return the harder switch begun at 10:00, two eating from 12 to 13 and two from 13 to 14."""
    work = short_of_hands()
    noons = (2 * 60, 2 * 60, 3 * 60, 3 * 60)
    crew = (
        replace(person, hours=((0, noon), (noon + 60, 10 * 60)))
        for person, noon in zip(work.crew, noons, strict=True)
    )
    return replace(work, crew=tuple(crew))


def short_of_hands() -> Work:
    """Return a harder switch: three of four can do meters, which wait for one seed vacuum."""
    return Work(
        activities=(
            _at_once("tanks", 25, LOWERED, persons=2),
            _at_once("raise", 10, RAISED, persons=2),
            _at_once("wash", 30, None, "tanks"),
            _at_once("controller", 20, None),
            _at_once("fans", 15, FAN, "meters"),
            _on_rows("vacuum", 2, 1, OFF, "tanks", vacuum=1),
            _on_rows("meters", 2, 5, OFF, by_row="vacuum", skill="meters"),
            _on_rows("spin", 2, 1.5, None, by_row="meters", stand=1),
            _on_rows("depth", 2, 1, LOWERED),
            _on_rows("closing", 2, 0.75, RAISED, "raise"),
            _on_rows("row cleaners", 2, 2, RAISED, "raise"),
            _on_rows("tubes", 2, 1, RAISED, "raise"),
        ),
        crew=(
            *(Person(name, frozenset({"meters"}), place=24) for name in ("Ann", "Bo", "Cy")),
            Person("Di", place=24),
        ),
        tools={"vacuum": 1, "stand": 2},
        state_minutes=3,
    )
