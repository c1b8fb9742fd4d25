"""Colours and type: every token is put in, and texts are readable in both looks."""

import re

import pytest
from PySide6.QtCore import QRect
from PySide6.QtWidgets import QCheckBox
from pytestqt.qtbot import QtBot

from changeover.window.fitting import fitted
from changeover.window.theme import DARK, LIGHT, Tokens, font, palette, style_sheet

LOOKS = pytest.mark.parametrize("tokens", [LIGHT, DARK], ids=lambda tokens: tokens.name)


def luminance(colour: str) -> float:
    """Relative luminance of WCAG 2.1."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


@LOOKS
def test_no_name_of_a_token_is_left_in_the_style_sheet(tokens: Tokens) -> None:
    sheet = re.sub(r"/\*.*?\*/", "", style_sheet(tokens), flags=re.DOTALL)
    assert "@" not in sheet
    assert tokens.accent in sheet


@LOOKS
@pytest.mark.parametrize(
    ("ink", "paper"),
    [
        ("ink", "surface"), ("ink", "ground"), ("soft", "surface"), ("soft", "ground"),
        ("work", "surface"), ("work", "work_wash"), ("accent", "surface"), ("done", "surface"),
        ("on_accent", "accent"), ("ink", "work_wash"), ("ink", "accent_wash"),
    ],
)  # fmt: skip
def test_texts_stand_out_from_their_paper(tokens: Tokens, ink: str, paper: str) -> None:
    """WCAG 2.1 asks 4.5 to 1 of text."""
    assert contrast(getattr(tokens, ink), getattr(tokens, paper)) >= 4.5


@LOOKS
def test_the_palette_follows_the_tokens(tokens: Tokens, qtbot: QtBot) -> None:
    assert palette(tokens).window().color().name().upper() == tokens.ground.upper()


def test_a_colour_can_be_let_through(qtbot: QtBot) -> None:
    assert LIGHT.colour("accent", 40).alpha() == 40
    assert LIGHT.colour("accent").alpha() == 255


def test_figures_are_tabular(qtbot: QtBot) -> None:
    assert font().featureValue(font().featureTags()[0]) == 1


def test_a_text_is_narrowed_before_it_is_cut(qtbot: QtBot) -> None:
    made, shown = fitted("0.024", 27, 13)
    assert shown == "0.024"
    assert made.pixelSize() < 13
    assert fitted("an answer far too long", 27, 13)[1].endswith("…")
    assert fitted("on", 60, 13)[0].pixelSize() == 13


@LOOKS
def test_a_box_to_tick_stands_out_from_its_ground_and_bears_a_tick(
    tokens: Tokens, qtbot: QtBot
) -> None:
    box = QCheckBox("counted")
    box.setStyleSheet(style_sheet(tokens))
    box.setPalette(palette(tokens))
    qtbot.addWidget(box)
    colours = []
    for ticked in (False, True):
        box.setChecked(ticked)
        image = box.grab(QRect(0, 0, 18, box.sizeHint().height())).toImage()
        every = {image.pixelColor(x, y).name() for x in range(18) for y in range(image.height())}
        colours.append(every)
    assert any(contrast(colour, tokens.ground) > 3 for colour in colours[0])
    assert {tokens.accent.lower(), tokens.on_accent.lower()} <= colours[1]
