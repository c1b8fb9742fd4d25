"""The demo's inspections, gauges, prices and appraisals, carried out through the door."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from changeover.bundled import bundled
from changeover.desk import gauge, inspect_wear
from changeover.desk.appraise import KeptAppraisal, import_prices
from changeover.desk.board import read_board
from changeover.desk.door import apply
from changeover.desk.shop_edits import PutAppraisal
from changeover.quantities import Q, read_quantity
from changeover.store.opening import Store

Event = Mapping[str, Any]


def inspect(store: Store, event: Event, _setups: Mapping[str, Any]) -> None:
    """Save a wear inspection: figures in inches row by row, looks good but on the rows named."""
    rows = range(1, read_board(store, event["planter"], proposal=False).planter.rows + 1)
    cells: dict[inspect_wear.Spot, inspect_wear.Value] = {}
    for part, figures in event["inches"].items():
        cells |= {(row, part): Q(size, "in") for row, size in zip(rows, figures, strict=True)}
    for part, worn in event["looked"].items():
        cells |= {(row, part): row not in worn for row in rows}
    found = inspect_wear.Inspection(
        event["at"].date(),
        cells,
        event["applies"],
        read_quantity(event["worked"], "area", what="worked"),
        event.get("note", ""),
    )
    limits = inspect_wear.wear_view(store, event["planter"]).limits
    apply(store, inspect_wear.save(store, event["planter"], found, limits), event["who"])


def read_gauges(store: Store, event: Event, _setups: Mapping[str, Any]) -> None:
    """Save gauge readings in inches of water, row by row, at the vacuum that is set."""
    board = read_board(store, event["planter"], proposal=False)
    start = gauge.first_gauges(board, event["at"].date())
    rows = [row for group in gauge.fans(board) for row in group.rows]
    sizes = dict(enumerate(event["vacuum"], start=1))
    found = gauge.Gauges(
        start.day,
        {row: Q(sizes[row], "inH2O") for row in rows},
        start.set_values,
        {**start.near, **event["near"]},
    )
    apply(store, gauge.save(board, found), event["who"])


def take_prices(store: Store, event: Event, _setups: Mapping[str, Any]) -> None:
    """Import the demo's price list."""
    path = bundled("resources", "demo", event["file"])
    apply(store, import_prices(store, path, event["at"].date()), event["who"])


def appraise(store: Store, event: Event, _setups: Mapping[str, Any]) -> None:
    """Keep an appraisal with the dealer's values."""
    kept = KeptAppraisal(
        event["planter"],
        event["name"],
        event["at"].date(),
        prices=event["prices"],
        currency="USD",
        as_found=Decimal(event["as_found"]),
        reconditioned=Decimal(event["reconditioned"]),
        note=event.get("note", ""),
    )
    apply(store, PutAppraisal(kept), event["who"])
