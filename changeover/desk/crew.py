"""The crew and its shared tools as lists, and the edits that a typed text makes of them."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from changeover.desk.shop_edits import PutMember, PutTool
from changeover.quantities import Refusal
from changeover.store.opening import Store
from changeover.switch.crew import SKILLS, CrewMember, SharedTool, hours_text, read_hours

COMMON_TOOLS = ("seed vacuum", "bench stand", "vacuum gauge")
HERE, AWAY = "here", "away"
EVERYTHING = "everything"


@dataclass(frozen=True)
class Crew:
    """The persons and the shared tools of a store, sorted by name."""

    members: tuple[CrewMember, ...] = ()
    tools: tuple[SharedTool, ...] = ()


def crew(store: Store) -> Crew:
    """Return the persons and shared tools of a store."""
    with store.read() as work:
        return Crew(work.crew.all(), work.tools.all())


def add_member(name: str) -> PutMember:
    """Return the edit that adds a person who can do everything. Raises Refusal."""
    return PutMember(CrewMember(name.strip()))


def add_tool(name: str) -> PutTool:
    """Return the edit that adds a shared tool of which there is one. Raises Refusal."""
    return PutTool(SharedTool(name.strip()))


def rename_member(member: CrewMember, text: str) -> PutMember:
    """Return the edit for a typed name. Raises Refusal."""
    return PutMember(replace(member, name=text.strip()), before=member)


def set_skills(member: CrewMember, text: str) -> PutMember:
    """Return the edit for typed skills, such as ``meters, tanks``. Raises Refusal."""
    return PutMember(replace(member, skills=read_skills(text)), before=member)


def set_hours(member: CrewMember, text: str) -> PutMember:
    """Return the edit for typed hours, such as ``7:00-12:00, 13-18``. Raises Refusal."""
    return PutMember(replace(member, hours=read_hours(text)), before=member)


def set_here(member: CrewMember, text: str) -> PutMember:
    """Return the edit for ``here`` or ``away``. Raises Refusal."""
    word = text.strip().casefold()
    if word not in (HERE, AWAY):
        raise Refusal(f"{member.name}: write {HERE} or {AWAY}, not “{text}”.")
    return PutMember(replace(member, here=word == HERE), before=member)


def turn_here(member: CrewMember) -> PutMember:
    """Return the edit that sends a person away, or brings them back."""
    return PutMember(replace(member, here=not member.here), before=member)


def set_count(tool: SharedTool, text: str) -> PutTool:
    """Return the edit for a typed count. Raises Refusal."""
    if not text.strip().removeprefix("-").isdigit():
        raise Refusal(f"{tool.name}: “{text}” is not a whole number; write it like 2.")
    return PutTool(replace(tool, count=int(text)), before=tool)


def read_skills(text: str) -> frozenset[str]:
    """Read skills as headings of the worklist, in any case; empty means everything.

    Raises Refusal for a word that is no heading or the beginning of several.
    """
    words = [word.strip().casefold() for word in text.split(",") if word.strip()]
    if words == [EVERYTHING]:
        return frozenset()
    return frozenset(_skill(word) for word in words)


def _skill(word: str) -> str:
    found = [skill for skill in SKILLS if skill.casefold().startswith(word)]
    exact = [skill for skill in found if skill.casefold() == word]
    if len(found) != 1 and not exact:
        raise Refusal(f"“{word}” is no skill; choose among {', '.join(SKILLS)}.")
    return (exact or found)[0]


def skills_text(member: CrewMember) -> str:
    """Write a person's skills in the order of work, or that they can do everything."""
    held = [skill.lower() for skill in SKILLS if skill in member.skills]
    return ", ".join(held) or EVERYTHING


def here_text(member: CrewMember) -> str:
    """Say whether a person is here."""
    return HERE if member.here else AWAY


def day_text(member: CrewMember) -> str:
    """Write a person's hours, or that they are there all day."""
    return hours_text(member.hours) or "all day"


def first_tools(there: Iterable[SharedTool]) -> tuple[str, ...]:
    """Return the names of common shared tools that are not entered yet."""
    names = {tool.name for tool in there}
    return tuple(name for name in COMMON_TOOLS if name not in names)
