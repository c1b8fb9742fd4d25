"""Proving meters on the bench: a run as it is entered, its verdict, and the edit that saves it."""

from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass
from typing import Any

from changeover.desk.bench_runs import BenchRun
from changeover.desk.prove.proofs import KeptFinding, Proof, PutProof, TakenProof, save_proof
from changeover.proof.bench import RowBench, Standing
from changeover.proof.bench_report import BenchReport, report_bench
from changeover.proof.cells import CellCount, count_by_cell
from changeover.proof.findings import Finding, Weight
from changeover.proof.verdict_findings import METER, bench_findings, cell_findings

_SHARES = ("single_least", "skip_most", "double_most")


@dataclass(frozen=True)
class BenchVerdict:
    """A judged run: the report, the counts by cell of the disc, and what fell short."""

    report: BenchReport
    cells: Mapping[int, tuple[CellCount, ...]]
    findings: tuple[Finding, ...]

    def row(self, number: int) -> RowBench:
        """Return the verdict on one row. Raises KeyError."""
        for one in self.report.rows:
            if one.count.row == number:
                return one
        raise KeyError(number)


def judge_run(run: BenchRun) -> BenchVerdict:
    """Return the verdict on a run. Raises Refusal for a run without rows or with mixed meters."""
    report = report_bench([line.count for line in run.lines], run.limits, plan=run.plan)
    cells = _by_cell(run)
    found = [one for one in bench_findings(report) if one.weight is Weight.WORK]
    for row, counts in cells.items():
        found.extend(cell_findings(row, counts))
    return BenchVerdict(report, cells, tuple(found))


def _by_cell(run: BenchRun) -> dict[int, tuple[CellCount, ...]]:
    """Count by cell where one stretch of events was listed; replicates begin at another cell."""
    if run.disc_cells is None:
        return {}
    rows = [line.row for line in run.lines]
    return {
        line.row: count_by_cell(line.events, line.cells, run.disc_cells)
        for line in run.lines
        if line.events and rows.count(line.row) == 1
    }


def save_run(
    planter: str, run: BenchRun, lot: str | None = None, known: Iterable[KeptFinding] = ()
) -> PutProof:
    """Return the edit that saves a run with what fell short in it.

    ``known`` are the findings that are open: the cells of a disc that failed before are settled
    with their row. Raises Refusal when the run cannot be judged.
    """
    verdict = judge_run(run)
    rows = settled_rows(verdict)
    parts = {(row, METER) for row in rows}
    again = {
        (one.finding.row, one.finding.part)
        for one in known
        if one.finding.proof is Proof.BENCH and one.finding.row in rows
    }
    proof = TakenProof(
        planter,
        Proof.BENCH,
        run_readings(run),
        note=run.note,
        lot=lot,
        meters={line.row: line.meter for line in run.lines if line.meter},
        settles=frozenset() if run.to_tune else frozenset(parts | again),
    )
    return save_proof(proof, () if run.to_tune else verdict.findings)


def settled_rows(verdict: BenchVerdict) -> frozenset[int]:
    """Return the rows that a run decides: those that pass, and those that fall short.

    A row that is not proved, or that ran too few cells to show a fault, settles nothing.
    """
    short = {one.row for one in verdict.findings}
    passing = {
        one.count.row
        for one in verdict.report.rows
        if one.standing is Standing.WITHIN
        or (one.standing is Standing.NO_LIMIT and one.count.row not in verdict.report.too_short)
    }
    return frozenset(row for row in short | passing if row is not None)


def run_readings(run: BenchRun) -> dict[str, Any]:
    """Return a run as the store keeps it."""
    limits = {name: getattr(run.limits, name) for name in _SHARES}
    return {
        "vacuum": run.vacuum,
        "position": run.position,
        "disc_cells": run.disc_cells,
        "limits": limits,
        "plan": asdict(run.plan),
        "to_tune": run.to_tune,
        "lines": [
            {
                "row": line.row,
                "meter": line.meter,
                "cells": line.cells,
                "skips": line.skips,
                "doubles": line.doubles,
                "events": [[one.cell, str(one.kind)] for one in line.events],
            }
            for line in run.lines
        ],
    }
