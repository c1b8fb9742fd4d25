"""Proofs are only added; findings follow from the proofs that stand."""

import pytest

from changeover.proof.advice import Advice
from changeover.proof.findings import Finding, Proof, Weight
from changeover.proof.source import PRACTICE
from changeover.quantities import Q, Refusal
from changeover.store.opening import Store
from changeover.store.proof_values import FindingState, TakenProof
from changeover.switch.tasks import PartCount

BAR = "Small Bar"
SKIPS = Finding(
    Proof.BENCH, 2, "meter", "skips", "5 %", (Advice("Look at it.", PRACTICE, "Fan off."),)
)


def bench(day: int = 2, **more) -> TakenProof:
    readings = {"vacuum": Q(12.0, "inH2O"), "lines": [{"row": 2, "cells": 250}]}
    return TakenProof(BAR, Proof.BENCH, readings, f"2026-05-0{day}T07:00:00+00:00", "Ada", **more)


def put(store: Store, proof: TakenProof, *found: Finding) -> int:
    with store.work("Ada") as work:
        number = work.proofs.add(proof)
        work.findings.add(BAR, number, [(one, (PartCount("C30", 1),)) for one in found])
        work.findings.settle(BAR, proof.kind)
    return number


def withdraw(store: Store, number: int, *, withdrawn: bool = True) -> None:
    with store.work("Ada") as work:
        kind = work.proofs.withdraw(BAR, number, who="Ada", when="now", withdrawn=withdrawn)
        work.findings.settle(BAR, kind)


def states(store: Store) -> list[str]:
    with store.read() as work:
        return [str(one.state) for one in work.findings.of(BAR, closed=True)]


def test_a_proof_comes_back_as_it_was_taken(stocked) -> None:
    proof = bench(note="cold", meters={2: "07"}, settles=frozenset({(2, "meter"), (None, "x")}))
    number = put(stocked, proof)
    with stocked.read() as work:
        (back,) = work.proofs.of(BAR)
    assert (back.number, back.note, back.meters) == (number, "cold", {2: "07"})
    assert (back.readings, back.settles) == (proof.readings, proof.settles)


def test_many_readings_keep_their_unit(stocked) -> None:
    import numpy as np

    put(stocked, TakenProof(BAR, Proof.SPACING, {"rows": {"3": Q(np.array([7.0, 6.5]), "in")}}))
    with stocked.read() as work:
        found = work.proofs.of(BAR)[0].readings["rows"]["3"]
    assert str(found.units) == "inch"
    assert found.magnitude.tolist() == [7.0, 6.5]


def test_a_withdrawn_proof_is_kept_and_can_stand_again(stocked) -> None:
    number = put(stocked, bench())
    withdraw(stocked, number)
    with stocked.read() as work:
        assert work.proofs.of(BAR) == ()
        assert work.proofs.get(BAR, number).number == number
    withdraw(stocked, number, withdrawn=False)
    withdraw(stocked, number)
    withdraw(stocked, number, withdrawn=False)
    with stocked.read() as work:
        assert [one.number for one in work.proofs.of(BAR)] == [number]


def test_a_proof_is_not_withdrawn_twice(stocked) -> None:
    number = put(stocked, bench())
    withdraw(stocked, number)
    with pytest.raises(Refusal, match="withdrawn already"):
        withdraw(stocked, number)


def test_a_proof_without_readings_is_refused() -> None:
    with pytest.raises(Refusal, match="no readings"):
        TakenProof(BAR, Proof.BENCH, {})


def test_a_finding_is_closed_by_the_later_reading_that_settles_it(stocked) -> None:
    put(stocked, bench(), SKIPS)
    put(stocked, bench(3, settles=frozenset({(3, "meter")})))
    assert states(stocked) == ["open"]
    closing = put(stocked, bench(4, settles=frozenset({(2, "meter")})))
    with stocked.read() as work:
        (found,) = work.findings.of(BAR, closed=True)
        assert (found.state, found.closed_by) == (FindingState.CLOSED, closing)
        assert (found.finding, found.parts) == (SKIPS, (PartCount("C30", 1),))
        assert work.findings.of(BAR) == ()


def test_a_finding_opens_again_when_the_reading_that_closed_it_is_withdrawn(stocked) -> None:
    first = put(stocked, bench(), SKIPS)
    closing = put(stocked, bench(4, settles=frozenset({(2, "meter")})))
    withdraw(stocked, closing)
    assert states(stocked) == ["open"]
    withdraw(stocked, first)
    assert states(stocked) == []


def test_the_proof_that_raises_a_finding_does_not_close_it(stocked) -> None:
    put(stocked, bench(settles=frozenset({(2, "meter")})), SKIPS)
    assert states(stocked) == ["open"]


def test_a_task_stays_a_task_until_it_is_closed(stocked) -> None:
    put(stocked, bench(), SKIPS)
    with stocked.work("Ada") as work:
        (found,) = work.findings.of(BAR)
        work.findings.make_task(BAR, found.number, task=True)
    assert states(stocked) == ["task"]
    put(stocked, bench(5, settles=frozenset({(2, "meter")})))
    with pytest.raises(Refusal, match="is closed by now"), stocked.work("Ada") as work:
        work.findings.make_task(BAR, found.number, task=False)


def test_what_is_work_is_not_listed_again_to_be_watched(stocked) -> None:
    watch = Finding(Proof.BENCH, 2, "meter", "too few", "20 cells", (), Weight.WATCH)
    put(stocked, bench(), SKIPS)
    put(stocked, bench(3), watch)
    with stocked.read() as work:
        assert [one.finding.what for one in work.findings.of(BAR)] == ["skips"]


def test_the_history_tells_of_proofs_and_findings(stocked) -> None:
    put(stocked, bench(), SKIPS)
    put(stocked, bench(4, settles=frozenset({(2, "meter")})))
    with stocked.read() as work:
        lines = {(one.what, one.setting, one.old, one.new) for one in work.history.latest(BAR, 9)}
    assert ("finding", "row 2: skips", "open", "closed") in lines


def test_the_runs_of_a_meter_are_found_on_every_planter(stocked) -> None:
    put(stocked, bench(4, meters={2: "07"}))
    put(stocked, bench(2, meters={3: "07"}))
    put(stocked, bench(3, meters={2: "08"}))
    with stocked.read() as work:
        assert [one.taken[9] for one in work.proofs.with_meter("07")] == ["2", "4"]
