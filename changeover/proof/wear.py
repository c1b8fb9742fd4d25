"""Wear inspection: readings against limits with their sources, and how long a part will last."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from changeover.proof.source import Source
from changeover.proof.wording import said
from changeover.quantities import Q, Quantity, Refusal, check_kind

WATCH_SHARE = 0.25  # of the wear from new to limit still left: common practice, no source


class Kind(StrEnum):
    """How a limit bounds a reading."""

    LEAST = "least"
    MOST = "most"
    BETWEEN = "between"
    LOOK = "look"


class WearState(StrEnum):
    """The word beside each reading; its mark stands for it where space is short."""

    GOOD = "good"
    WATCH = "watch"
    REPLACE = "replace"
    NO_LIMIT = "no limit known"

    @property
    def mark(self) -> str:
        return {"good": "✓", "watch": "!", "replace": "✕", "no limit known": "–"}[self.value]


_WORST = (WearState.REPLACE, WearState.WATCH, WearState.GOOD)


@dataclass(frozen=True)
class WearLimit:
    """One limit of one part.

    ``low`` and ``high`` bound the reading (lengths; one of them is None for least or most, both
    for a look), ``new`` is the size when new, ``possible`` the range that a reading can have at
    all, ``applies`` says which variant it is for (“15 in new”), empty for all. ``action`` says
    what to do beyond the limit.
    """

    part: str
    name: str
    kind: Kind
    source: Source
    action: str
    applies: str = ""
    low: Quantity | None = None
    high: Quantity | None = None
    new: Quantity | None = None
    possible: tuple[Quantity, Quantity] | None = None

    def __post_init__(self) -> None:
        wanted = {
            Kind.LEAST: (True, False),
            Kind.MOST: (False, True),
            Kind.BETWEEN: (True, True),
            Kind.LOOK: (False, False),
        }[self.kind]
        if (self.low is not None, self.high is not None) != wanted:
            raise Refusal(f"{self.name}: a limit of kind “{self.kind}” has the wrong bounds.")
        for one in (self.low, self.high, self.new):
            check_kind(one, "diameter", self.name)
        if self.low is not None and self.high is not None and self.low > self.high:
            raise Refusal(f"{self.name}: the lower bound lies above the upper one.")


@dataclass(frozen=True)
class WearReading:
    """One reading: a length, or True for fine and False for not, where one only looks.

    ``worked`` is the area that the planter had done by then, None when it is not known.
    """

    row: int
    part: str
    value: Quantity | bool
    on: date
    worked: Quantity | None = None
    applies: str = ""

    def __post_init__(self) -> None:
        where = f"Row {self.row}, {self.part}"
        if not isinstance(self.value, bool):
            check_kind(self.value, "diameter", where)
        check_kind(self.worked, "area", f"{where}, area worked")


@dataclass(frozen=True)
class WearVerdict:
    """How one reading stands; ``limit`` is None where none is known, ``says`` a sentence."""

    reading: WearReading
    limit: WearLimit | None
    condition: WearState
    says: str


@dataclass(frozen=True)
class WearRate:
    """Wear between two dates, and what is left.

    ``per_area`` is length per area, ``area_left`` an area; None where the area worked is not
    known. ``per_time`` is length per time. ``reaches_limit`` is the date at the pace so far;
    None, as ``area_left``, when no wear was measured or there is no limit.
    """

    per_area: Quantity | None
    per_time: Quantity
    area_left: Quantity | None
    reaches_limit: date | None


def limit_for(part: str, applies: str, limits: Iterable[WearLimit]) -> WearLimit | None:
    """Return the limit with the best trust for a part; your manual comes first.

    A limit for this very variant goes before one for all variants of equal trust.
    """
    fitting = [one for one in limits if one.part == part and one.applies in ("", applies)]
    return min(fitting, key=lambda one: (one.source.rank, not one.applies), default=None)


def judge_wear(reading: WearReading, limits: Iterable[WearLimit]) -> WearVerdict:
    """Return good, watch or replace for one reading by the best limit there is.

    Raises Refusal for a reading that the part cannot have, or of the wrong kind.
    """
    limit = limit_for(reading.part, reading.applies, limits)
    if limit is None:
        says = f"No limit is known for {reading.part}; enter one from your manual."
        return WearVerdict(reading, None, WearState.NO_LIMIT, says)
    if limit.kind is Kind.LOOK:
        condition = _looked(reading, limit)
        return WearVerdict(reading, limit, condition, _look_says(limit, condition))
    value = _measured(reading, limit)
    return WearVerdict(reading, limit, _condition(value, limit), _says(value, limit))


def judge_all(
    readings: Sequence[WearReading], limits: Iterable[WearLimit]
) -> tuple[WearVerdict, ...]:
    """Return the verdict on every reading, in the order given. Raises Refusal as ``judge_wear``."""
    known = tuple(limits)
    return tuple(judge_wear(reading, known) for reading in readings)


def worst_condition(verdicts: Iterable[WearVerdict]) -> WearState:
    """Return the worst condition among verdicts; no limit known when there is no other."""
    found = {one.condition for one in verdicts}
    return next((one for one in _WORST if one in found), WearState.NO_LIMIT)


def wear_rate(first: WearReading, second: WearReading, limit: WearLimit) -> WearRate:
    """Return the wear between two readings of one part of one row, and what is left of it.

    Linear, as measured so far. Raises Refusal for readings of different parts or of one day, for
    a look or a two-sided limit, which have no wear, or for an area that shrank.
    """
    _check_pair(first, second, limit)
    unit = "mm"
    before, after = (float(_measured(one, limit).to(unit).magnitude) for one in (first, second))
    bound = limit.low if limit.low is not None else limit.high
    sign = 1 if limit.kind is Kind.LEAST else -1
    worn = sign * (before - after)
    left = sign * (after - float(bound.to(unit).magnitude)) if bound is not None else 0.0
    days = (second.on - first.on).days
    acres = _acres(first, second)
    pace = None if worn <= 0 else max(left, 0.0) / worn
    return WearRate(
        per_area=None if acres is None else Q(worn / acres, "mm/acre"),
        per_time=Q(worn / days, "mm/day"),
        area_left=None if acres is None or pace is None else Q(pace * acres, "acre"),
        reaches_limit=None if pace is None else _after(second.on, pace * days),
    )


def _measured(reading: WearReading, limit: WearLimit) -> Quantity:
    value = reading.value
    if isinstance(value, bool):
        raise Refusal(f"Row {reading.row}, {limit.name}: a measured figure is needed.")
    low, high = limit.possible or (Q(0.0, "in"), Q(100.0, "in"))
    if not low <= value <= high:
        raise Refusal(
            f"Row {reading.row}, {limit.name}: {said(value)} is not possible; "
            f"enter {said(low)} to {said(high)}."
        )
    return value


def _looked(reading: WearReading, limit: WearLimit) -> WearState:
    if not isinstance(reading.value, bool):
        raise Refusal(f"Row {reading.row}, {limit.name}: answer fine or not fine, not a figure.")
    return WearState.GOOD if reading.value else WearState.REPLACE


def _condition(value: Quantity, limit: WearLimit) -> WearState:
    if limit.low is not None and value < limit.low:
        return WearState.REPLACE
    if limit.high is not None and value > limit.high:
        return WearState.REPLACE
    bound = limit.low if limit.kind is Kind.LEAST else limit.high
    if limit.kind is Kind.BETWEEN or limit.new is None or bound is None:
        return WearState.GOOD
    left = float(((value - bound) / (limit.new - bound)).to("count").magnitude)
    return WearState.WATCH if left <= WATCH_SHARE + 1e-9 else WearState.GOOD


def _says(value: Quantity, limit: WearLimit) -> str:
    parts = [f"{limit.name} {_exactly(value)}"]
    if limit.low is not None:
        parts.append(f"least {_exactly(limit.low)}")
    if limit.high is not None:
        parts.append(f"most {_exactly(limit.high)}")
    return ", ".join(parts) + "."


def _exactly(length: Quantity) -> str:
    """Say a length finely enough to tell a reading from its limit."""
    return said(length, 2 if f"{length.units:~}" == "in" else 1)


def _look_says(limit: WearLimit, condition: WearState) -> str:
    return f"{limit.name}: {'fine' if condition is WearState.GOOD else 'not fine'}."


def _check_pair(first: WearReading, second: WearReading, limit: WearLimit) -> None:
    if (first.row, first.part) != (second.row, second.part):
        raise Refusal("Wear needs two readings of the same part of the same row.")
    if limit.kind not in (Kind.LEAST, Kind.MOST):
        raise Refusal(f"{limit.name}: wear is reckoned only for a least or a most.")
    if second.on <= first.on:
        raise Refusal(f"{limit.name}: the second reading must be of a later day.")


def _acres(first: WearReading, second: WearReading) -> float | None:
    if first.worked is None or second.worked is None:
        return None
    acres = float((second.worked - first.worked).to("acre").magnitude)
    if acres < 0:
        raise Refusal("The area worked shrank between the two readings; check both.")
    return acres or None


def _after(day: date, days: float) -> date | None:
    try:
        return day + timedelta(days=days)
    except OverflowError:
        return None
