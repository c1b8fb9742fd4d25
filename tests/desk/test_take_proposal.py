"""Taking a proposal writes history for what it changes, and nothing where it changes nothing."""

from changeover.desk.door import apply
from changeover.desk.edits import ChooseNext, NextJob, SetCells, Side, TakeProposal
from changeover.desk.records import history
from changeover.planter.setup import Cell
from changeover.quantities import Q, Quantity, is_quantity
from changeover.store.opening import Store

PENNY = "Penny Twelve"


def target(store: Store) -> dict[Cell, object]:
    with store.read() as work:
        return dict(work.cells.read(PENNY, Side.TARGET).values)


def take(store: Store) -> int:
    """Take Penny Twelve's proposal over and return the number of the history entry."""
    return apply(store, TakeProposal(PENNY), "Ada").entry


def chosen(store: Store) -> None:
    apply(store, ChooseNext(PENNY, NextJob("Y-208", "Otter Flat")), "Ada")
    assert take(store)


def test_taking_the_same_proposal_again_leaves_no_entry(demo: Store) -> None:
    chosen(demo)
    newest = history(demo, PENNY, 1)[0].entry
    assert take(demo) == 0
    assert history(demo, PENNY, 1)[0].entry == newest


def test_a_value_that_shows_the_same_is_no_change(demo: Store) -> None:
    chosen(demo)
    cells = {c: v for c, v in target(demo).items() if c.setting == "vacuum" and is_quantity(v)}
    nudged: dict[Cell, Quantity] = {cell: value * 1.00001 for cell, value in cells.items()}
    assert cells
    apply(demo, SetCells(PENNY, Side.TARGET, nudged, cells), "Ada")
    assert take(demo) == 0
    assert {cell: target(demo)[cell] for cell in cells} == nudged


def test_a_value_that_shows_another_figure_is_taken(demo: Store) -> None:
    chosen(demo)
    cell, value = next((c, v) for c, v in target(demo).items() if c.setting == "vacuum")
    apply(demo, SetCells(PENNY, Side.TARGET, {cell: value + Q(0.5, "inH2O")}, {cell: value}), "Ada")
    assert take(demo)
    assert target(demo)[cell] == value
