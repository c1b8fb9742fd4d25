"""Which singulator position does best, each at its own best vacuum."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import sqrt

from changeover.quantities import Refusal
from changeover.seed.tuning_advice import Advice

_Z = 1.959964  # 95 % two-sided of the normal curve


@dataclass(frozen=True)
class PositionChoice:
    """The singulator position with the least error at its own best vacuum, and a sentence."""

    position: str
    advice: Advice
    clear: bool
    says: str


def choose_position(by_position: Mapping[str, Advice]) -> PositionChoice:
    """Return the position whose best level has the least total error, and whether that is clear.

    Clear means that the difference from the runner-up exceeds 1.96 standard errors, taken from
    the intervals. Raises Refusal when no position has a fitted error.
    """
    known = [
        (advice.error, name) for name, advice in by_position.items() if advice.error is not None
    ]
    if not known:
        raise Refusal("Singulator: no position has runs enough to compare; run two levels each.")
    known.sort()
    _, name = known[0]
    first = by_position[name]
    if len(known) == 1:
        return PositionChoice(
            position=name,
            advice=first,
            clear=False,
            says=f"Only position {name} has runs to go by.",
        )
    other_name = known[1][1]
    other = by_position[other_name]
    gap = (other.error or 0.0) - (first.error or 0.0)
    doubt = sqrt(_spread(first) ** 2 + _spread(other) ** 2)
    clear = gap > _Z * doubt
    says = (
        f"Position {name} has {gap:.1%} fewer errors than {other_name} at each one's best vacuum"
        + ("." if clear else ", which the counts cannot tell from chance; run more cells.")
    )
    return PositionChoice(name, first, clear, says)


def _spread(advice: Advice) -> float:
    return ((advice.error_high or 0.0) - (advice.error_low or 0.0)) / (2.0 * _Z)
