"""Invented planters, boards and a desk in memory, for building pages alone."""

from dataclasses import dataclass, field, replace
from typing import Any

from changeover.desk.board import Board
from changeover.desk.changed import Changed
from changeover.desk.edits import SetCells, Side, TakeProposal
from changeover.planter.drive import GroundDrive, MotorDrive, MotorKind
from changeover.planter.groups import equal_groups
from changeover.planter.machine import Planter
from changeover.planter.parts import Part
from changeover.planter.places import Place, Scope
from changeover.planter.settings import STANDARD, Kind, Setting, WorkPlace
from changeover.planter.setup import Cell, Setup, Value, applies, cells_of
from changeover.quantities import Q, Refusal, Units
from changeover.seed.fields import Field, FieldJob
from changeover.seed.lots import SeedLot
from changeover.seed.reasons import Evidence, Input, Proposal, Proposed, Reason, Trust
from changeover.window.door import Door
from changeover.window.outlook import Outlook

CLEANER = Setting(
    "own_cleaner", "Row cleaner", Kind.INDEX, Scope.ROW, WorkPlace.ROW_UNIT,
    options=("1", "2", "3", "4", "5"), hint="notch", own=True,
)  # fmt: skip
PRESSURE = Setting(
    "own_pressure", "Down pressure", Kind.QUANTITY, Scope.DOWN_PRESSURE, WorkPlace.ROW_UNIT,
    measure="force", own=True,
)  # fmt: skip
SETTINGS = (*STANDARD, CLEANER, PRESSURE)
PARTS = (
    Part("C30", "corn disc", "disc", cells=30, hole=Q(4.5, "mm"), cell_circle=Q(190, "mm")),
    Part("S56", "soybean disc", "disc", cells=56, hole=Q(3.5, "mm"), cell_circle=Q(190, "mm")),
    Part("tall", "tall brush", "brush"),
    Part("low", "low brush", "brush"),
)
LOT = SeedLot("S-114", "soybean", length=Q(7.5, "mm"), width=Q(6.8, "mm"), thickness=Q(6.0, "mm"))
OLD: dict[str, Value] = {
    "seed": "H-9", "disc": "C30", "brush": "tall", "singulator": 2, "hub_spacing": Q(0.6, "mm"),
    "vacuum": Q(18.0, "inH2O"), "depth": 7, "closing": 4, "seed_rate": Q(32000.0, "seed/acre"),
    "cells": 30, "own_cleaner": 4, "own_pressure": Q(150.0, "lbf"), "row_lock": "down",
    "sprockets": "19/24",
}  # fmt: skip
NEW: dict[str, Value] = {
    "seed": "S-114", "disc": "S56", "brush": "low", "singulator": 4, "vacuum": Q(12.0, "inH2O"),
    "depth": 4, "closing": 3, "seed_rate": Q(140000.0, "seed/acre"), "cells": 56,
    "hub_spacing": Q(0.6, "mm"),
}  # fmt: skip
REASON = Reason(
    "invented rule",
    "Soybean in moist silt loam: 1 to 1.5 in. Deeper than 2 in only into moisture.",
    "an invented bulletin, 2012",
    Trust.PUBLISHED,
    how="Row 14 reads deep by its own offset; the nearest notch is taken.",
    inputs=(Input("soil", "moist silt loam"),),
    cautions=("Planter lowered or cylinders locked before a hand goes near the wheels.",),
    evidence=(
        Evidence(Trust.MANUAL, "no value entered"),
        Evidence(Trust.RECORD, "no proved setup"),
        Evidence(Trust.PUBLISHED, "an invented bulletin, 2012", used=True),
        Evidence(Trust.PRACTICE, "a quarter inch a notch"),
    ),
)


def long_planter(rows: int = 24) -> Planter:
    """A planter with two tanks, two fans and three hydraulic drives."""
    drives = equal_groups(Scope.DRIVE, 3, rows)
    motor = MotorDrive(MotorKind.HYDRAULIC, 4.0, Q(20, "rpm"), Q(400, "rpm"), Q(0.1, "l"))
    return Planter(
        "Long Acre",
        rows,
        Q(30, "in"),
        groups=(
            *equal_groups(Scope.FAN, 2, rows),
            *equal_groups(Scope.TANK, 2, rows),
            *drives,
            *equal_groups(Scope.DOWN_PRESSURE, 3, rows),
        ),
        drives={drive.name: motor for drive in drives},
        fan_limit=Q(30.0, "inH2O"),
    )


def split_planter() -> Planter:
    """A split-row planter of 31 rows with hoppers on the rows."""
    return Planter(
        "Split Hollow",
        31,
        Q(30, "in"),
        groups=(*equal_groups(Scope.FAN, 2, 31), *equal_groups(Scope.DRIVE, 2, 31)),
        split_rows=frozenset(range(2, 31, 2)),
    )


def ground_planter() -> Planter:
    """A small ground-driven planter of 12 rows."""
    drives = equal_groups(Scope.DRIVE, 2, 12)
    ground = GroundDrive((19, 23), (24, 28), Q(7.0, "ft"), 2.0)
    return Planter(
        "Plain Twelve",
        12,
        Q(30, "in"),
        groups=(*equal_groups(Scope.FAN, 1, 12), *drives),
        drives={drive.name: ground for drive in drives},
    )


def setup_of(planter: Planter, values: dict[str, Value], settings: tuple[Setting, ...]) -> Setup:
    """The same value at every place of each setting."""
    return Setup(
        {
            cell: values[setting.key]
            for setting in settings
            if setting.key in values and applies(planter, setting)
            for cell in cells_of(planter, setting)
        }
    )


def proposal_of(planter: Planter) -> Proposal:
    """A proposal for every cell of the new crop, all with one reason."""
    bands = {"vacuum": (Q(6.0, "inH2O"), Q(24.0, "inH2O"))}
    cells = {
        cell: Proposed(cell, value, REASON, *bands.get(cell.setting, (None, None)))
        for cell, value in setup_of(planter, NEW, SETTINGS).values.items()
    }
    return Proposal(cells=cells)


def make_board(planter: Planter | None = None, *, done: int = 9, chosen: bool = True) -> Board:
    """A board half-way through a switch: the first ``done`` rows are at their target."""
    machine = planter or long_planter()
    found = setup_of(machine, OLD, SETTINGS)
    wanted = setup_of(machine, NEW, SETTINGS)
    at_target = {c: v for c, v in wanted.values.items() if c.place.row and c.place.row <= done}
    odd = {Cell("depth", Place.of_row(row)): 8 for row in (11,)}
    job = FieldJob(Field("West Bottom", Q(80.0, "acre")), "S-114", Q(5.0, "mph"))
    return Board(
        planter=machine,
        settings=SETTINGS,
        as_found=found.with_values({**at_target, **odd}) if chosen else found,
        target=wanted if chosen else Setup(),
        before=found if chosen else None,
        lot=LOT if chosen else None,
        job=job if chosen else None,
        next_job=None,
        label_now="Corn, Hill Nine · set 3 May",
        label_next="Soybean lot S-114 → West Bottom" if chosen else "",
        proposal=proposal_of(machine) if chosen else None,
        meters=(),
        parts=PARTS,
        shelf=(),
        units=Units.US,
        demo=True,
    )


@dataclass(frozen=True)
class Done:
    """What the desk in memory says of an edit."""

    changed: frozenset[Changed]
    inverse: Any


@dataclass
class MemoryDesk:
    """Applies edits of cells to a board in memory; refuses what ``refuse`` says."""

    board: Board
    edits: list[Any] = field(default_factory=list)
    refuse: str = ""

    def read_board(self, planter: str, units: Units, *, proposal: bool) -> Board:
        return replace(self.board, units=units)

    def apply(self, edit: Any) -> Done:
        if self.refuse:
            raise Refusal(self.refuse)
        self.edits.append(edit)
        if isinstance(edit, TakeProposal):
            edit = self._taken(edit)
        if not isinstance(edit, SetCells):
            return Done(frozenset(Changed), edit)
        found = edit.side is Side.AS_FOUND
        name = "as_found" if found else "target"
        changed = getattr(self.board, name).with_values(edit.values)
        self.board = replace(self.board, **{name: changed})
        inverse = replace(edit, values=edit.before, before=edit.values)
        return Done(frozenset({Changed.AS_FOUND if found else Changed.TARGET}), inverse)

    def _taken(self, edit: TakeProposal) -> SetCells:
        assert self.board.proposal is not None
        values = self.board.proposal.values()
        chosen = {c: v for c, v in values.items() if edit.cells is None or c in edit.cells}
        before = {cell: self.board.target.get(cell) for cell in chosen}
        return SetCells(edit.planter, Side.TARGET, chosen, before)

    def door(self) -> Door:
        return Door(self.apply)

    def outlook(self) -> Outlook:
        return Outlook(self.read_board, self.board.planter.name)

    def read(self, job: Any, *_args: Any, **_kwargs: Any) -> Any:
        """Stand in for the reading of the desk."""
        return (self.board.planter.name, "Other Acre") if job.__name__ == "planter_names" else ()


class Answers:
    """Stands in for dialogs: gives prepared answers and keeps what it was told."""

    def __init__(self, **answers: Any) -> None:
        self.answers, self.told = answers, []

    def confirm(self, text: str, detail: str = "", yes: str = "Go on") -> bool:
        return bool(self.answers.get("confirm", False))

    def tell(self, text: str, detail: str = "") -> None:
        self.told.append(text)

    def choose_file(self, title: str, kinds: str) -> Any:
        return self.answers.get("file")

    def choose_new_file(self, title: str, name: str, kinds: str) -> Any:
        return self.answers.get("new_file")

    def choose_folder(self, title: str) -> Any:
        return self.answers.get("folder")

    def ask_text(self, title: str, text: str, value: str = "") -> Any:
        return self.answers.get("text")
