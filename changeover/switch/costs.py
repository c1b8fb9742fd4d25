"""What a switch costs: hours and area lost, lateness, repairs, and which crop goes first."""

import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from changeover.quantities import Quantity, Refusal
from changeover.seed.reasons import Trust
from changeover.seed.row_layout import field_capacity

__all__ = [
    "Choice",
    "FieldWork",
    "LostTime",
    "MachineFigures",
    "Timeliness",
    "choose_order",
    "field_capacity",
    "lost_time",
    "read_machine",
    "read_timeliness",
    "repair_to_date",
]


@dataclass(frozen=True)
class LostTime:
    """The planting hours that a switch takes, and the area that would have been planted in them."""

    hours: Quantity
    area: Quantity


def lost_time(switch: Quantity, capacity: Quantity, planting_share: float = 1.0) -> LostTime:
    """Return the planting hours and area lost to a switch.

    ``switch`` is its length, ``capacity`` the field capacity (area per time) and
    ``planting_share`` the share of the switch that falls into hours fit for planting, 0 to 1.
    Raises Refusal for figures below 0 or a share over 1. By definition.
    """
    if not 0 <= planting_share <= 1:
        raise Refusal(f"A share of {planting_share:g} of the switch cannot be; give 0 to 1.")
    if switch.magnitude < 0 or capacity.magnitude < 0:
        raise Refusal("A switch and a field capacity below zero cannot be; give 0 or more.")
    hours = (switch * planting_share).to("hour")
    return LostTime(hours, (hours * capacity).to("hectare"))


@dataclass(frozen=True)
class Timeliness:
    """The loss per area by planting day: points (day, loss) in order, straight between them.

    Before the first point the loss is that of the first; after the last the last slope goes on.
    Losses are in the unit of the table, such as bushels per acre or the user's money per hectare.
    """

    points: tuple[tuple[float, float], ...]

    def __post_init__(self) -> None:
        days = [day for day, _ in self.points]
        if not days or days != sorted(set(days)):
            raise Refusal("The losses by planting day are not in order of days; sort them.")

    def loss(self, day: float) -> float:
        """Return the loss per area of planting on a day."""
        if day <= self.points[0][0] or len(self.points) == 1:
            return self.points[0][1]
        for (begin, low), (end, high) in pairwise(self.points):
            if day <= end:
                return low + (high - low) * (day - begin) / (end - begin)
        (begin, low), (end, high) = self.points[-2:]
        return high + (high - low) * (day - end) / (end - begin)

    def mean_loss(self, begin: float, end: float) -> float:
        """Return the mean loss per area of planting evenly from one day to another.

        Exact: the trapezium rule over the stretches between the points.
        """
        if end <= begin:
            return self.loss(begin)
        days = [begin, *(day for day, _ in self.points if begin < day < end), end]
        parts = ((b - a) * (self.loss(a) + self.loss(b)) / 2 for a, b in pairwise(days))
        return sum(parts) / (end - begin)


@dataclass(frozen=True)
class FieldWork:
    """Area of one crop still to plant, the field capacity for it, and its loss by planting day."""

    name: str
    area: Quantity
    capacity: Quantity
    timeliness: Timeliness

    @property
    def hours(self) -> float:
        return float((self.area / self.capacity).to("hour").magnitude)


@dataclass(frozen=True)
class Choice:
    """Finishing the crop in the planter first, against changing now and back again later.

    The losses are sums over both areas, in the unit of the losses by day times ``unit`` of area;
    ``finish_first`` tells which loses less, ``gain`` by how much.
    """

    loss_if_finished: float
    loss_if_changed: float
    end_if_finished: float
    end_if_changed: float

    @property
    def finish_first(self) -> bool:
        return self.loss_if_finished <= self.loss_if_changed

    @property
    def gain(self) -> float:
        return abs(self.loss_if_finished - self.loss_if_changed)


def choose_order(
    present: FieldWork,
    other: FieldWork,
    switch: Quantity,
    switch_back: Quantity,
    today: float,
    hours_per_day: float,
    unit: str = "acre",
) -> Choice:
    """Compare finishing the present crop with changing now, doing the other, and changing back.

    ``switch`` and ``switch_back`` are lengths of time, in planting hours; ``today`` the day from
    which losses count; ``hours_per_day`` the planting hours expected of a calendar day (hours
    times the share of suitable days); ``unit`` the area that the losses by day are given for.
    Raises Refusal for hours not over 0. Planting is taken as even, so that the mean loss counts.
    """
    if hours_per_day <= 0:
        raise Refusal(f"{hours_per_day:g} planting hours a day cannot be; give more than 0.")
    to, back = (float(each.to("hour").magnitude) for each in (switch, switch_back))
    finished = _in_turn([(present, 0.0), (other, to)], today, hours_per_day, unit)
    changed = _in_turn([(other, to), (present, back)], today, hours_per_day, unit)
    return Choice(finished[0], changed[0], finished[1], changed[1])


def _in_turn(
    works: Sequence[tuple[FieldWork, float]], today: float, hours_per_day: float, unit: str
) -> tuple[float, float]:
    """Return the loss of works in turn, each behind its switch, and the day of the end."""
    day, loss = today, 0.0
    for work, switch in works:
        begin = day + switch / hours_per_day
        day = begin + work.hours / hours_per_day
        loss += float(work.area.to(unit).magnitude) * work.timeliness.mean_loss(begin, day)
    return loss, day


@dataclass(frozen=True)
class MachineFigures:
    """Field efficiency, speed, life and repairs of a machine: shares, and hours of its life.

    ``efficiency`` is least, typical, greatest; ``rf1`` and ``rf2`` the repair factors.
    """

    name: str
    efficiency: tuple[float, float, float]
    speed_mph: tuple[float, float, float]
    life_hours: float
    repairs_over_life: float
    rf1: float
    rf2: float
    source: str
    trust: Trust


def read_machine(text: str, key: str) -> MachineFigures:
    """Read the figures of one machine (TOML text). Raises Refusal when they are not there."""
    entry = tomllib.loads(text).get(key)
    if not isinstance(entry, Mapping):
        raise Refusal(f"There are no figures of the machine “{key}”; add them to the table.")
    low, usual, high = entry["efficiency"]
    slow, common, fast = entry["speed_mph"]
    return MachineFigures(
        str(entry["name"]),
        (float(low), float(usual), float(high)),
        (float(slow), float(common), float(fast)),
        float(entry["life_hours"]),
        float(entry["repairs_over_life"]),
        float(entry["rf1"]),
        float(entry["rf2"]),
        str(entry["source"]),
        Trust(str(entry["trust"])),
    )


def read_timeliness(text: str, key: str) -> Timeliness:
    """Read the losses by planting day of one crop and place (TOML text).

    Raises Refusal when they are not there.
    """
    entry = tomllib.loads(text).get(key)
    if not isinstance(entry, Mapping):
        raise Refusal(f"There are no losses by planting day for “{key}”; enter your own.")
    return Timeliness(tuple((float(day), float(loss)) for day, loss in entry["points"]))


def repair_to_date(machine: MachineFigures, price: float, hours: Quantity) -> float:
    """Return the repairs of a machine up to a number of hours, in the unit of its price.

    RF1 · price · (hours / 1000)^RF2 (ASABE D497). Raises Refusal for hours or a price below 0.
    """
    used = float(hours.to("hour").magnitude)
    if used < 0 or price < 0:
        raise Refusal("Hours and a price below zero cannot be; give 0 or more.")
    return float(machine.rf1 * price * (used / 1000) ** machine.rf2)
