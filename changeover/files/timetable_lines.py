"""A crew's timetable as it goes on paper: persons, and the stints of each."""

from dataclasses import dataclass
from datetime import date

from changeover.files.sheet import SheetPlace


@dataclass(frozen=True)
class StintLine:
    """One stint on paper: minutes of the day, its words, and the places to tick.

    ``short`` fits on a bar, else ``number``, that of the task on the worklist, stands for it;
    ``about`` tells machine state, tools and parts, ``steps`` how the work is done.
    """

    begin: int
    end: int
    when: str
    title: str
    short: str
    places: tuple[SheetPlace, ...]
    about: str = ""
    steps: tuple[str, ...] = ()
    number: int | None = None


@dataclass(frozen=True)
class PersonSheet:
    """One person with their stints in the order of time."""

    name: str
    stints: tuple[StintLine, ...]


@dataclass(frozen=True)
class TimetableSheet:
    """A timetable as it goes on paper; ``says`` is its length and what is proved of it."""

    planter: str
    about: str
    says: str
    persons: tuple[PersonSheet, ...]
    cautions: tuple[str, ...]
    made_on: date

    @property
    def span(self) -> tuple[int, int]:
        """The first and the last minute of the day."""
        every = [stint for person in self.persons for stint in person.stints]
        return min(one.begin for one in every), max(one.end for one in every)
