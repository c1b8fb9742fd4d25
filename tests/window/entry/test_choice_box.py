"""Words of a box or a label that have no room are set smaller first, and cut only at the last."""

from pytestqt.qtbot import QtBot

from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.words import Elided

LOT = "G-31 · Grain sorghum · Rust Lantern"


def test_a_long_choice_is_set_smaller_and_only_then_cut(qtbot: QtBot) -> None:
    box = ChoiceBox("Lot", [(LOT, "G-31")])
    qtbot.addWidget(box)
    box.show()
    for width, tip in ((232, ""), (90, LOT)):
        box.resize(width, 28)
        box.grab()
        assert box.toolTip() == tip


def test_a_fitted_label_shows_what_an_elided_one_cuts(qtbot: QtBot) -> None:
    tips = []
    for fit in (False, True):
        made = Elided("Sunflower, Long Pightle · set 24 May", fit=fit)
        qtbot.addWidget(made)
        made.resize(205, 20)
        made.grab()
        tips.append(made.toolTip())
    assert tips == ["Sunflower, Long Pightle · set 24 May", ""]
