"""What the store keeps besides planters, settings, lots, fields and parts, as plain values."""

import dataclasses
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from changeover.planter.places import Place
from changeover.planter.setup import Setup
from changeover.quantities import Q, Quantity, Refusal
from changeover.seed.fields import Moisture, Tillage, check_job_kinds
from changeover.switch.tasks import Tick


class Side(StrEnum):
    """Which of the two setups of a planter: what is there now, or what is wanted."""

    AS_FOUND = "as found"
    TARGET = "target"


@dataclass(frozen=True)
class NextJob:
    """What a planter is to plant next: a lot, a field or none yet, and the inputs of the job.

    The lot and the field are named; the other inputs are those of ``FieldJob``. Five miles an
    hour as the first speed is common practice, no source.
    """

    lot: str
    field: str | None = None
    speed: Quantity = dataclasses.field(default_factory=lambda: Q(5.0, "mph"))
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
        check_job_kinds(self, f"Lot {self.lot}")


@dataclass(frozen=True, kw_only=True)
class PlannedJob(NextJob):
    """A field job of the season: planted by any planter, or by the one named in ``planter``.

    ``lateness_cost`` is money for each day after ``last_day``, in the user's own currency.
    """

    name: str
    planter: str | None = None
    lateness_cost: float | None = None
    done: bool = False

    def __post_init__(self) -> None:
        if not self.name.strip():
            raise Refusal("The job has no name; give it one.")
        check_job_kinds(self, f"Job {self.name}")
        if self.lateness_cost is not None and not self.lateness_cost >= 0:
            raise Refusal(f"Job {self.name}: the cost of a day late cannot be below zero.")


@dataclass(frozen=True)
class OpenSwitch:
    """A switch under way: its job, the setup as found when it began, and what is ticked off."""

    job: NextJob
    before: Setup
    started: str
    ticks: tuple[Tick, ...] = ()


@dataclass(frozen=True)
class SavedSetup:
    """The settings of one planter at one moment, saved under a name; never overwritten.

    ``saved`` is ISO 8601 text in UTC; ``proved`` says how it proved, empty when it was not;
    ``seed_diameter`` is the mean diameter of the lot's seed; ``signed`` says that a switch was
    signed off with it.
    """

    name: str
    planter: str
    setup: Setup
    saved: str
    who: str = ""
    lot: str | None = None
    crop: str | None = None
    field: str | None = None
    note: str = ""
    proved: str = ""
    seed_diameter: Quantity | None = None
    signed: bool = False


@dataclass(frozen=True)
class HistoryLine:
    """One change: who, when and why, on which planter, which setting and place, old and new.

    Lines of one transaction share the ``entry`` number. ``what`` says what was changed: as
    found, target, lot, field ...; ``old`` and ``new`` are texts for people.
    """

    entry: int
    when: str
    who: str
    why: str
    planter: str
    what: str
    setting: str
    place: str
    old: str
    new: str
