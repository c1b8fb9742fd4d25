"""Tuning vacuum from bench runs: every meter alone, all together, and each singulator position."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from changeover.files.tuning_readings import read_tuning_runs
from changeover.quantities import Quantity, Refusal, Units
from changeover.seed.bench_counts import Reading, counts_by_meter
from changeover.seed.tuning_advice import Advice, advise, advise_together
from changeover.seed.tuning_positions import PositionChoice, choose_position


@dataclass(frozen=True)
class Tuned:
    """Advice for every meter, for all meters on one fan, and on singulator positions if varied."""

    meters: tuple[Advice, ...]
    together: Advice
    position: PositionChoice | None


def read_runs(path: Path) -> tuple[Reading, ...]:
    """Read bench runs from a file. Raises Refusal with the line and column of what is wrong."""
    return read_tuning_runs(path)


def tune_file(
    path: Path,
    present: Quantity | None = None,
    most: Quantity | None = None,
    units: Units = Units.US,
) -> Tuned:
    """Read bench runs from a file and return what they advise. Raises Refusal."""
    return tune(read_tuning_runs(path), present, most, units)


def tune(
    runs: Sequence[Reading],
    present: Quantity | None = None,
    most: Quantity | None = None,
    units: Units = Units.US,
) -> Tuned:
    """Return what bench runs advise.

    ``present`` is the present level, ``most`` the most that the fan reaches. With several
    singulator positions the advice together is that of the position chosen. Raises Refusal.
    """
    meters = advise(counts_by_meter(runs), present, most, units)
    positions = sorted({run.position for run in runs})
    by_position = {
        name: _together([run for run in runs if run.position == name], present, most, units)
        for name in positions
    }
    if len(positions) == 1:
        return Tuned(meters, by_position[positions[0]], None)
    try:
        choice = choose_position(by_position)
    except Refusal:
        return Tuned(meters, by_position[positions[0]], None)
    return Tuned(meters, choice.advice, choice)


def _together(
    runs: Sequence[Reading], present: Quantity | None, most: Quantity | None, units: Units
) -> Advice:
    alike = [replace(run, position="") for run in runs]
    return advise_together(counts_by_meter(alike), present, most, units)
