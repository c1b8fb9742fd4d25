"""The kit: parts to lay out for a switch against the shelf, what is short, what comes back."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from changeover.planter.parts import USABLE, Condition, Part, ShelfCount
from changeover.planter.places import Place
from changeover.planter.setup import Value
from changeover.switch.progress import Progress
from changeover.switch.tasks import Change, Kit, KitLine, PartCount, Worklist

COMES_BACK_AS = Condition.INSPECT


@dataclass(frozen=True)
class Label:
    """One label to print: the part, the row or group it is for, and the planter."""

    part: str
    name: str
    place: Place
    planter: str


def kit(work: Worklist | Progress, parts: Iterable[Part], shelf: Iterable[ShelfCount]) -> Kit:
    """Return the parts to lay out, and those that come back.

    Of a whole worklist, or of what is left when given its progress. Only new and good parts on
    the shelf count. Parts that come off come back to be inspected, so they do not fill a gap;
    how many they are stands beside it. Lines that are short come first, then the most needed.
    """
    return kit_of(part_changes(work), parts, shelf, _without_swap(work))


def kit_of(
    swaps: Iterable[Change],
    parts: Iterable[Part],
    shelf: Iterable[ShelfCount],
    more: Mapping[str, int] = MappingProxyType({}),
) -> Kit:
    """Return the kit of the swaps still to be made, and of ``more`` parts that replace no other."""
    every = tuple(swaps)
    needed = _counts(change.after for change in every) + Counter(more)
    back = _counts(change.before for change in every)
    names = {part.code: part.name for part in parts}
    counted = tuple(shelf)
    lines = [
        KitLine(
            part=code,
            name=names.get(code, ""),
            needed=count,
            on_shelf=usable(code, counted),
            bins=bins(code, counted),
            released=back.get(code, 0),
            to_inspect=waiting(code, counted),
        )
        for code, count in needed.items()
    ]
    lines.sort(key=lambda line: (line.short == 0, -line.needed, line.part))
    return Kit(tuple(lines), tuple(PartCount(code, count) for code, count in back.items()))


def part_changes(work: Worklist | Progress) -> tuple[Change, ...]:
    """Return every swap of a part, those already made left out when given a progress."""
    if isinstance(work, Progress):
        tasks = work.worklist.tasks
        left = (work.changes_left(task, place) for task in tasks for place in task.places)
    else:
        left = (task.changes.get(place, ()) for task in work.tasks for place in task.places)
    return tuple(change for changes in left for change in changes if change.part)


def _without_swap(work: Worklist | Progress) -> Counter[str]:
    """Count the parts of tasks that set nothing, such as a worn part that is replaced."""
    tasks = work.worklist.tasks if isinstance(work, Progress) else work.tasks
    found: Counter[str] = Counter()
    for task in tasks:
        if not task.changes and (not isinstance(work, Progress) or work.left(task)):
            found.update({one.part: one.count for one in task.parts_in})
    return found


def _counts(codes: Iterable[Value | None]) -> Counter[str]:
    return Counter(str(code) for code in codes if code is not None)


def usable(part: str, shelf: Iterable[ShelfCount]) -> int:
    """Return how many of a part on the shelf may be laid out."""
    return sum(c.count for c in shelf if c.part == part and c.condition in USABLE)


def waiting(part: str, shelf: Iterable[ShelfCount]) -> int:
    """Return how many of a part wait on the shelf to be inspected."""
    return sum(c.count for c in shelf if c.part == part and c.condition is COMES_BACK_AS)


def bins(part: str, shelf: Iterable[ShelfCount]) -> tuple[str, ...]:
    """Return the bins that hold usable ones of a part."""
    held = (c for c in shelf if c.part == part and c.condition in USABLE and c.count)
    return tuple(dict.fromkeys(count.bin for count in held if count.bin))


def labels(work: Worklist | Progress, planter: str, parts: Iterable[Part]) -> tuple[Label, ...]:
    """Return one label for every part to lay out, by place from the left."""
    names = {part.code: part.name for part in parts}
    return tuple(
        Label(str(c.after), names.get(str(c.after), ""), c.cell.place, planter)
        for c in sorted(part_changes(work), key=lambda c: c.cell.place.row or 0)
    )
