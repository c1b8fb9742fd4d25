"""The kits of two planters on one shelf, told alike on every page."""

from datetime import date

from changeover.desk.door import apply
from changeover.desk.edits import ChooseNext, NextJob, SetCells, Side, TakeProposal
from changeover.desk.export import sheet_of
from changeover.desk.open_kits import open_kit, shared_work_view
from changeover.desk.plan_switch import work_view
from changeover.desk.stock import stock
from changeover.desk.supply_list import supplies, supplies_with
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.store.opening import Store
from changeover.switch.tasks import Kit, KitLine

FIDDLE, PENNY = "Old Fiddle 24", "Penny Twelve"
MAY_4 = date(2026, 5, 4)
CELLS = {Cell("disc", Place.of_row(row)): "S56" for row in range(1, 13)}


def both(demo: Store) -> None:
    """Let Penny Twelve need the 12 discs that Old Fiddle 24 needs too."""
    found = dict.fromkeys(CELLS)
    apply(demo, ChooseNext(PENNY, NextJob("Y-208", "Otter Flat")), "Ada")
    apply(demo, TakeProposal(PENNY), "Ada")
    with demo.read() as work:
        found = {cell: work.cells.read(PENNY, Side.TARGET).get(cell) for cell in CELLS}
    apply(demo, SetCells(PENNY, Side.TARGET, CELLS, found), "Ada")


def discs(demo: Store, planter: str) -> KitLine:
    kit = shared_work_view(demo, planter, today=MAY_4).kit
    return next(line for line in kit.lines if line.part == "S56")


def test_each_planter_is_told_that_the_other_needs_the_same_discs(demo: Store) -> None:
    both(demo)
    old, pen = discs(demo, FIDDLE), discs(demo, PENNY)
    assert (old.needed, pen.needed, old.on_shelf) == (15, 12, 15)
    assert old.short + pen.short == old.short_together == pen.short_together == 12
    assert [claim.planter for claim in old.claims] == [PENNY]
    assert [claim.planter for claim in pen.claims] == [FIDDLE]


def test_the_shelf_counts_what_all_switches_need(demo: Store) -> None:
    both(demo)
    line = next(one for one in stock(demo, MAY_4) if one.part.code == "S56")
    assert (line.needed, line.short) == (27, 12)
    assert line.wanted == "15 for Old Fiddle 24 and 12 for Penny Twelve"


def test_shelf_work_page_and_supply_agree_on_every_part(demo: Store) -> None:
    both(demo)
    short = {one.part.code: one.short for one in stock(demo, MAY_4)}
    for planter in (FIDDLE, PENNY):
        for line in shared_work_view(demo, planter, today=MAY_4).kit.lines:
            assert line.short_together == short[line.part]
    assert sum(one.short for one in supplies(demo, MAY_4)) == sum(short.values())


def test_the_kit_read_off_the_difference_is_that_of_the_plan(demo: Store) -> None:
    both(demo)
    for planter in (FIDDLE, PENNY, "Magpie 31"):
        whole = work_view(demo, planter).kit
        with demo.read() as work:
            quick = open_kit(work, planter) or Kit()
        assert {o.part: o.needed for o in quick.lines} == {o.part: o.needed for o in whole.lines}
        assert set(quick.back) == set(whole.back)


def test_a_planter_without_a_target_needs_nothing(demo: Store) -> None:
    with demo.read() as work:
        assert open_kit(work, PENNY) is None


def test_a_plan_that_is_not_saved_stands_among_the_open_ones(demo: Store) -> None:
    both(demo)
    view = work_view(demo, PENNY)
    met = [one for one in supplies_with(demo, view, MAY_4) if one.part == "S56"]
    assert sorted((one.planter, one.needed) for one in met) == [(FIDDLE, 15), (PENNY, 12)]


def test_paper_and_workbook_name_the_other_planter(demo: Store) -> None:
    both(demo)
    sheet = sheet_of(shared_work_view(demo, FIDDLE, today=MAY_4), MAY_4)
    line = next(one for one in sheet.kit if one.part == "S56")
    assert line.others == "Penny Twelve needs 12 too: 12 short"
