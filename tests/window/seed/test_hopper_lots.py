"""On a planter with row hoppers some rows may take another lot, told by their rows."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from changeover.desk.board import read_board
from changeover.desk.edits import NextJob, PutLot
from changeover.planter.groups import equal_groups
from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.quantities import Q, Units
from changeover.seed.lots import SeedLot
from changeover.window.page import EVERYTHING
from changeover.window.seed.job_more import JobMore
from changeover.window.seed.page import SeedPage
from tests.window.on_demo import OnDemo, on_demo

SMALLER = SeedLot("Y-9", "soybean", length=Q(6, "mm"), width=Q(5, "mm"), thickness=Q(4, "mm"))


@pytest.fixture
def seed(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, SeedPage, "Penny Twelve") as put:
        put.door.push(PutLot(SMALLER))
        put.page.refresh(EVERYTHING)
        put.page.choosing.lot.box.choose("Y-208")
        put.page.form_proposal()
        yield put


def hoppers(seed: OnDemo) -> Any:
    return seed.page.choosing.inputs.more.hoppers


def enter(seed: OnDemo, rows: str, lot: str) -> Any:
    hoppers(seed).more.click()
    line = hoppers(seed).lines[-1]
    line.rows.setText(rows)
    line.lot.choose(lot)
    seed.page.form_proposal()
    return line


def seeds(seed: OnDemo) -> list[str]:
    cells = seed.page.proposal.cells
    return [str(one.value) for cell, one in cells.items() if cell.setting == "seed"]


def test_rows_take_another_lot_and_the_proposal_follows(seed: OnDemo) -> None:
    enter(seed, "1-6", "M-44")
    assert seeds(seed) == ["M-44"] * 6 + ["Y-208"] * 6
    groups = {group.where: group.text for group in seed.page.lines["disc"].groups}
    assert set(groups) == {"rows 1–6", "rows 7–12"}
    assert len(set(groups.values())) == 2
    assert "lot M-44" in " ".join(card.words.name for card in seed.page.cards.cards)


def test_the_matrix_follows_when_it_is_taken_over(seed: OnDemo) -> None:
    enter(seed, "9-12", "M-44")
    seed.page.take_over()
    board = read_board(seed.store, "Penny Twelve", proposal=False)
    lots = [board.target.get(Cell("seed", Place.of_row(row))) for row in (8, 9)]
    assert lots == ["Y-208", "M-44"]


def test_a_saved_job_with_two_more_lots_comes_back_whole(seed: OnDemo) -> None:
    enter(seed, "1, 3, 5", "M-44")
    enter(seed, "7-8", "Y-9")
    seed.page.take_over()
    saved = read_board(seed.store, "Penny Twelve", proposal=False).next_job
    seed.page.choosing.show_job(saved)
    assert [line.rows.text() for line in hoppers(seed).lines] == ["1, 3, 5", "7-8"]
    assert seed.page.choosing.job() == saved


@pytest.mark.parametrize(
    ("rows", "lot", "says"),
    [
        ("1-13", "M-44", "has rows 1 to 12, not 13"),
        ("", "M-44", "say which rows"),
        ("1-6", "", "choose the lot that rows 1-6 take"),
    ],
)
def test_what_is_wrong_stands_below(seed: OnDemo, rows: str, lot: str, says: str) -> None:
    enter(seed, rows, lot)
    assert says in hoppers(seed).sentence.text()
    assert says in seed.page.warnings.words.text()
    assert not seed.page.take.isEnabled()


def test_a_row_in_two_lines_is_refused_until_one_goes(seed: OnDemo) -> None:
    enter(seed, "1-6", "M-44")
    line = enter(seed, "6", "Y-9")
    assert "row 6 is given two lots" in hoppers(seed).sentence.text()
    line.remove.click()
    seed.page.form_proposal()
    assert hoppers(seed).sentence.isHidden()
    assert seeds(seed).count("M-44") == 6


def test_many_tanks_are_told_by_rows_and_few_by_boxes(qtbot: Any) -> None:
    more = JobMore(Units.US)
    qtbot.addWidget(more)
    for tanks, boxes in ((2, 2), (4, 4), (6, 0), (12, 0)):
        groups = equal_groups(Scope.TANK, tanks, 24)
        more.show_planter(Planter(f"T{tanks}", 24, Q(30, "in"), groups), (SMALLER,), Units.US)
        assert len(more.tanks) == boxes
        assert more.hoppers.isHidden() == bool(boxes)


def test_hoppers_that_are_no_more_are_left_out(seed: OnDemo) -> None:
    hoppers(seed).show_pairs(((Place(Scope.TANK, "tank 9"), "M-44"), (Place.of_row(2), "M-44")))
    assert [line.rows.text() for line in hoppers(seed).lines] == ["2"]


def test_without_a_planter_other_lots_stay_as_they_are(qtbot: Any) -> None:
    more = JobMore(Units.US)
    qtbot.addWidget(more)
    job = NextJob("Y-208", other_lots=((Place.of_row(2), "M-44"),))
    more.show_job(job)
    assert more.hoppers.isHidden()
    assert more.into(NextJob("Y-208")).other_lots == job.other_lots
