"""Fields, and the field jobs that plant a lot in one."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from changeover.planter.names import check_name
from changeover.planter.places import Place
from changeover.quantities import Quantity, Refusal, check_kind, figure_in


class Texture(StrEnum):
    """Soil texture, coarse to fine."""

    SAND = "sand"
    SANDY_LOAM = "sandy loam"
    LOAM = "loam"
    SILT_LOAM = "silt loam"
    CLAY_LOAM = "clay loam"
    CLAY = "clay"


class Moisture(StrEnum):
    """Soil moisture at seed depth."""

    DRY = "dry"
    MOIST = "moist"
    WET = "wet"


class Tillage(StrEnum):
    """How the seedbed was made, loose to firm."""

    TILLED = "tilled"
    MULCH = "mulch till"
    STRIP = "strip till"
    NO_TILL = "no-till"


@dataclass(frozen=True)
class Field:
    """One field; its place on the map is a name, not coordinates.

    ``altitude`` is its height above the sea and ``run_length`` the length of its runs, both None
    when not known.
    """

    name: str
    area: Quantity
    texture: Texture = Texture.LOAM
    where: str = ""
    altitude: Quantity | None = None
    run_length: Quantity | None = None

    def __post_init__(self) -> None:
        if not self.name.strip():
            raise Refusal("The field has no name; give it one.")
        check_name("The field", self.name)
        if not 0 < figure_in("acre", self.area, "area", f"Field {self.name}, area") <= 100_000:
            raise Refusal(f"Field {self.name}: the area must be above zero; check the figure.")
        check_kind(self.altitude, "row_length", f"Field {self.name}, altitude")
        check_kind(self.run_length, "row_length", f"Field {self.name}, length of the runs")
        if self.altitude is not None and not -450 <= self.altitude.to("m").magnitude <= 5500:
            raise Refusal(f"Field {self.name}: no field lies at that altitude; check the unit.")
        if self.run_length is not None and not 5 <= self.run_length.to("m").magnitude <= 20_000:
            raise Refusal(f"Field {self.name}: a run is 16 ft to 12 miles long (5 m to 20 km).")


_JOB_KINDS = (
    ("speed", "speed"),
    ("seed_rate", "seed_rate"),
    ("stand", "seed_rate"),
    ("soil_temperature", "temperature"),
    ("row_spacing", "row_spacing"),
    ("area", "area"),
)


def check_job_kinds(job: object, where: str) -> None:
    """Refuse inputs of a job that are of another kind than wanted. Raises Refusal."""
    for name, measure in _JOB_KINDS:
        check_kind(getattr(job, name), measure, f"{where}, {name.replace('_', ' ')}")


@dataclass(frozen=True)
class FieldJob:
    """One lot to be planted in one field: the soil as it is now, and what is wanted.

    Either ``seed_rate`` (seeds per area) or ``stand`` (plants per area) is given, or neither:
    then the crop table proposes one. ``row_spacing`` is the spacing wanted on a split-row
    planter; ``emergence`` the share of live seeds expected to come up, 0 to 1. ``overlap`` is
    the share of the area sown twice, ``reserve`` the share of a fill left when you stop for
    seed, which waits at one end of the field or ``seed_at_both_ends``. ``other_lots`` names the
    tanks or row hoppers that take another lot. ``meter_error`` is the share that the meters are
    expected to drop too few, below 0 for too many.
    """

    field: Field
    lot: str
    speed: Quantity
    seed_rate: Quantity | None = None
    stand: Quantity | None = None
    emergence: float | None = None
    moisture: Moisture = Moisture.MOIST
    tillage: Tillage = Tillage.TILLED
    soil_temperature: Quantity | None = None
    row_spacing: Quantity | None = None
    first_day: date | None = None
    last_day: date | None = None
    area: Quantity | None = None
    overlap: float | None = None
    reserve: float | None = None
    seed_at_both_ends: bool = False
    other_lots: tuple[tuple[Place, str], ...] = ()
    meter_error: float | None = None

    def __post_init__(self) -> None:
        where = f"Job in {self.field.name}"
        check_job_kinds(self, where)
        if not 0 < self.speed.to("mph").magnitude <= 20:
            raise Refusal(f"{where}: the ground speed must be above 0 and at most 20 mph.")
        for name, rate in (("seed rate", self.seed_rate), ("stand", self.stand)):
            if rate is not None and not 100 <= rate.to("1/acre").magnitude <= 5_000_000:
                raise Refusal(f"{where}: the {name} must be 100 to 5 000 000 an acre.")
        if self.emergence is not None and not 0 < self.emergence <= 1:
            raise Refusal(f"{where}: expected emergence must be above 0 and at most 100 %.")
        if self.overlap is not None and not 0 <= self.overlap <= 1:
            raise Refusal(f"{where}: the overlap must be 0 to 100 % of the area.")
        if self.reserve is not None and not 0 <= self.reserve <= 0.9:
            raise Refusal(f"{where}: the reserve in a tank must be 0 to 90 % of a fill.")
        if self.meter_error is not None and not -0.5 <= self.meter_error <= 0.5:
            raise Refusal(f"{where}: the expected meter error must be -50 to 50 % of the seeds.")
        warmth = self.soil_temperature
        if warmth is not None and not -10 <= warmth.to("degC").magnitude <= 60:
            raise Refusal(f"{where}: soil is 14 to 140 °F (-10 to 60 °C) warm; check the unit.")
        if self.first_day and self.last_day and self.last_day < self.first_day:
            raise Refusal(f"{where}: the last day lies before the first; swap them.")

    @property
    def planted_area(self) -> Quantity:
        """The area to plant: the job's own, or the whole field."""
        return self.area if self.area is not None else self.field.area
