"""What the plan of a season goes by: hours and days, jobs that are fixed, days to deliver parts."""

from dataclasses import dataclass
from datetime import date

from changeover.quantities import Refusal


@dataclass(frozen=True)
class SeasonRules:
    """What a season is reckoned with.

    ``begins`` is the day from which it is planned, None for today; ``hours`` the hours of a
    planting day, ``suitable`` the share of days fit for planting and ``efficiency`` the field
    efficiency, both 0 to 1; ``move_minutes`` pass on the way between two places, and
    ``near_minutes`` between two fields at one place. Ten hours on two days of three, and half
    an hour or ten minutes on the way, are common practice, no source; the field efficiency is
    the typical one of a row-crop planter (ASABE D497, from memory).
    """

    name: str = "season"
    begins: date | None = None
    hours: float = 10.0
    suitable: float = 0.67
    efficiency: float = 0.65
    move_minutes: int = 30
    near_minutes: int = 10

    def __post_init__(self) -> None:
        if not 0 < self.hours <= 24:
            raise Refusal(f"{self.hours:g} hours a day cannot be; enter over 0 to 24.")
        for what, share in (("days fit", self.suitable), ("field efficiency", self.efficiency)):
            if not 0 < share <= 1:
                raise Refusal(f"{share:.0%} {what} cannot be; enter over 0 to 100 %.")
        if min(self.move_minutes, self.near_minutes) < 0:
            raise Refusal("The minutes on the way cannot be below zero; enter 0 or more.")


@dataclass(frozen=True)
class Fixing:
    """A job that a person has put on a planter, and on a day where ``day`` is given."""

    job: str
    planter: str
    day: date | None = None


@dataclass(frozen=True)
class Delivery:
    """How many days a part takes from the order to the yard."""

    part: str
    days: int

    def __post_init__(self) -> None:
        if self.days < 0:
            raise Refusal(f"Part {self.part}: it cannot take {self.days} days; enter 0 or more.")


@dataclass(frozen=True)
class FlushRecord:
    """One flush of a planter until a purity limit was met: who, when, and by which figures.

    ``residual`` is the seed of the lot before that was left in a row, ``measured`` whether it
    was counted, ``pool`` the seeds that mix in a row, ``limit`` the share of old seed allowed,
    ``seeds`` what each row flushes, on ``row_feet`` of row and ``acres`` of area.
    """

    planter: str
    lot: str
    residual: float
    limit: float
    seeds: float
    row_feet: float
    acres: float
    measured: bool
    who: str
    when: str
    pool: float | None = None

    def __post_init__(self) -> None:
        if self.residual < 0 or not 0 < self.limit < 1:
            raise Refusal(
                f"{self.planter}: the seed left must be 0 or more and the limit above 0 and below "
                "100 %; correct the figures."
            )
        if not self.who.strip():
            raise Refusal("The log needs the name of the person who flushed; enter it.")
