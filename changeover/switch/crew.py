"""The crew: who is there with which skills and hours, and the tools that they share."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from changeover.quantities import Refusal
from changeover.switch.sections import ORDER

SKILLS = ORDER
"""What a person can do: the headings of the worklist."""

DAY = 24 * 60
_SPAN = re.compile(r"\s*(\d{1,2})(?::(\d{2}))?\s*[-–]\s*(\d{1,2})(?::(\d{2}))?\s*")

Hours = tuple[tuple[int, int], ...]


@dataclass(frozen=True)
class CrewMember:
    """One person: what they can do (nothing named means everything) and their hours.

    ``hours`` are pairs of minutes from midnight, none meaning the whole day; ``here`` says
    whether they work today. Raises Refusal for hours that cannot be.
    """

    name: str
    skills: frozenset[str] = frozenset()
    hours: Hours = ()
    here: bool = True

    def __post_init__(self) -> None:
        if not self.name.strip():
            raise Refusal("A person of the crew has no name; enter one.")
        for skill in sorted(self.skills):
            if skill not in SKILLS:
                raise Refusal(
                    f"{self.name}: “{skill}” is no skill; choose among {', '.join(SKILLS)}."
                )
        last = 0
        for begin, end in self.hours:
            if not last <= begin < end <= DAY:
                raise Refusal(
                    f"{self.name}: the hours are not in order; write them like 7:00-12:00, "
                    "13:00-18:00."
                )
            last = end

    @property
    def abilities(self) -> frozenset[str]:
        """Every heading of the worklist under which this person can work."""
        return self.skills or frozenset(SKILLS)


@dataclass(frozen=True)
class SharedTool:
    """A tool of which there are only so many; tools that are not listed are never waited for."""

    name: str
    count: int = 1

    def __post_init__(self) -> None:
        if not self.name.strip():
            raise Refusal("A shared tool has no name; enter one, such as seed vacuum.")
        if self.count < 0:
            raise Refusal(f"There cannot be {self.count} of “{self.name}”; enter 0 or more.")


def read_hours(text: str) -> Hours:
    """Read hours such as ``7:00-12:00, 13-18``; an empty text means the whole day.

    Raises Refusal for anything else.
    """
    spans = []
    for part in filter(None, (part.strip() for part in text.split(","))):
        found = _SPAN.fullmatch(part)
        if found is None:
            raise Refusal(f"“{part}” are no hours; write them like 7:00-12:00, 13:00-18:00.")
        begin, end = (int(found[n]) * 60 + int(found[n + 1] or 0) for n in (1, 3))
        if not begin < end <= DAY:
            raise Refusal(f"“{part}” does not end after it begins; write it like 7:00-12:00.")
        spans.append((begin, end))
    return tuple(spans)


def hours_text(hours: Hours) -> str:
    """Write hours as ``7:00-12:00, 13:00-18:00``."""
    return ", ".join(f"{clock_text(begin)}-{clock_text(end)}" for begin, end in hours)


def clock_text(minute: int) -> str:
    """Write a minute of the day as ``7:05``; past 24:00 the next day begins at 0:01."""
    hour = 24 if minute == DAY else minute // 60 % 24
    return f"{hour}:{minute % 60:02d}"


def named(crew: Iterable[CrewMember], names: Iterable[str]) -> tuple[CrewMember, ...]:
    """Return the persons of these names; one who is not entered can do everything all day."""
    known = {one.name: one for one in crew}
    return tuple(known.get(name, CrewMember(name)) for name in dict.fromkeys(names))
