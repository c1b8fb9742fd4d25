"""The demo's bench runs, depth digs and spacing tests, carried out through the door."""

from collections.abc import Mapping
from typing import Any

import numpy as np

from changeover.desk.bench_runs import BenchLine, BenchRun
from changeover.desk.board import read_board
from changeover.desk.door import apply
from changeover.desk.prove.bench import save_run
from changeover.desk.prove.bench_entry import meter_on
from changeover.desk.prove.depth import DepthProof, notches_as_found, save_digs
from changeover.desk.prove.proofs import findings
from changeover.desk.prove.spacing import SpacingTest, save_test
from changeover.proof.bench import BenchLimits
from changeover.proof.depth import DepthGoal
from changeover.proof.spacing_limits import PROVINCIAL
from changeover.quantities import Q, Quantity, read_quantity
from changeover.store.opening import Store

Event = Mapping[str, Any]
LIMITS = BenchLimits(skip_most=0.03, double_most=0.03)  # the demo's owners set them


def bench(store: Store, event: Event, _setups: Mapping[str, Any]) -> None:
    """Save a bench run of all rows, or of the rows named."""
    board = read_board(store, event["planter"], proposal=False)
    rows = event.get("rows", board.planter.row_numbers)
    counts = zip(rows, event["skips"], event["doubles"], strict=True)
    lines = tuple(
        BenchLine(row, event["cells"], skips, doubles, meter_on(board, row))
        for row, skips, doubles in counts
    )
    run = BenchRun(
        lines,
        read_quantity(event["vacuum"], "pressure", what="vacuum"),
        event["position"],
        event["disc_cells"],
        LIMITS,
        note=event["note"],
        to_tune=event["to_tune"],
    )
    known = findings(store, event["planter"])
    apply(store, save_run(event["planter"], run, event["lot"], known), event["who"])


def dig(store: Store, event: Event, _setups: Mapping[str, Any]) -> None:
    """Save depth digs, in inches by row, at the notches as found, and at further ones by notch."""
    board = read_board(store, event["planter"], proposal=False)
    goal = DepthGoal(
        read_quantity(event["target"], "depth", what="target"),
        read_quantity(event["tolerance"], "depth", what="tolerance"),
    )
    others = {int(row): _inches(dug) for row, dug in event.get("others", {}).items()}
    notches = notches_as_found(board)
    proof = DepthProof(_inches(event["digs"]), goal, notches, event["note"], others)
    apply(store, save_digs(board, proof), event["who"])


def measure(store: Store, event: Event, _setups: Mapping[str, Any]) -> None:
    """Save a spacing test, in inches by row."""
    target = read_quantity(event["target"], "spacing", what="target")
    test = SpacingTest(target, _inches(event["spacings"]), PROVINCIAL, event["note"])
    apply(store, save_test(event["planter"], test), event["who"])


def _inches(rows: Mapping[str, list[float]]) -> dict[int, Quantity]:
    return {int(row): Q(np.array(figures), "in") for row, figures in rows.items()}
