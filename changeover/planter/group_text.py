"""Groups and rows as people write them: ``2``, or ``1-12; 13-24``, or ``1-8, 17-24; 9-16``."""

import re
from collections.abc import Iterable

from changeover.planter.groups import Group, check_groups, equal_groups
from changeover.planter.places import Scope
from changeover.quantities import Refusal

_RUN = re.compile(r"(\d+)(?:\s*[-–]\s*(\d+))?")


def read_rows(text: str, what: str) -> tuple[int, ...]:
    """Read row numbers such as ``1-8, 17`` from text. ``what`` names the input.

    Raises Refusal for anything but numbers and runs of them.
    """
    rows: list[int] = []
    for part in filter(None, (piece.strip() for piece in text.split(","))):
        match = _RUN.fullmatch(part)
        if match is None:
            raise Refusal(f"{what}: “{part}” is not a row or a run of rows; write it like 1-12.")
        first, last = int(match[1]), int(match[2] or match[1])
        if last < first:
            raise Refusal(f"{what}: the run {part} goes backwards; write it like 1-12.")
        if last - first > 200:
            raise Refusal(f"{what}: the run {part} is longer than any planter; check the numbers.")
        rows.extend(range(first, last + 1))
    return tuple(rows)


def show_rows(rows: Iterable[int]) -> str:
    """Write row numbers as runs: ``1-8, 17``."""
    runs: list[list[int]] = []
    for row in sorted(set(rows)):
        if runs and row == runs[-1][1] + 1:
            runs[-1][1] = row
        else:
            runs.append([row, row])
    return ", ".join(str(a) if a == b else f"{a}-{b}" for a, b in runs)


def read_groups(sort: Scope, text: str, rows: int) -> tuple[Group, ...]:
    """Read the groups of one sort: a count that divides the rows evenly, or their rows.

    Nothing, or 0, means that the planter has no groups of this sort. Raises Refusal.
    """
    typed = text.strip()
    if typed in ("", "0"):
        return ()
    if typed.isdigit():
        return equal_groups(sort, int(typed), rows)
    pieces = [piece for piece in typed.split(";") if piece.strip()]
    groups = tuple(
        Group(sort, f"{sort} {number}", read_rows(piece, f"{sort} {number}"))
        for number, piece in enumerate(pieces, start=1)
    )
    check_groups(groups, rows)
    return groups


def show_groups(groups: Iterable[Group], rows: int) -> str:
    """Write the groups of one sort the way ``read_groups`` reads them."""
    listed = tuple(groups)
    if not listed:
        return "0"
    even = equal_groups(listed[0].sort, len(listed), rows)
    if [group.rows for group in even] == [group.rows for group in listed]:
        return str(len(listed))
    return "; ".join(show_rows(group.rows) for group in listed)
