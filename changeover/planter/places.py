"""What a setting belongs to: one row, one group of rows, or the whole planter."""

from dataclasses import dataclass
from enum import StrEnum


class Scope(StrEnum):
    """The sorts of place that a setting can belong to; all but row and planter are groups."""

    ROW = "row"
    DRIVE = "drive"
    FAN = "fan"
    TANK = "tank"
    DOWN_PRESSURE = "down pressure"
    CONTROLLER = "controller"
    PLANTER = "planter"


GROUP_SORTS: tuple[Scope, ...] = (
    Scope.DRIVE,
    Scope.FAN,
    Scope.TANK,
    Scope.DOWN_PRESSURE,
    Scope.CONTROLLER,
)


@dataclass(frozen=True)
class Place:
    """One place on a planter: a row by its number, a group by its name, or the planter."""

    scope: Scope
    name: str = ""

    @staticmethod
    def of_row(row: int) -> "Place":
        return Place(Scope.ROW, str(row))

    @staticmethod
    def from_text(text: str) -> "Place":
        """Read what ``str(place)`` wrote."""
        scope, _, name = text.partition(":")
        return Place(Scope(scope), name)

    @property
    def row(self) -> int | None:
        """The row number, or None when the place is not a row."""
        return int(self.name) if self.scope is Scope.ROW else None

    @property
    def label(self) -> str:
        """The words for it on a screen: ``row 14``, ``fan 1``, ``planter``."""
        return f"row {self.name}" if self.scope is Scope.ROW else self.name or "planter"

    def __str__(self) -> str:
        return f"{self.scope.value}:{self.name}"


PLANTER = Place(Scope.PLANTER)
