"""Where the parts of a planter seen from behind are drawn: plain geometry, in pixels."""

from collections.abc import Sequence
from dataclasses import dataclass

from changeover.planter.drive import GroundDrive, MotorDrive
from changeover.planter.groups import Group
from changeover.planter.machine import Planter
from changeover.planter.places import Scope


@dataclass(frozen=True)
class Column:
    """One row's column: its number, its middle and its width."""

    row: int
    middle: float
    width: float

    @property
    def left(self) -> float:
        return self.middle - self.width / 2

    @property
    def right(self) -> float:
        return self.middle + self.width / 2


@dataclass(frozen=True)
class Bracket:
    """A line over or under the rows of one group; ``runs`` are its unbroken stretches."""

    group: Group
    words: str
    runs: tuple[tuple[float, float], ...]

    @property
    def left(self) -> float:
        return self.runs[0][0]

    @property
    def right(self) -> float:
        return self.runs[-1][1]

    @property
    def middle(self) -> float:
        return (self.left + self.right) / 2


def brackets(planter: Planter, sort: Scope, columns: Sequence[Column]) -> tuple[Bracket, ...]:
    """Return one bracket for each group of a sort with rows among the columns."""
    made = []
    for group in planter.groups_of(sort):
        runs = _runs(group, columns)
        if runs:
            made.append(Bracket(group, _words(planter, group), runs))
    return tuple(made)


def _runs(group: Group, columns: Sequence[Column]) -> tuple[tuple[float, float], ...]:
    runs: list[list[float]] = []
    within = False
    for column in columns:
        inside = column.row in group.rows
        if inside and within:
            runs[-1][1] = column.right
        elif inside:
            runs.append([column.left, column.right])
        within = inside
    return tuple((left, right) for left, right in runs)


def _words(planter: Planter, group: Group) -> str:
    drive = planter.drives.get(group.name) if group.sort is Scope.DRIVE else None
    if isinstance(drive, GroundDrive):
        return f"{group.name} · ground wheel"
    if isinstance(drive, MotorDrive):
        return f"{group.name} · {drive.kind.value}"
    return group.name


@dataclass(frozen=True)
class Heights:
    """The levels of the drawing from the top, in pixels; ``unit`` is how tall a row unit is."""

    tank_top: float
    tank_foot: float
    fan: float
    bar_top: float
    bar_foot: float
    unit_top: float
    unit: float
    numbers: float
    drives: float
    whole: int


def heights(whole: int) -> Heights:
    """Divide a height of the drawing among its parts."""
    spare = min(32, max(0, whole - 168))
    tank = 38 + spare // 3
    fan = 7 + tank + 15 + spare // 8
    bar = fan + 14
    unit_top = bar + 19
    unit = 34 + spare // 4
    numbers = unit_top + unit + 11
    return Heights(7, 7 + tank, fan, bar, bar + 10, unit_top, unit, numbers, numbers + 14, whole)
