"""Findings: a row or part that fell short, with evidence and advice, until it is read again."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from changeover.proof.advice import Advice


class Proof(StrEnum):
    """Which proof a finding comes from; only a new reading of that proof closes it."""

    BENCH = "bench run"
    SPACING = "spacing in the furrow"
    DEPTH = "depth dig"
    DRIVE = "drive start"
    VACUUM = "vacuum and fan"
    WEAR = "wear inspection"


class Weight(StrEnum):
    """Whether a finding is work to do, or something to watch or to measure better."""

    WORK = "work"
    WATCH = "watch"


@dataclass(frozen=True)
class Finding:
    """One thing that fell short.

    ``row`` is None for what belongs to no single row; ``what`` is the short title of a task,
    ``evidence`` the reading against its limit, ``advice`` ranked, each with its source.
    """

    proof: Proof
    row: int | None
    part: str
    what: str
    evidence: str
    advice: tuple[Advice, ...]
    weight: Weight = Weight.WORK

    @property
    def key(self) -> tuple[Proof, int | None, str]:
        """What must be read again to close it."""
        return self.proof, self.row, self.part


def still_open(
    before: Iterable[Finding],
    now: Iterable[Finding],
    read_again: Iterable[tuple[Proof, int | None, str]],
) -> tuple[Finding, ...]:
    """Return the findings open after a new reading.

    Those of ``before`` that were not read again stay; those read again stay only as the new
    reading finds them, in ``now``. ``read_again`` holds the keys of all that was read anew.
    """
    again = set(read_again)
    kept = tuple(one for one in before if one.key not in again)
    fresh = tuple(now)
    seen = {one.key for one in fresh}
    return tuple(one for one in kept if one.key not in seen) + fresh
