"""Findings on the worklist, signing off in spite of them, and the record that a proof makes."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from changeover.desk.bench_runs import BenchLine, BenchRun
from changeover.desk.board import read_board
from changeover.desk.demo.working_copy import working_copy
from changeover.desk.do_work import tick_whole
from changeover.desk.door import apply
from changeover.desk.edits import CloseSwitch, NextJob, PutTime, WithdrawSetup
from changeover.desk.fleet import planter_names
from changeover.desk.look_up import propose_for
from changeover.desk.open_kits import open_kit
from changeover.desk.opening import Store, open_store
from changeover.desk.plan_switch import work_view
from changeover.desk.prove.bench import save_run
from changeover.desk.prove.proofs import (
    FindingState,
    KeptFinding,
    MakeTask,
    PutProof,
    TakenProof,
    findings,
)
from changeover.desk.prove.tasks import FINDING, finding_task
from changeover.desk.records import setups
from changeover.desk.tables import switch_rules
from changeover.planter.places import Place, Scope
from changeover.planter.settings import WorkPlace
from changeover.planter.setup import Cell
from changeover.proof.bench import BenchLimits
from changeover.proof.findings import Finding, Proof
from changeover.quantities import Q, Refusal
from changeover.seed.reasons import Trust
from changeover.switch.standard_minutes import Minutes
from changeover.switch.tasks import PartCount, StandardTime

BAR = "Old Fiddle 24"
LIMITS = BenchLimits(skip_most=0.03)


@pytest.fixture(scope="module")
def finished(tmp_path_factory) -> Path:
    """Give the path of a demo in which every task of the open switch is ticked off."""
    path = working_copy(tmp_path_factory.mktemp("finished"))
    store = open_store(path)
    for task in work_view(store, BAR).worklist.tasks:
        view = work_view(store, BAR)
        if view.progress.left(task):
            apply(store, tick_whole(view, task), "Ada")
    store.close()
    return path


@pytest.fixture
def store(finished, tmp_path) -> Iterator[Store]:
    import shutil

    path = shutil.copy(finished, tmp_path / "demo.sqlite")
    opened = open_store(path)
    yield opened
    opened.close()


def bench(store, skips: int, row: int = 11) -> None:
    run = BenchRun((BenchLine(row, 500, skips, 1),), Q(12.0, "inH2O"), limits=LIMITS)
    apply(store, save_run(BAR, run, known=findings(store, BAR)), "Ada")


def make_task(store) -> str:
    (found,) = findings(store, BAR)
    apply(store, MakeTask(BAR, found.number), "Ada")
    return f"{FINDING}{found.number}"


def test_a_finding_stands_on_the_worklist_with_its_row_and_its_advice(store) -> None:
    bench(store, 60)
    key = make_task(store)
    task = work_view(store, BAR).worklist.task(key)
    assert (task.work_place, task.places) == (WorkPlace.METER, (Place.of_row(11),))
    assert "12.0 %" in task.why
    assert any("common practice" in step for step in task.steps)
    assert task.cautions


def in_minutes(task) -> tuple[float, float]:
    return task.minutes_fixed.to("min").magnitude, task.minutes_each.to("min").magnitude


def test_its_minutes_are_those_of_its_kind_of_work_until_you_enter_your_own(store) -> None:
    bench(store, 60)
    key = make_task(store)
    table = switch_rules().minutes
    opened, spun = table["open_meter"], table["spin_test"]
    task = work_view(store, BAR).worklist.task(key)
    assert in_minutes(task) == (opened.fixed + spun.fixed, opened.each + spun.each)
    assert in_minutes(task) > (0.0, 0.0)
    apply(store, PutTime(StandardTime("spin_test", Q(1.0, "min"), Q(0.0, "min"))), "Ada")
    shorter = work_view(store, BAR).worklist.task(key)
    assert in_minutes(shorter) == (opened.fixed + 1.0, opened.each)
    apply(store, PutTime(StandardTime(key, Q(25.0, "min"), Q(0.0, "min"))), "Ada")
    assert in_minutes(work_view(store, BAR).worklist.task(key)) == (25.0, 0.0)


@pytest.mark.parametrize("proof", Proof)
def test_a_finding_of_every_sort_takes_time_and_more_with_parts(store, proof) -> None:
    finding = Finding(proof, 3, "thing", "fell short", "1 of 2", ())
    planter = read_board(store, BAR, proposal=False).planter
    minutes = Minutes.of(switch_rules().minutes, ())
    kept = KeptFinding(1, BAR, finding, FindingState.TASK, 1, "")
    plain = finding_task(planter, kept, minutes)
    more = finding_task(planter, replace(kept, parts=(PartCount("seal", 2),)), minutes)
    assert plain.minutes > Q(0.0, "min")
    assert (more.minutes - plain.minutes).to("min").magnitude == 2 * minutes.table["swap_part"].each


def test_its_parts_are_laid_out_and_its_group_is_its_place(store) -> None:
    group = read_board(store, BAR, proposal=False).planter.groups_of(Scope.FAN)[1]
    found = Finding(Proof.VACUUM, None, f"vacuum, {group.name}", "lacks vacuum", "9 of 12", ())
    proof = TakenProof(BAR, Proof.VACUUM, {"rows": [1]})
    apply(store, PutProof(proof, (found,), ((PartCount("seal", 2),),)), "Ada")
    key = make_task(store)
    view = work_view(store, BAR)
    assert view.worklist.task(key).places == (group.place,)
    assert any(line.part == "seal" and line.needed == 2 for line in view.kit.lines)
    with store.read() as work:
        kit = open_kit(work, BAR)
    assert {line.part: line.needed for line in kit.lines} == {"seal": 2}


def test_a_finding_is_not_ticked_off_but_read_again(store) -> None:
    bench(store, 60)
    key = make_task(store)
    view = work_view(store, BAR)
    with pytest.raises(Refusal, match="closed by a new reading"):
        apply(store, tick_whole(view, view.worklist.task(key)), "Ada")
    bench(store, 2)
    assert key not in {task.key for task in work_view(store, BAR).worklist.tasks}


def test_signing_off_with_an_open_finding_needs_words_which_are_kept(store) -> None:
    bench(store, 60)
    (found,) = findings(store, BAR)
    make_task(store)
    assert work_view(store, BAR).ready_to_sign
    with pytest.raises(Refusal, match="say in words"):
        apply(store, CloseSwitch(BAR, "Beans"), "Ada")
    words = ((found.number, "spare disc comes tomorrow"),)
    told = apply(store, CloseSwitch(BAR, "Beans", acknowledged=words), "Ada")
    assert "row 11" in setups(store, BAR)[0].note
    assert "spare disc comes tomorrow" in setups(store, BAR)[0].note
    assert findings(store, BAR)[0].acknowledged == "spare disc comes tomorrow"
    apply(store, told.inverse, "Ada")
    assert findings(store, BAR)[0].acknowledged == ""


def test_a_setup_has_not_proved_while_a_finding_is_open(store) -> None:
    bench(store, 60)
    words = ((findings(store, BAR)[0].number, "no time"),)
    with pytest.raises(Refusal, match="has not proved while"):
        apply(store, CloseSwitch(BAR, "Beans", proved="well", acknowledged=words), "Ada")


def test_what_passed_since_the_switch_began_is_said_for_the_record(store) -> None:
    assert work_view(store, BAR).proved == ""
    bench(store, 2)
    assert work_view(store, BAR).proved == "99.4 % singles of 500 cells on the bench"
    bench(store, 60)
    assert work_view(store, BAR).proved == ""


def test_a_proved_setup_outranks_published_figures_for_the_same_crop_disc_and_size(store) -> None:
    job = NextJob("Y-208")
    vacuum = Cell("vacuum", read_board(store, BAR, proposal=False).planter.places(Scope.FAN)[0])
    for one in (one for name in planter_names(store) for one in setups(store, name)):
        apply(store, WithdrawSetup(one.planter, one.name), "Ada")
    before = propose_for(store, BAR, job).cells[vacuum].reason
    bench(store, 2)
    proved = work_view(store, BAR).proved
    apply(store, CloseSwitch(BAR, "Beans", proved=proved), "Ada")
    after = propose_for(store, BAR, job).cells[vacuum].reason
    assert (before.trust, after.trust) == (Trust.PUBLISHED, Trust.RECORD)
    assert proved in str(after)
