"""Proving spacing in the furrow: a test as it is entered, its verdict, and saving it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import numpy as np

from changeover.desk.prove.proofs import Proof, PutProof, TakenProof, save_proof
from changeover.files.proof_readings import read_spacings
from changeover.proof.bench import Standing
from changeover.proof.bootstrap import SpacingIntervals, bootstrap_rows
from changeover.proof.findings import Finding
from changeover.proof.source import Source
from changeover.proof.spacing import (
    SpacingMeasures,
    all_spacings,
    measure_rows,
    measure_spacings,
    spacings_between,
)
from changeover.proof.spacing_limits import SpacingLimits, SpacingVerdict, judge_spacing
from changeover.proof.verdict_findings import SPACING, spacing_findings
from changeover.quantities import Q, Quantity, Refusal, how_many
from changeover.seed.reasons import Trust

LEAST = 2  # spacings of a row below which nothing can be drawn again
_LIMITS = ("quality_least", "multiples_most", "misses_most", "precision_most")


@dataclass(frozen=True)
class SpacingTest:
    """Spacings by row, arrays of lengths, against a target spacing; ``note`` says where and when.

    ``target`` is None until one is entered.
    """

    says = "Enter the spacings"

    target: Quantity | None = None
    rows: Mapping[int, Quantity] = field(default_factory=dict)
    limits: SpacingLimits = field(default_factory=SpacingLimits)
    note: str = ""

    def with_row(self, row: int, spacings: Quantity | None) -> "SpacingTest":
        """Return the test with the spacings of one row, or (None) without it."""
        rows = {**self.rows}
        if spacings is None:
            rows.pop(row, None)
        else:
            rows[row] = spacings
        return SpacingTest(self.target, rows, self.limits, self.note)


@dataclass(frozen=True)
class JudgedSpacing:
    """The measures and verdicts of a test, by row and over all, and what fell short."""

    rows: Mapping[int, SpacingMeasures]
    overall: SpacingMeasures
    verdicts: Mapping[int, SpacingVerdict]
    overall_verdict: SpacingVerdict
    findings: tuple[Finding, ...]


def judge_test(
    test: SpacingTest, intervals: Mapping[int, SpacingIntervals] | None = None
) -> JudgedSpacing:
    """Return the verdict on a test; with ``intervals`` precision is judged by its own.

    Raises Refusal without a target or rows.
    """
    if test.target is None:
        raise Refusal("The target spacing is missing; enter it, such as 6.5 in.")
    measured = measure_rows(test.rows, test.target)
    overall = measure_spacings(all_spacings(test.rows), test.target)
    precision = {row: one.precision_ref for row, one in (intervals or {}).items()}
    verdicts = {
        row: judge_spacing(one, test.limits, precision.get(row)) for row, one in measured.items()
    }
    return JudgedSpacing(
        measured,
        overall,
        verdicts,
        judge_spacing(overall, test.limits),
        spacing_findings(verdicts),
    )


def intervals_of(
    test: SpacingTest, stop: Callable[[], bool], report: Callable[[float], None]
) -> tuple[dict[int, SpacingIntervals], SpacingIntervals]:
    """Return bootstrap intervals by row and over all; ``report`` is told the share done.

    Raises Refusal when ``stop`` says so, or without a target.
    """
    if test.target is None:
        raise Refusal("The target spacing is missing; enter it, such as 6.5 in.")
    few = [row for row, spacings in test.rows.items() if np.size(spacings.magnitude) < LEAST]
    if few:
        raise Refusal(f"Row {few[0]}: intervals need at least {LEAST} spacings.")

    def go_on(done: float) -> bool:
        report(done)
        return not stop()

    return bootstrap_rows(test.rows, test.target, go_on=go_on)


def save_test(planter: str, test: SpacingTest, lot: str | None = None) -> PutProof:
    """Return the edit that saves a test; it settles rows that pass and rows that fall short."""
    judged = judge_test(test)
    settles = {
        (row, SPACING) for row, one in judged.verdicts.items() if one.standing is not Standing.OPEN
    }
    proof = TakenProof(
        planter,
        Proof.SPACING,
        spacing_readings(test),
        note=test.note,
        lot=lot,
        settles=frozenset(settles),
    )
    return save_proof(proof, judged.findings)


def spacing_readings(test: SpacingTest) -> dict[str, Any]:
    """Return a test as the store keeps it."""
    return {
        "target": test.target,
        "rows": {str(row): spacings for row, spacings in test.rows.items()},
        "limits": {name: getattr(test.limits, name) for name in _LIMITS},
        "source": [test.limits.source.text, str(test.limits.source.trust)],
    }


def spacing_of(proof: TakenProof) -> SpacingTest:
    """Return the test that a proof holds. Raises Refusal for readings of a newer form."""
    if proof.form != 1:
        raise Refusal("This spacing test was saved by a newer program; open it there.")
    kept = proof.readings
    rows = {int(row): spacings for row, spacings in kept["rows"].items()}
    text, trust = kept["source"]
    limits = SpacingLimits(**kept["limits"], source=Source(text, Trust(trust)))
    return SpacingTest(kept["target"], rows, limits, proof.note)


def read_figures(text: str, unit: str, *, positions: bool, row: int) -> Quantity:
    """Return the spacings in a text of figures, typed or pasted, in ``unit``.

    With ``positions`` the figures are places along a tape, in order. Raises Refusal that names
    the row and the figure.
    """
    words = text.replace(";", " ").replace("\t", " ").split()
    values = np.array([_figure(word, n, row) for n, word in enumerate(words, start=1)])
    if values.size == 0:
        raise Refusal(f"Row {row}: there are no figures; type or paste them.")
    try:
        return spacings_between(Q(values, unit)) if positions else Q(values, unit)
    except Refusal as refusal:
        raise Refusal(f"Row {row}: {refusal}") from refusal


def import_spacings(path: Path, test: SpacingTest, rows: range) -> SpacingTest:
    """Return a test with the rows of a CSV file. Raises Refusal by line and column."""
    found = read_spacings(path)
    stray = [row for row in found if row not in rows]
    if stray:
        there = how_many(len(rows), "row")
        raise Refusal(f"{path.name}: row {stray[0]} is not on this planter of {there}.")
    return SpacingTest(test.target, {**test.rows, **found}, test.limits, test.note)


def _figure(word: str, number: int, row: int) -> float:
    try:
        value = float(word.replace(",", "."))
    except ValueError:
        raise Refusal(f"Row {row}, figure {number}: “{word}” is no number; correct it.") from None
    if not 0 <= value < 1e7:
        raise Refusal(f"Row {row}, figure {number}: {word} is not possible; correct it.")
    return value
