"""Groups: rows that share a drive, a fan, a tank segment, a circuit or a controller."""

import itertools
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from changeover.planter.places import GROUP_SORTS, Place, Scope
from changeover.quantities import Refusal, how_many


@dataclass(frozen=True)
class Group:
    """Rows that share one thing of one sort; ``rows`` are row numbers from the left, rising."""

    sort: Scope
    name: str
    rows: tuple[int, ...]

    def __post_init__(self) -> None:
        if self.sort not in GROUP_SORTS:
            raise Refusal(f"A group cannot be of sort “{self.sort}”; choose drive, fan or tank.")
        if not self.name.strip():
            raise Refusal(f"A {self.sort} group has no name; give it one, such as “{self.sort} 1”.")
        if not self.rows:
            raise Refusal(f"The group “{self.name}” has no rows; give it at least one.")
        object.__setattr__(self, "rows", tuple(sorted(self.rows)))

    @property
    def place(self) -> Place:
        return Place(self.sort, self.name)


def check_groups(groups: Iterable[Group], rows: int) -> None:
    """Refuse groups that leave a row out, hold one twice or share a name within their sort.

    Raises Refusal. A sort of which there is no group at all is allowed.
    """
    listed = tuple(groups)
    for sort in GROUP_SORTS:
        of_sort = [group for group in listed if group.sort is sort]
        if of_sort:
            _check_sort(sort, of_sort, rows)


def _check_sort(sort: Scope, groups: list[Group], rows: int) -> None:
    names = Counter(group.name for group in groups)
    for name, times in names.items():
        if times > 1:
            raise Refusal(f"Two {sort} groups are called “{name}”; rename one.")
    held = Counter(row for group in groups for row in group.rows)
    for row, times in sorted(held.items()):
        if not 1 <= row <= rows:
            raise Refusal(f"A {sort} group names row {row}, but the planter has rows 1 to {rows}.")
        if times > 1:
            raise Refusal(f"Row {row} is in two {sort} groups; leave it in one.")
    for row in range(1, rows + 1):
        if row not in held:
            raise Refusal(f"Row {row} is in no {sort} group; add it to one.")


def equal_groups(sort: Scope, count: int, rows: int) -> tuple[Group, ...]:
    """Divide the rows into ``count`` groups of one sort as evenly as can be, left to right."""
    if not 1 <= count <= rows:
        enter = f"enter 1 to {rows}" if rows > 1 else "enter 1"
        raise Refusal(
            f"{how_many(rows, 'row')} cannot be divided into "
            f"{how_many(count, f'{sort} group')}; {enter}."
        )
    edges = [round(rows * part / count) for part in range(count + 1)]
    return tuple(
        Group(sort, f"{sort} {number}", tuple(range(low + 1, high + 1)))
        for number, (low, high) in enumerate(itertools.pairwise(edges), start=1)
    )
