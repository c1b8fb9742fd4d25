"""A bench run as it is entered and kept: its rows, vacuum, position, limits and plan."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from changeover.proof.bench import BenchCount, BenchLimits
from changeover.proof.bench_events import CellEvent, EventKind, checked_events
from changeover.proof.bench_report import BenchPlan
from changeover.quantities import Quantity, Refusal
from changeover.store.proof_values import TakenProof


@dataclass(frozen=True)
class BenchLine:
    """One row of a run: cells passed, skips and doubles, and the events where they were listed."""

    row: int
    cells: int
    skips: int
    doubles: int
    meter: str = ""
    events: tuple[CellEvent, ...] = ()

    def __post_init__(self) -> None:
        checked_events(self.events, self.cells)
        self.count  # noqa: B018  the count refuses what is not possible

    @property
    def count(self) -> BenchCount:
        return BenchCount(self.row, self.cells, self.skips, self.doubles, self.meter)


@dataclass(frozen=True)
class BenchRun:
    """A bench run at one level of vacuum and one position of the singulator.

    ``disc_cells``, the cells on the disc, lets a damaged one be found in the list of events. A
    run ``to_tune`` is at a level that will not stay: it raises and closes no finding.
    """

    says = "Enter the run"

    lines: tuple[BenchLine, ...] = ()
    vacuum: Quantity | None = None
    position: str = ""
    disc_cells: int | None = None
    limits: BenchLimits = field(default_factory=BenchLimits)
    plan: BenchPlan = field(default_factory=BenchPlan)
    note: str = ""
    to_tune: bool = False

    def with_line(self, line: BenchLine, at: int | None = None) -> "BenchRun":
        """Return the run with a line more, or another one in place of the line ``at``."""
        lines = list(self.lines)
        if at is None:
            lines.append(line)
        else:
            lines[at] = line
        return replace(self, lines=tuple(lines))

    def without_line(self, at: int) -> "BenchRun":
        """Return the run without its line ``at``."""
        return replace(self, lines=self.lines[:at] + self.lines[at + 1 :])


def run_of(proof: TakenProof) -> BenchRun:
    """Return the run that a proof holds. Raises Refusal for readings of a newer form."""
    if proof.form != 1:
        raise Refusal("This bench run was saved by a newer program; open it there.")
    kept = proof.readings
    return BenchRun(
        tuple(_line(one) for one in kept["lines"]),
        kept["vacuum"],
        kept["position"],
        kept["disc_cells"],
        BenchLimits(**kept["limits"]),
        BenchPlan(**kept["plan"]),
        proof.note,
        kept["to_tune"],
    )


def _line(kept: Mapping[str, Any]) -> BenchLine:
    events = tuple(CellEvent(cell, EventKind(kind)) for cell, kind in kept["events"])
    return BenchLine(**{**kept, "events": events})
