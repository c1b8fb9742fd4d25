"""Parts, the shelf that holds the spare ones, and meters that move from row to row."""

from dataclasses import dataclass
from enum import StrEnum

from changeover.planter.names import check_name
from changeover.quantities import Quantity, Refusal, check_kind


class Condition(StrEnum):
    """How good a part on the shelf is; only new and good ones are laid out for a switch."""

    NEW = "new"
    GOOD = "good"
    INSPECT = "inspect"
    WORN = "worn"


USABLE = (Condition.NEW, Condition.GOOD)


@dataclass(frozen=True)
class Part:
    """A kind of part: a disc, a brush, a wheel, a seal.

    ``suits`` holds the keys of the crops it is for, empty when any. A disc also has ``cells``
    and the diameter of its ``hole``; ``seed_from`` and ``seed_to`` bound the seed it is meant
    for (mean diameter), as its owner entered them.
    """

    code: str
    name: str
    sort: str
    suits: frozenset[str] = frozenset()
    cells: int | None = None
    hole: Quantity | None = None
    cell_circle: Quantity | None = None
    seed_from: Quantity | None = None
    seed_to: Quantity | None = None
    note: str = ""

    def __post_init__(self) -> None:
        if not self.code.strip():
            raise Refusal("A part has no code; give it one, such as the mark stamped on it.")
        check_name("A part", self.code)
        if self.cells is not None and not 1 <= self.cells <= 400:
            raise Refusal(f"Disc {self.code}: {self.cells} cells is not possible; enter 1 to 400.")
        self._check_kinds()
        if self.hole is not None and not 0 < self.hole.to("mm").magnitude <= 30:
            raise Refusal(f"Disc {self.code}: the hole must be above 0 and at most 30 mm.")

    def _check_kinds(self) -> None:
        check_kind(self.hole, "seed_size", f"Disc {self.code}, hole")
        check_kind(self.cell_circle, "diameter", f"Disc {self.code}, circle of the cells")
        check_kind(self.seed_from, "seed_size", f"Disc {self.code}, least seed")
        check_kind(self.seed_to, "seed_size", f"Disc {self.code}, greatest seed")


@dataclass(frozen=True)
class ShelfCount:
    """How many of a part lie on the shelf in one condition, and in which bin."""

    part: str
    condition: Condition
    count: int
    bin: str = ""

    def __post_init__(self) -> None:
        if self.count < 0:
            raise Refusal(f"Part {self.part}: the shelf cannot hold {self.count}; enter 0 or more.")


@dataclass(frozen=True)
class Meter:
    """One seed meter: its serial, where it is mounted, its zero of hub spacing, its hours."""

    serial: str
    planter: str | None = None
    row: int | None = None
    hub_zero: Quantity | None = None
    hours: float = 0.0
    note: str = ""

    def __post_init__(self) -> None:
        if not self.serial.strip():
            raise Refusal("A meter has no serial; give it one.")
        check_kind(self.hub_zero, "hub_spacing", f"Meter {self.serial}, zero of hub spacing")
        if self.hours < 0:
            raise Refusal(f"Meter {self.serial}: hours cannot be below zero.")
