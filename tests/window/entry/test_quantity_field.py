"""The field of a quantity keeps what was typed and says what is wrong with it."""

from typing import Any

import pytest

from changeover.quantities import Q, Refusal, Units
from changeover.window.entry.quantity_field import QuantityField


@pytest.fixture
def depth(qtbot: Any) -> QuantityField:
    field = QuantityField("Depth", "depth", Units.US)
    qtbot.addWidget(field)
    return field


def test_a_fraction_is_read_in_the_units_shown(depth: QuantityField) -> None:
    depth.line.setText("1 3/4")
    assert depth.must() == Q(1.75, "in")
    assert depth.sentence.isHidden()


def test_what_is_wrong_stands_below_at_once(depth: QuantityField) -> None:
    depth.line.setText("deep")
    assert not depth.check()
    assert "not a number with a unit" in depth.sentence.text()
    with pytest.raises(Refusal):
        depth.quantity()


def test_a_typed_figure_keeps_its_meaning_when_units_change(depth: QuantityField) -> None:
    depth.line.setText("1 3/4")
    depth.show_units(Units.METRIC)
    assert depth.text == "1 3/4 in"
    assert depth.must() == Q(1.75, "in")


def test_a_typed_unit_stays_as_typed(depth: QuantityField) -> None:
    depth.line.setText("4 cm")
    depth.show_units(Units.METRIC)
    assert depth.text == "4 cm"


def test_a_filled_field_gives_back_the_very_quantity(depth: QuantityField) -> None:
    depth.show_quantity(Q(1.3333, "in"))
    depth.show_units(Units.METRIC)
    assert depth.text == "34 mm"
    assert depth.quantity() == Q(1.3333, "in")


def test_an_empty_field_is_none_and_a_needed_one_is_asked_for(qtbot: Any) -> None:
    field = QuantityField("Area", "area", Units.US, needed=True)
    qtbot.addWidget(field)
    with pytest.raises(Refusal, match="Area is missing"):
        field.quantity()
    assert field.sentence.isHidden()


@pytest.mark.parametrize(
    "measure", ["seed_rate", "share", "temperature", "speed", "seeds_per_mass"]
)
def test_what_the_program_shows_can_be_typed_back(qtbot: Any, measure: str) -> None:
    field = QuantityField("It", measure, Units.METRIC)
    qtbot.addWidget(field)
    field.show_quantity(Q(140000.0, "seed/acre") if measure == "seed_rate" else None)
    unit = {"seed_rate": "140 000 seeds/ac", "share": "92 %", "temperature": "52 °F"}
    field.line.setText(unit.get(measure, "12"))
    assert field.check()
