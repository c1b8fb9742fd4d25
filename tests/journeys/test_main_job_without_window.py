"""The whole job without a window: choose, look up, plan, tick off, sign off, open again."""

from pathlib import Path

from changeover.desk.board import read_board
from changeover.desk.demo.working_copy import working_copy
from changeover.desk.do_work import tick_rows, tick_whole
from changeover.desk.door import apply
from changeover.desk.edits import ChooseNext, CloseSwitch, NextJob, TakeProposal
from changeover.desk.export import write_worklist
from changeover.desk.opening import Store, open_store
from changeover.desk.plan_switch import work_view
from changeover.desk.records import history
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Q
from changeover.switch.difference import difference
from changeover.switch.tasks import TaskKind

PENNY = "Penny Twelve"
DISC_4 = Cell("disc", Place.of_row(4))


def _choose_and_take(store: Store) -> None:
    job = NextJob("G-31", "Kettle Piece", seed_rate=Q(47_000.0, "seed/acre"))
    apply(store, ChooseNext(PENNY, job), "Ada")
    apply(store, TakeProposal(PENNY), "Ada")


def _tick_one_row(store: Store) -> None:
    view = work_view(store, PENNY)
    for task in view.worklist.tasks:
        if any(c.cell == DISC_4 for c in task.changes.get(DISC_4.place, ())):
            apply(store, tick_rows(view, task, [4]), "Bo")


def _do_the_rest(store: Store) -> None:
    for task in work_view(store, PENNY).worklist.tasks:
        view = work_view(store, PENNY)
        if view.progress.left(task):
            apply(store, tick_whole(view, task), "Bo")


def test_from_choosing_the_next_lot_to_the_record(tmp_path: Path) -> None:
    path = working_copy(tmp_path)
    store = open_store(path)
    _choose_and_take(store)
    view = work_view(store, PENNY)
    kinds = [task.kind for task in view.worklist.tasks]
    assert kinds.index(TaskKind.CLEAN) < kinds.index(TaskKind.SET) < kinds.index(TaskKind.PROVE)
    assert len(write_worklist(store, PENNY, tmp_path)) == 6
    _tick_one_row(store)
    store.close()

    store = open_store(path)
    half = work_view(store, PENNY)
    assert half.board.as_found.get(DISC_4) == "G60"
    assert half.board.as_found.get(Cell("disc", Place.of_row(5))) == "F22"
    assert history(store, PENNY, 1)[0].who == "Bo"
    _do_the_rest(store)
    board = read_board(store, PENNY)
    assert not difference(board.planter, board.settings, board.as_found, board.target).changes
    apply(store, CloseSwitch(PENNY, "Sorghum 2026", proved="first pass counted"), "Ada")
    store.close()

    store = open_store(path)
    assert read_board(store, PENNY).label_now.startswith("Sorghum, Kettle Piece · set ")
    store.close()
