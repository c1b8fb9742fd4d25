"""``changeover bench``: single-seed share, skips and doubles of meters, and the odd ones out."""

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from changeover.commands.answers import write_json
from changeover.commands.arguments import Parsers, add_job, add_json
from changeover.commands.proof_words import (
    add_share,
    advice_json,
    interval_json,
    lines_of,
    no_none,
    percent_of,
    share_of,
    shown,
)

if TYPE_CHECKING:
    from changeover.desk.prove.files import BenchProof
    from changeover.proof.bench import JudgedShare, RowBench
    from changeover.proof.bench_report import BenchPlan, BenchReport
    from changeover.proof.odd_rows import OddRow


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(parsers, "bench", "Judge a bench run of meters, row by row.", run)
    parser.add_argument(
        "file", help="CSV: row, cells, skips, doubles; or row, cell, event; or row, time (s)"
    )
    parser.add_argument("--rows", help="rows that must be in the file, such as 1-12")
    parser.add_argument(
        "--passed", type=int, metavar="N", help="cells passed, for a list of events"
    )
    parser.add_argument(
        "--disc-cells", type=int, metavar="N", help="cells on the disc, to find a damaged one"
    )
    add_share(parser, "--single-least", "least share of single seeds")
    add_share(parser, "--skips-most", "most skips")
    add_share(parser, "--doubles-most", "most doubles")
    add_share(parser, "--good", "skips of a good meter, for the length of the run (2%%)")
    add_share(parser, "--bad", "skips of a bad meter, for the length of the run (5%%)")
    parser.add_argument(
        "--control", choices=("holm", "bh"), default="holm", help="control of false alarms"
    )
    add_json(parser)


def run(args: argparse.Namespace) -> int:
    """Write the verdict; raises Refusal for arguments or a file that cannot be used."""
    from changeover.desk.prove.files import prove_bench
    from changeover.proof.bench import BenchLimits
    from changeover.proof.false_alarms import Control

    limits = BenchLimits(
        single_least=share_of(args, "single_least"),
        skip_most=share_of(args, "skips_most"),
        double_most=share_of(args, "doubles_most"),
    )
    proof = prove_bench(
        Path(args.file),
        limits,
        rows=args.rows,
        passed=args.passed,
        disc_cells=args.disc_cells,
        control=Control.HOLM if args.control == "holm" else Control.BENJAMINI_HOCHBERG,
        plan=_plan(args),
    )
    if args.json:
        write_json(answer(proof))
    else:
        sys.stdout.write(_text(proof))
    return 0


def answer(proof: "BenchProof") -> dict[str, object]:
    """Return the JSON answer: ``rows``, ``overall``, ``plan``, ``too_short``, ``findings``.

    Shares in percent; each row has ``cells``, ``skips``, ``doubles``, its shares with intervals,
    ``odd_skips`` and ``odd_doubles`` (p-values against the rest), and ``damaged_cells`` where
    the events and the disc's cells are known.
    """
    from changeover.proof.verdict_findings import bench_findings, cell_findings

    report = proof.report
    skips, doubles = (
        {one.row: one for one in odd} for odd in (report.odd_skips, report.odd_doubles)
    )
    rows = []
    for one in report.rows:
        row = one.count.row
        extra = {"odd_skips": _odd(skips.get(row)), "odd_doubles": _odd(doubles.get(row))}
        rows.append({"row": row, **row_json(one), **extra, **_cells(proof, row)})
    found = list(bench_findings(report))
    for row, cells in proof.cells.items():
        found.extend(cell_findings(row, cells))
    return {
        "rows": rows,
        "overall": row_json(report.overall),
        "plan": {**vars(report.plan), "power": 100 * report.plan.power}
        | {"false_alarm": 100 * report.plan.false_alarm},
        "too_short": list(report.too_short),
        "findings": [
            {
                "row": one.row,
                "part": one.part,
                "what": one.what,
                "evidence": one.evidence,
                "weight": str(one.weight),
                "advice": advice_json(one.advice),
            }
            for one in found
        ],
    }


def row_json(one: "RowBench") -> dict[str, object]:
    """Return the verdict on one row, or on all, as JSON."""
    count = one.count
    return {
        **({"meter": count.meter} if count.meter else {}),
        "cells": count.cells,
        "skips": count.skips,
        "doubles": count.doubles,
        "single": _share(one.single),
        "skip": _share(one.skip),
        "double": _share(one.double),
        "standing": str(one.standing),
    }


def _share(one: "JudgedShare") -> dict[str, object]:
    return {
        "share": percent_of(one.share),
        "interval": interval_json(one.interval),
        "limit": percent_of(one.limit),
        "standing": str(one.standing),
    }


def _odd(one: "OddRow | None") -> dict[str, object] | None:
    if one is None:
        return None
    return {
        "share": percent_of(one.share),
        "rest": percent_of(one.rest),
        "p": one.p,
        "adjusted": one.adjusted,
        "odd": one.odd,
    }


def _cells(proof: "BenchProof", row: int) -> dict[str, object]:
    if row not in proof.cells:
        return {}
    damaged = [one for one in proof.cells[row] if one.damaged]
    return {"damaged_cells": [vars(one) for one in damaged]}


def _plan(args: argparse.Namespace) -> "BenchPlan":
    from changeover.proof.bench_report import BenchPlan

    given = no_none({"good": share_of(args, "good"), "bad": share_of(args, "bad")})
    return BenchPlan(**given)  # type: ignore[arg-type]


def _text(proof: "BenchProof") -> str:
    report = proof.report
    odd = {one.row for one in (*report.odd_skips, *report.odd_doubles) if one.odd}
    header = ("row", "cells", "single %", "skips %", "doubles %", "verdict", "odd")
    rows = [_line(str(one.count.row), one, odd=one.count.row in odd) for one in report.rows]
    rows.append(_line("all", report.overall, odd=False))
    return lines_of(header, rows) + _plan_text(report) + _damaged_text(proof) + _advice_text(report)


def _line(name: str, one: "RowBench", *, odd: bool) -> tuple[str, ...]:
    shares = (one.single, one.skip, one.double)
    figures = (
        f"{shown(100 * s.share)} ({shown(100 * s.interval.low)}–{shown(100 * s.interval.high)})"
        for s in shares
    )
    return (name, str(one.count.cells), *figures, str(one.standing), "odd" if odd else "")


def _plan_text(report: "BenchReport") -> str:
    short = ", ".join(map(str, report.too_short)) or "none"
    return (
        f"Plan: {report.plan.cells} cells a row, alarm at {report.plan.alarm_at} skips; "
        f"rows run too short: {short}.\n"
    )


def _damaged_text(proof: "BenchProof") -> str:
    lines = [
        f"Row {row}: cell {one.cell} of the disc failed {one.events} of {one.passes} passes.\n"
        for row, cells in proof.cells.items()
        for one in cells
        if one.damaged
    ]
    return "".join(lines)


def _advice_text(report: "BenchReport") -> str:
    from changeover.proof.findings import Weight
    from changeover.proof.verdict_findings import bench_findings

    lines = []
    for one in bench_findings(report):
        if one.weight is Weight.WORK:
            lines.append(f"Row {one.row}: {one.what}.\n")
            lines.extend(f"  {a.text} ({a.source}) {a.caution}".rstrip() + "\n" for a in one.advice)
    return "".join(lines)
