"""A catch test is reckoned as it is typed, beside the seed rate of the Seed page."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from changeover.window.seed.catch_dialog import CatchDialog
from changeover.window.seed.page import SeedPage
from tests.window.on_demo import OnDemo, on_demo


@pytest.fixture
def seed(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, SeedPage, "Penny Twelve") as put:
        put.page.choosing.lot.box.choose("Y-208")
        put.page.form_proposal()
        yield put


@pytest.fixture
def dialog(seed: OnDemo, qtbot: Any) -> Iterator[CatchDialog]:
    seed.page.cards.choose("seed_rate")
    seed.page.side.catch.click()
    found = seed.page.findChild(CatchDialog)
    assert isinstance(found, CatchDialog)
    yield found
    with qtbot.waitSignal(found.destroyed):
        found.accept()


def test_it_begins_with_what_planter_and_lot_say(dialog: CatchDialog) -> None:
    assert dialog.spacing.text == "30.0 in"
    assert dialog.round.text == "86.00 in"
    assert dialog.slip.text == "3.0 %"
    assert dialog.wanted.text.startswith("140")
    assert "Rows caught is missing" in dialog.says.text()
    assert "below a row" in dialog.cautions.words.text()


def test_what_it_shows_follows_every_key(dialog: CatchDialog) -> None:
    for field, text in ((dialog.rows, "2"), (dialog.turns, "10"), (dialog.seeds, "1150")):
        field.line.setText(text)
    assert "wanted" in dialog.says.text()
    assert "times as fast" in dialog.says.text()
    dialog.distance.line.setText("100 ft")
    assert "one of them" in dialog.says.text()
    dialog.turns.line.setText("")
    assert dialog.says.text().startswith("Over 100.0 ft")


@pytest.mark.parametrize(
    ("key", "there"), [("sprockets", True), ("vacuum", False), ("disc", False)]
)
def test_only_the_rate_and_its_sprockets_are_caught(seed: OnDemo, key: str, there: bool) -> None:
    seed.page.cards.choose(key)
    assert seed.page.side.catch.isHidden() != there
