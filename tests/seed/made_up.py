"""Made-up planters, shelves, lots and jobs for the tests of the look-up, and the crop table."""

from functools import cache
from pathlib import Path

from changeover.planter.drive import GroundDrive, MotorDrive, MotorKind
from changeover.planter.groups import equal_groups
from changeover.planter.machine import Planter
from changeover.planter.parts import Condition, Part, ShelfCount
from changeover.planter.places import Place, Scope
from changeover.planter.settings import STANDARD
from changeover.planter.setup import Cell, Setup, Value
from changeover.quantities import Q, Units
from changeover.seed.case import Case
from changeover.seed.crops import CROP_FILES, Crop, read_crops
from changeover.seed.fields import Field, FieldJob, Moisture, Texture, Tillage
from changeover.seed.lots import SeedLot
from changeover.seed.proposal import propose
from changeover.seed.reasons import Proposal, Proposed

RESOURCES = Path(__file__).resolve().parents[2] / "resources"
CORN_DISC = Part(
    "C30", "corn disc, 30", "disc", frozenset({"corn"}), 30, Q(4.5, "mm"), Q(180, "mm")
)
SOY_DISC = Part("S56", "bean disc, 56", "disc", frozenset({"soybean"}), 56, Q(3.5, "mm"))
SMALL_DISC = Part("M45", "small disc, 45", "disc", frozenset({"sorghum"}), 45, Q(2.0, "mm"))
LOW_BRUSH = Part("low", "low brush", "brush", frozenset({"soybean"}))
PARTS = (CORN_DISC, SOY_DISC, SMALL_DISC, LOW_BRUSH)
SHELF = tuple(ShelfCount(part.code, Condition.GOOD, 60) for part in PARTS)


@cache
def crop_table() -> dict[str, Crop]:
    paths = sorted(path for pattern in CROP_FILES for path in RESOURCES.glob(pattern))
    return read_crops({path.name: path.read_text(encoding="utf-8") for path in paths})


def planter(rows: int = 12, **changes: object) -> Planter:
    groups = [*equal_groups(Scope.DRIVE, 1, rows), *equal_groups(Scope.FAN, 2, rows)]
    groups += equal_groups(Scope.TANK, 2, rows)
    given = {"name": "Made-up", "rows": rows, "row_spacing": Q(30, "in"), "groups": tuple(groups)}
    return Planter(**{**given, **changes})  # type: ignore[arg-type]


def ground_drive() -> GroundDrive:
    return GroundDrive((15, 17, 20, 24), (18, 20, 24, 28), Q(7.5, "ft"), 0.8, 0.05)


def motor() -> MotorDrive:
    return MotorDrive(MotorKind.HYDRAULIC, 8.0, Q(20, "rpm"), Q(300, "rpm"), Q(0.04, "l"))


def lot(crop: str = "soybean", **changes: object) -> SeedLot:
    given = {"number": f"L-{crop}", "crop": crop, "germination": 0.9, "package_seeds": 140_000}
    return SeedLot(**{**given, **changes})  # type: ignore[arg-type]


def job(
    moisture: Moisture = Moisture.MOIST,
    texture: Texture = Texture.LOAM,
    tillage: Tillage = Tillage.TILLED,
    **changes: object,
) -> FieldJob:
    field = Field("West Bottom", Q(80, "acre"), texture)
    given = {"field": field, "lot": "L", "speed": Q(5, "mph")}
    given |= {"moisture": moisture, "tillage": tillage}
    return FieldJob(**{**given, **changes})  # type: ignore[arg-type]


def case(crop: str = "soybean", **changes: object) -> Case:
    machine = changes.pop("planter", planter())
    assert isinstance(machine, Planter)
    given = {"planter": machine, "as_found": Setup(), "lot": lot(crop), "job": job()}
    given |= {"crop": crop_table()[crop], "parts": PARTS, "shelf": SHELF}
    given |= {"rows": tuple(machine.row_numbers), "row_spacing": machine.row_spacing}
    return Case(**{**given, **changes})  # type: ignore[arg-type]


def proposal(**changes: object) -> Proposal:
    given = {"planter": planter(), "settings": STANDARD, "as_found": Setup(), "lot": lot()}
    given |= {"job": job(), "crops": crop_table(), "parts": PARTS, "shelf": SHELF}
    given |= {"manual": (), "records": (), "meters": (), "units": Units.US}
    return propose(**{**given, **changes})  # type: ignore[arg-type]


def at_row(found: Proposal, setting: str, row: int = 1) -> Proposed:
    return found.cells[Cell(setting, Place.of_row(row))]


def first(found: Proposal, setting: str) -> Proposed:
    return next(one for cell, one in found.cells.items() if cell.setting == setting)


def all_rows(machine: Planter, **values: Value) -> Setup:
    return Setup(
        {
            Cell(key, Place.of_row(row)): value
            for key, value in values.items()
            for row in machine.row_numbers
        }
    )
