"""Settings: what a row, a group or the planter can be set to."""

from dataclasses import dataclass
from enum import StrEnum

from changeover.planter.places import Scope
from changeover.quantities import MEASURES, Quantity, Refusal, check_kind


class Kind(StrEnum):
    """What sort of value a setting takes.

    PART: the code of a part, text. INDEX: a position counted from 1, int. QUANTITY: a pint
    quantity. CHOICE: one of the setting's options, text. LOT: a seed lot's number, text.
    COUNT: a whole number.
    """

    PART = "part"
    INDEX = "index"
    QUANTITY = "quantity"
    CHOICE = "choice"
    LOT = "lot"
    COUNT = "count"


class WorkPlace(StrEnum):
    """Where on the planter the work on a setting is done, in the order of a switch."""

    TANK = "tank"
    METER = "meter"
    ROW_UNIT = "row unit"
    FAN = "fan"
    DRIVE = "drive"
    CAB = "cab"


@dataclass(frozen=True)
class Setting:
    """One thing that can be set: its key is stored, its name shown.

    ``measure`` names the quantity's entry in ``changeover.quantities.MEASURES``; ``options``
    are the choices of a CHOICE or the position names of a user's own INDEX; ``part_sort`` is
    the sort of part a PART setting takes. A ``record_only`` setting is never a target.
    """

    key: str
    name: str
    kind: Kind
    scope: Scope
    work_place: WorkPlace
    measure: str | None = None
    options: tuple[str, ...] = ()
    part_sort: str | None = None
    hint: str = ""
    hidden: bool = False
    own: bool = False
    record_only: bool = False
    tolerance: Quantity | None = None

    def __post_init__(self) -> None:
        if not self.name.strip():
            raise Refusal("A setting has no name; give it one.")
        if self.kind is Kind.QUANTITY and self.measure not in MEASURES:
            raise Refusal(f"The setting “{self.name}” has no unit; choose what it measures.")
        if self.kind is Kind.QUANTITY and self.measure is not None:
            check_kind(self.tolerance, self.measure, f"The tolerance of “{self.name}”")
        if self.kind is Kind.CHOICE and self.own and not self.options:
            raise Refusal(f"The setting “{self.name}” has no choices; enter at least one.")
        if self.kind is Kind.INDEX and self.own and not self.options:
            raise Refusal(f"The setting “{self.name}” has no positions; enter at least one.")
        if self.kind is Kind.PART and not self.part_sort:
            raise Refusal(f"The setting “{self.name}” names no sort of part; choose one.")


DOWN, LOCKED_UP = "down", "locked up"

STANDARD: tuple[Setting, ...] = (
    Setting("seed", "Seed", Kind.LOT, Scope.TANK, WorkPlace.TANK, hint="lot in the tank"),
    Setting(
        "seed_left",
        "Seed left",
        Kind.QUANTITY,
        Scope.TANK,
        WorkPlace.TANK,
        measure="mass",
        hint="in the tank",
        hidden=True,
        record_only=True,
    ),
    Setting("disc", "Disc", Kind.PART, Scope.ROW, WorkPlace.METER, part_sort="disc"),
    Setting("brush", "Brush", Kind.PART, Scope.ROW, WorkPlace.METER, part_sort="brush"),
    Setting(
        "singulator",
        "Singulator",
        Kind.INDEX,
        Scope.ROW,
        WorkPlace.METER,
        hint="cell left open",
    ),
    Setting(
        "hub_spacing",
        "Hub spacing",
        Kind.QUANTITY,
        Scope.ROW,
        WorkPlace.METER,
        measure="hub_spacing",
    ),
    Setting("vacuum", "Vacuum", Kind.QUANTITY, Scope.FAN, WorkPlace.FAN, measure="pressure"),
    Setting("depth", "Depth", Kind.INDEX, Scope.ROW, WorkPlace.ROW_UNIT, measure="depth"),
    Setting("closing", "Closing", Kind.INDEX, Scope.ROW, WorkPlace.ROW_UNIT, hint="closing force"),
    Setting(
        "row_lock",
        "Row",
        Kind.CHOICE,
        Scope.ROW,
        WorkPlace.ROW_UNIT,
        options=(DOWN, LOCKED_UP),
        hint="down or locked up",
    ),
    Setting(
        "seed_rate",
        "Seed rate",
        Kind.QUANTITY,
        Scope.DRIVE,
        WorkPlace.CAB,
        measure="seed_rate",
    ),
    Setting("cells", "Cells", Kind.COUNT, Scope.DRIVE, WorkPlace.CAB, hint="entered in the cab"),
    Setting(
        "sprockets",
        "Sprockets",
        Kind.CHOICE,
        Scope.DRIVE,
        WorkPlace.DRIVE,
        hint="driver/driven",
    ),
)

ALWAYS_THERE = ("disc", "brush", "singulator", "hub_spacing", "vacuum", "depth", "closing")


def standard(key: str) -> Setting:
    """Return a standard setting by its key. Raises KeyError."""
    return next(setting for setting in STANDARD if setting.key == key)
