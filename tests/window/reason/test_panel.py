"""The reason panel: nothing cut, everything told, two buttons."""

from dataclasses import replace

import pytest
from pytestqt.qtbot import QtBot

from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.seed.reasons import Proposal, Proposed
from changeover.window.matrix.sheet import Sheet, Shown
from changeover.window.reason.panel import ReasonPanel
from changeover.window.standing import Standing
from tests.window.invented import REASON, MemoryDesk, make_board

DEPTH = Cell("depth", Place.of_row(14))


@pytest.fixture
def panel(qtbot: QtBot) -> ReasonPanel:
    made = ReasonPanel(MemoryDesk(make_board()).outlook())
    qtbot.addWidget(made)
    made.resize(292, 600)
    made.show()
    return made


def show(panel: ReasonPanel, why: str) -> None:
    one = Proposed(DEPTH, 4, replace(REASON, why=why))
    board = replace(make_board(), proposal=Proposal(cells={DEPTH: one}))
    panel.show_cell(Sheet(board, Standing(board), board.units, Shown.BOTH), DEPTH)


def test_it_begins_by_asking_for_a_cell(panel: ReasonPanel) -> None:
    assert panel.why.text().startswith("Choose a cell")
    assert not panel.use_button.isEnabled()


def test_long_text_is_wrapped_and_scrolled_not_cut(panel: ReasonPanel, qtbot: QtBot) -> None:
    show(panel, "A long sentence of the reason that goes on for some time. " * 30)
    qtbot.waitUntil(lambda: panel.area.verticalScrollBar().maximum() > 0)
    assert panel.why.height() >= panel.why.heightForWidth(panel.why.width())
    assert panel.why.width() <= panel.area.viewport().width()


def test_a_long_reckoning_is_shown_by_its_beginning_and_in_full_at_a_click(
    panel: ReasonPanel,
) -> None:
    how = "S56 scores thirteen points. " * 40
    one = Proposed(DEPTH, 4, replace(REASON, how=how, inputs=()))
    board = replace(make_board(), proposal=Proposal(cells={DEPTH: one}))
    panel.show_cell(Sheet(board, Standing(board), board.units, Shown.BOTH), DEPTH)
    assert len(panel.how.text()) < 330
    panel.more.click()
    assert panel.how.text() == how
    assert not panel.more.isVisible()


def test_the_drawings_come_with_depth_and_go_without(panel: ReasonPanel) -> None:
    show(panel, REASON.why)
    assert panel.main.isVisible()
    assert panel.strip.isVisible()
    panel.show_nothing()
    assert not panel.main.isVisible()


def test_the_rung_that_is_used_is_told_in_words_too(panel: ReasonPanel) -> None:
    show(panel, REASON.why)
    texts = [words.text() for _, words in panel.ladder.rungs if words.isVisible()]
    assert texts[2] == "published — an invented bulletin, 2012 — used"
    assert panel.ladder.rungs[2][0].used


def test_cautions_stand_in_the_panel(panel: ReasonPanel) -> None:
    show(panel, REASON.why)
    assert panel.caution.words.text() == REASON.cautions[0]
    assert panel.caution.isVisible()


def test_the_buttons_ask_and_do_nothing_themselves(panel: ReasonPanel, qtbot: QtBot) -> None:
    board = make_board()
    other = {DEPTH: 9}
    board = replace(board, target=board.target.with_values(other))
    panel.show_cell(Sheet(board, Standing(board), board.units, Shown.BOTH), DEPTH)
    with qtbot.waitSignal(panel.use) as told:
        panel.use_button.click()
    assert told.args == [frozenset({DEPTH})]
    with qtbot.waitSignal(panel.keep):
        panel.keep_button.click()
