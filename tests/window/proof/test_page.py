"""The Proof page shows one sort of proof at a time, and what was taken can be withdrawn."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from changeover.desk.prove.proofs import TakenProof, save_proof
from changeover.proof.findings import Proof
from changeover.window.proof.page import ProofPage
from tests.window.on_demo import OnDemo, on_demo


@pytest.fixture
def proof(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, ProofPage) as put:
        yield put


def test_the_model_of_what_was_taken_is_sound(proof: OnDemo, qtmodeltester: Any) -> None:
    qtmodeltester.check(proof.page.show_view("taken").model)


def test_every_sort_of_proof_can_be_shown(proof: OnDemo) -> None:
    for key in proof.page.lines:
        assert proof.page.show_view(key).isVisibleTo(proof.page)


def test_a_proof_is_listed_and_withdrawing_asks_first(proof: OnDemo) -> None:
    taken = TakenProof(proof.outlook.planter, Proof.DRIVE, {"ground_speed": 5}, note="first")
    view = proof.page.show_view("taken")
    before = len(view.model.rows)
    proof.door.push(save_proof(taken))
    assert (len(view.model.rows), view.model.rows[0].note) == (before + 1, "first")
    view.view.selectRow(0)
    proof.answers.yes = False
    view.withdraw()
    assert len(view.model.rows) == before + 1
    proof.answers.yes = True
    view.withdraw()
    assert len(view.model.rows) == before
