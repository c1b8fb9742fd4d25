"""The flush form reckons while it is typed, and enters the flush into the log."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QThreadPool
from PySide6.QtWidgets import QDialog

from changeover.window.work.flush_form import FlushForm
from changeover.window.work.page import WorkPage
from tests.window.on_demo import OnDemo, on_demo


@pytest.fixture
def work(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, WorkPage) as put:
        yield put
        for dialog in put.page.findChildren(QDialog)[::-1]:
            dialog.close()
        QThreadPool.globalInstance().waitForDone()


def test_the_answer_follows_what_is_typed_and_is_logged(work: OnDemo) -> None:
    work.page.open_flush()
    form = work.page.findChild(FlushForm)
    assert form.refusal.text() == FlushForm.wanted
    form.left.setText("4x")
    assert "no number of seeds" in form.refusal.text()
    assert not form.take.isEnabled()
    for line, text in ((form.left, "40"), (form.pool, "800"), (form.limit, "1 in 1000")):
        line.setText(text)
    assert "Each row has to drop 3" in form.answer.text()
    form.who.setText("Ann")
    form.counted.setChecked(True)
    form.accept()
    (kept,) = work.page.view.flushes
    assert (kept.who, kept.residual, kept.pool, kept.measured) == ("Ann", 40, 800, True)
    work.door.stack.undo()
    assert work.page.view.flushes == ()


def test_what_cannot_be_is_said_below_the_form(work: OnDemo) -> None:
    work.page.open_flush()
    form = work.page.findChild(FlushForm)
    for line, text in ((form.left, "900"), (form.pool, "800"), (form.limit, "0.1 %")):
        line.setText(text)
    assert "cannot be" in form.refusal.text()
    assert form.answer.text() == ""


def test_without_another_lot_the_form_stays_shut(qtbot: Any, tmp_path: Path) -> None:
    with on_demo(qtbot, tmp_path, WorkPage, "Penny Twelve") as put:
        put.page.open_flush()
        assert "nothing is flushed" in put.refused[-1]
        assert put.page.findChild(FlushForm) is None
