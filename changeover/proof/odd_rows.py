"""Rows that differ from the rest: exact tests with false alarms under control."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from changeover.proof.exact import Side, binomial_p, fisher_p
from changeover.proof.false_alarms import Control, adjusted
from changeover.quantities import Refusal


class Against(StrEnum):
    """Whether the rest's share counts as uncertain (Fisher) or as known (binomial)."""

    FISHER = "Fisher's exact test"
    BINOMIAL = "exact binomial"


@dataclass(frozen=True)
class RowEvents:
    """Events (skips, say) in trials (cells passed) of one row."""

    row: int
    events: int
    trials: int


@dataclass(frozen=True)
class OddRow:
    """How one row compares with all others pooled; shares and p-values 0 to 1."""

    row: int
    share: float
    rest: float
    p: float
    adjusted: float
    odd: bool


def odd_rows(
    rows: Sequence[RowEvents],
    *,
    level: float = 0.05,
    side: Side = Side.MORE,
    control: Control = Control.HOLM,
    against: Against = Against.FISHER,
) -> tuple[OddRow, ...]:
    """Return each row's comparison with the rest, in the order given.

    A row is odd when its adjusted p-value is at most ``level``. With a single row there is no
    rest, and the answer is empty. Raises Refusal when a row stands twice or has impossible
    counts.
    """
    if len({one.row for one in rows}) < len(rows):
        raise Refusal("A row stands twice among those compared; add its runs together first.")
    if len(rows) < 2:
        return ()
    events, trials = sum(r.events for r in rows), sum(r.trials for r in rows)
    raw = [_p(one, events - one.events, trials - one.trials, side, against) for one in rows]
    return tuple(
        OddRow(
            one.row,
            one.events / one.trials,
            (events - one.events) / (trials - one.trials),
            p,
            float(q),
            bool(q <= level),
        )
        for one, p, q in zip(rows, raw, adjusted(raw, control), strict=True)
    )


def _p(one: RowEvents, events: int, trials: int, side: Side, against: Against) -> float:
    if one.trials < 1:
        raise Refusal(f"Row {one.row} passed no cells; leave it out or run it.")
    if against is Against.FISHER:
        return fisher_p(one.events, one.trials, events, trials, side)
    return binomial_p(one.events, one.trials, events / trials, side)
