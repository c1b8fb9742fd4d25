"""What is printed and exported of one switch: plain texts and figures, ready for any file."""

from dataclasses import dataclass
from datetime import date

Shown = str | int | float | None


@dataclass(frozen=True)
class SheetPlace:
    """One box to tick: a row's number or the name of a group."""

    label: str
    done: bool = False


@dataclass(frozen=True)
class SheetPart:
    """A number of one part, with its name where the parts list has one."""

    code: str
    name: str
    count: int

    @property
    def text(self) -> str:
        return f"{self.count} × {self.code}"


@dataclass(frozen=True)
class SheetTask:
    """One task in words; ``minutes`` is for all its places, ``after`` the numbers before it."""

    number: int
    section: str
    title: str
    where: str
    places: tuple[SheetPlace, ...]
    minutes: float
    persons: int
    state: str
    tools: tuple[str, ...] = ()
    steps: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    parts_in: tuple[SheetPart, ...] = ()
    parts_out: tuple[SheetPart, ...] = ()
    after: tuple[int, ...] = ()
    why: str = ""

    @property
    def done(self) -> int:
        return sum(place.done for place in self.places)


@dataclass(frozen=True)
class SheetKitLine:
    """One part to lay out against the shelf.

    ``released`` come off and are to be inspected; ``to_inspect`` wait on the shelf for that.
    ``others`` says which other planters need the part.
    """

    part: str
    name: str
    needed: int
    on_shelf: int
    short: int
    bins: str = ""
    released: int = 0
    to_inspect: int = 0
    others: str = ""


@dataclass(frozen=True)
class SheetSetting:
    """One cell of the planter: as found and target as figures in ``unit``, or as text."""

    place: str
    setting: str
    before: Shown
    after: Shown
    unit: str
    differs: bool


@dataclass(frozen=True)
class SheetLogLine:
    """One line of the clean-out log; ``into`` names the container of the seed recovered."""

    when: str
    who: str
    where: str
    what: str
    lot_before: str
    lot_after: str
    steps: tuple[str, ...] = ()
    into: str = ""
    inspection: bool = False


@dataclass(frozen=True)
class SheetLabel:
    """One label for a bag of parts: planter, place, and the parts in it."""

    planter: str
    place: str
    parts: tuple[SheetPart, ...]
    person: str = ""


@dataclass(frozen=True)
class WorklistSheet:
    """All of one switch that goes on paper or into a workbook, in the units on the screen."""

    planter: str
    now: str
    next: str
    field: str
    made_on: date
    units: str
    tasks: tuple[SheetTask, ...] = ()
    kit: tuple[SheetKitLine, ...] = ()
    back: tuple[SheetPart, ...] = ()
    settings: tuple[SheetSetting, ...] = ()
    cautions: tuple[str, ...] = ()
    log: tuple[SheetLogLine, ...] = ()
    log_missing: tuple[str, ...] = ()

    @property
    def title(self) -> str:
        return f"{self.planter}: {self.now} → {self.next}" if self.now else self.planter

    @property
    def sections(self) -> tuple[tuple[str, tuple[SheetTask, ...]], ...]:
        """The tasks under their headings, in the order in which headings first come."""
        names = dict.fromkeys(task.section for task in self.tasks)
        return tuple((name, tuple(t for t in self.tasks if t.section == name)) for name in names)

    @property
    def minutes(self) -> float:
        """The working minutes of the whole list, every person's added up."""
        return sum(task.minutes * task.persons for task in self.tasks)
