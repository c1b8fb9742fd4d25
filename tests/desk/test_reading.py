"""What pages read: board, fleet, work, records, and the look-up for unsaved inputs."""

from dataclasses import replace

import pytest

from changeover.desk.board import read_board
from changeover.desk.fleet import planter_lines, planter_names
from changeover.desk.look_up import propose_for
from changeover.desk.lots import lot
from changeover.desk.plan_switch import work_view, work_view_for
from changeover.desk.records import NOW, compare, history, setups
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Q, Refusal, Units
from changeover.store.values import NextJob
from changeover.switch.tasks import TaskKind

BAR = "Old Fiddle 24"


def test_the_board_of_the_half_done_switch(demo) -> None:
    board = read_board(demo, BAR)
    assert (board.demo, board.lot.number, board.job.field.name) == (True, "Y-208", "Otter Flat")
    assert board.label_now == "Corn, Lantern Rise · set 14 April"
    assert board.label_next == "Soybean lot Y-208 → Otter Flat"
    assert board.before.get(Cell("disc", Place.of_row(1))) == "C30"
    assert board.as_found.get(Cell("disc", Place.of_row(1))) == "S56"
    assert board.proposal.cells[Cell("disc", Place.of_row(1))].value == "S56"


def test_every_proposed_value_has_its_reason_and_source(demo) -> None:
    proposal = read_board(demo, BAR).proposal
    assert all(one.reason.why and one.reason.source for one in proposal.cells.values())
    assert len(proposal.values()) > 100


def test_a_board_without_the_look_up_or_a_next_lot_has_no_proposal(demo) -> None:
    assert read_board(demo, BAR, proposal=False).proposal is None
    penny = read_board(demo, "Penny Twelve")
    assert (penny.proposal, penny.job, penny.label_next) == (None, None, "")


def test_own_settings_stand_where_the_user_put_them(demo) -> None:
    keys = [setting.key for setting in read_board(demo, BAR).settings]
    assert keys.index("row_cleaner") == keys.index("closing") + 1


def test_the_fleet_says_how_many_rows_are_ready(demo) -> None:
    lines = {line.name: line for line in planter_lines(demo)}
    assert tuple(lines) == planter_names(demo) == ("Magpie 31", BAR, "Penny Twelve")
    assert (lines[BAR].rows_ready, lines["Penny Twelve"].rows_ready) == (9, None)


def test_the_work_of_the_half_done_switch(demo) -> None:
    view = work_view(demo, BAR)
    rows = view.board.planter.row_numbers
    assert len(view.progress.rows_ready(rows)) == 9
    assert {line.part: line.needed for line in view.kit.lines} == {"S56": 15, "low": 15}
    assert [line.part for line in view.kit.lines if line.short] == ["low"]
    kinds = [task.kind for task in view.worklist.tasks]
    assert kinds.index(TaskKind.CLEAN) < kinds.index(TaskKind.SET)


def test_planning_for_an_unsaved_choice_saves_nothing(demo) -> None:
    before = history(demo, None, 1)[0].entry
    view = work_view_for(demo, "Penny Twelve", NextJob("B-22", "Crow Strip"))
    assert view.worklist.tasks
    assert view.board.label_next == "Dry bean pinto lot B-22 → Crow Strip"
    assert read_board(demo, "Penny Twelve").next_job is None
    assert history(demo, None, 1)[0].entry == before


def test_the_look_up_answers_for_a_lot_that_is_not_saved(demo) -> None:
    heavy = replace(lot(demo, "M-41"), number="try", thousand_seed_mass=Q(600.0, "g"))
    job = NextJob("try", "Lantern Rise")
    light = propose_for(demo, BAR, NextJob("M-41", "Lantern Rise"))
    proposed = propose_for(demo, BAR, job, Units.METRIC, lot=heavy)
    seed = Cell("seed", proposed_place(proposed))
    assert proposed.cells[seed].value == "try"
    assert light.cells[seed].value == "M-41"


def proposed_place(proposal) -> Place:
    return next(cell.place for cell in proposal.cells if cell.setting == "seed")


def test_without_a_field_figures_hold_for_one_acre(demo) -> None:
    board = work_view_for(demo, BAR, NextJob("M-41")).board
    assert board.job.field.area == Q(1.0, "acre")


def test_any_two_setups_are_compared_also_with_now(demo) -> None:
    names = [one.name for one in setups(demo, BAR)]
    assert names == ["Corn 2026", "Soybean 2025", "Corn 2025"]
    disc = Cell("disc", Place.of_row(5))
    change = compare(demo, BAR, "Corn 2026", "Soybean 2025").difference.changes[disc]
    assert (change.before, change.after) == ("C30", "S56")
    assert disc not in compare(demo, BAR, "Soybean 2025", NOW).difference.changes


def test_a_setup_compared_with_itself_does_not_differ(demo) -> None:
    assert not compare(demo, BAR, "Corn 2026", "Corn 2026").difference.changes


def test_history_explains_what_is_there_now(demo) -> None:
    lines = history(demo, BAR, 10_000)
    row = [line for line in lines if (line.setting, line.place) == ("depth", "row:14")]
    dug = next(line for line in row if line.why.startswith("four digs"))
    assert (dug.old, dug.new, dug.when[:10]) == ("notch 9", "notch 10", "2026-04-16")


@pytest.mark.parametrize("name", ["", "Nobody"])
def test_a_planter_that_is_not_there_is_refused(demo, name) -> None:
    with pytest.raises(Refusal, match="no planter"):
        read_board(demo, name)
