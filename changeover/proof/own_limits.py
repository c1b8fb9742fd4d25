"""Wear limits from the user's own manual, which win over every published one."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from changeover.proof.source import Source
from changeover.proof.wear import Kind, WearLimit, limit_for
from changeover.quantities import Q, Quantity, Refusal, check_kind
from changeover.seed.reasons import Trust

MOST_LENGTH = Q(100.0, "in")  # a bound against slips of the pen, from memory


@dataclass(frozen=True)
class OwnLimit:
    """One limit as a person entered it: lengths, and where in the manual it stands.

    ``part`` is a part of the wear inspection, ``applies`` the variant it is for, empty for all.
    ``low`` alone is a least, ``high`` alone a most, both are a span.
    """

    part: str
    applies: str
    low: Quantity | None
    high: Quantity | None
    new: Quantity | None
    note: str

    def __post_init__(self) -> None:
        if not self.part.strip():
            raise Refusal("The limit is for no part; choose one.")
        if self.low is None and self.high is None:
            raise Refusal(f"{self.part}: enter a least or a most, or both.")
        for name, one in (("least", self.low), ("most", self.high), ("new", self.new)):
            check_kind(one, "diameter", f"{self.part}, {name}")
            if one is not None and not Q(0.0, "in") <= one <= MOST_LENGTH:
                raise Refusal(f"{self.part}: the {name} must be 0 to 100 in.")
        if self.low is not None and self.high is not None and self.low > self.high:
            raise Refusal(f"{self.part}: the least lies above the most.")
        if not self.note.strip():
            raise Refusal(f"{self.part}: say where the limit stands, such as the manual's page.")

    @property
    def kind(self) -> Kind:
        if self.low is not None and self.high is not None:
            return Kind.BETWEEN
        return Kind.LEAST if self.low is not None else Kind.MOST


def own_limit(own: OwnLimit, published: Iterable[WearLimit]) -> WearLimit:
    """Return the limit of an own one; name, action and possible range follow the published one."""
    known = tuple(published)
    like = limit_for(own.part, own.applies, known)
    if like is None:
        like = next((one for one in known if one.part == own.part), None)
    source = Source(f"your manual: {own.note}", Trust.MANUAL)
    name = own.part[0].upper() + own.part[1:]
    if like is None:
        action = "Do what your manual says beyond this limit."
        like = WearLimit(own.part, name, Kind.LOOK, source, action)
    return replace(
        like,
        name=name if like.kind is Kind.LOOK else like.name,
        kind=own.kind,
        source=source,
        applies=own.applies,
        possible=_possible(own, like),
        low=own.low,
        high=own.high,
        new=own.new,
    )


def with_own(own: Iterable[OwnLimit], published: Iterable[WearLimit]) -> tuple[WearLimit, ...]:
    """Return all limits, those of the user's manual first."""
    known = tuple(published)
    return (*(own_limit(one, known) for one in own), *known)


def _possible(own: OwnLimit, like: WearLimit) -> tuple[Quantity, Quantity] | None:
    """The range of the published limit, unless the user's own figures lie outside it."""
    if like.possible is None:
        return None
    low, high = like.possible
    stated = [one for one in (own.low, own.high, own.new) if one is not None]
    return like.possible if all(low <= one <= high for one in stated) else None
