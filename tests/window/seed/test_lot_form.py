"""The forms of a seed lot, a field and a manual value: nothing invalid reaches the store."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt

from changeover.desk.fields import field
from changeover.desk.look_up import read_known
from changeover.desk.lots import lot
from changeover.quantities import Q, Refusal, Units
from changeover.seed.lots import Purity
from changeover.window.seed.field_form import FieldForm
from changeover.window.seed.lot_form import LotForm
from changeover.window.seed.manual_form import ManualForm
from changeover.window.seed.page import SeedPage
from changeover.window.seed.sieve_text import read_sieve
from tests.window.on_demo import OnDemo, on_demo

BAR = "Old Fiddle 24"


@pytest.fixture
def seed(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, SeedPage) as put:
        yield put


@pytest.fixture
def empty(seed: OnDemo) -> LotForm:
    return LotForm(None, seed.door, seed.outlook, seed.page)


@pytest.fixture
def filled(empty: LotForm) -> LotForm:
    empty.number.setText("N-1")
    empty.crop.choose("corn")
    return empty


def manual_form(seed: OnDemo, key: str) -> ManualForm:
    known = read_known(seed.store, BAR)
    setting = next(one for one in known.settings if one.key == key)
    return ManualForm(setting, "soybean", "S56", known, seed.door, seed.outlook, seed.page)


def test_a_new_lot_asks_for_what_it_must_have(empty: LotForm) -> None:
    assert empty.refusal.text() == LotForm.wanted
    empty.accept()
    assert "no number" in empty.refusal.text()
    assert not empty.take.isEnabled()
    empty.number.setText("N-1")
    assert "choose a crop" in empty.refusal.text()
    empty.crop.choose("corn")
    assert empty.take.isEnabled()
    assert not empty.refusal.text()


def test_a_lot_goes_through_the_door_and_can_be_undone(seed: OnDemo, filled: LotForm) -> None:
    filled.germination.line.setText("95 %")
    filled.sieve.setText("18/64 - 20/64")
    filled.seeds.setText("80 000")
    filled.purity.choose(Purity.ORGANIC)
    filled.accept()
    made = lot(seed.store, "N-1")
    assert (made.germination, made.sieve, made.package_seeds) == (0.95, (18.0, 20.0), 80000)
    assert made.purity is Purity.ORGANIC
    seed.door.stack.undo()
    with pytest.raises(Refusal):
        lot(seed.store, "N-1")


def test_seeds_per_pound_and_thousand_seed_mass_say_the_same(filled: LotForm) -> None:
    filled.per_mass.line.setText("1600 seeds/lb")
    assert filled.thousand.text == "283.5 g"
    assert filled.lot().thousand_seed_mass.to("g").magnitude == pytest.approx(283.495, abs=1e-3)
    filled.thousand.line.setText("300 g")
    assert filled.per_mass.must().to("seed/kg").magnitude == pytest.approx(1e6 / 300)


@pytest.mark.parametrize(
    ("field_name", "text", "match"),
    [
        ("germination", "104", "1 to 100 %"),
        ("germination", "0.92", "such as 92"),
        ("thousand", "4 kg", "0.1 to 3 000 g"),
        ("thousand", "0", "more than nothing|0.1 to 3 000 g"),
        ("per_mass", "many", "not a number"),
    ],
)
def test_what_no_seed_can_have_is_refused_at_once(
    filled: LotForm, field_name: str, text: str, match: str
) -> None:
    getattr(filled, field_name).line.setText(text)
    with pytest.raises(Refusal, match=match):
        filled.edit()
    assert not filled.take.isEnabled()
    field = getattr(filled, field_name)
    assert re.search(match, filled.refusal.text() or field.sentence.text())
    assert not (filled.refusal.text() and field.sentence.text())


def test_sizes_take_fractions_and_impossible_ones_are_refused(filled: LotForm) -> None:
    filled.sides["length"].line.setText("7/16 in")
    assert filled.lot().length == Q(0.4375, "in")
    filled.sides["length"].line.setText("3 in")
    assert "0.2 to 40 mm" in filled.refusal.text()


@pytest.mark.parametrize("units", Units)
def test_changing_nothing_changes_nothing(seed: OnDemo, units: Units) -> None:
    seed.outlook.show_units(units)
    for number in ("Y-208", "M-44", "B-22"):
        stored = lot(seed.store, number)
        assert LotForm(stored, seed.door, seed.outlook, seed.page).lot() == stored


@pytest.mark.parametrize(
    ("text", "sieve"),
    [("18 to 20", (18, 20)), ("18-20", (18, 20)), ("19/64", (19, 19)), ("", None)],
)
def test_sieve_grades_are_read_as_people_write_them(text: str, sieve: Any) -> None:
    assert read_sieve(text) == sieve


def test_a_sieve_grade_that_is_none_is_refused() -> None:
    with pytest.raises(Refusal, match="sixty-fourths"):
        read_sieve("medium flat")


def test_a_field_is_made_and_then_offered(seed: OnDemo) -> None:
    form = FieldForm(None, seed.door, seed.outlook, seed.page)
    assert form.refusal.text() == FieldForm.wanted
    form.name.setText("Brick Acre")
    form.area.line.setText("40 1/2")
    form.accept()
    assert field(seed.store, "Brick Acre").area == Q(40.5, "acre")
    assert "Brick Acre" in seed.page.choosing.field.box.values


def test_a_field_of_no_size_is_refused(seed: OnDemo) -> None:
    form = FieldForm(field(seed.store, "Crow Strip"), seed.door, seed.outlook, seed.page)
    form.area.line.setText("-3")
    assert not form.take.isEnabled()


def test_a_manual_value_wins_at_once_and_undo_takes_it_back(seed: OnDemo) -> None:
    form = manual_form(seed, "vacuum")
    form.typed.setText("11 inH2O")
    form.note.setText("page 40")
    form.accept()
    card = seed.page.cards.card("vacuum")
    assert (card.words.value, card.words.side) == ("11.0 inH₂O", "your manual")
    again = manual_form(seed, "vacuum")
    assert (again.typed.text(), again.note.text()) == ("11.0 inH₂O", "page 40")
    seed.door.stack.undo()
    assert seed.page.cards.card("vacuum").words.side == "your record"


def test_a_manual_value_can_be_removed(seed: OnDemo) -> None:
    form = manual_form(seed, "singulator")
    form.choice.choose("3/4")
    form.accept()
    assert seed.page.cards.card("singulator").words.value == "3/4"
    manual_form(seed, "singulator").take_away()
    assert seed.page.cards.card("singulator").words.value == "open"


@pytest.mark.parametrize(
    ("key", "text", "match"),
    [
        ("vacuum", "500", "outside|fan limit"),
        ("depth", "40 in", "cannot plant"),
        ("vacuum", "", "enter what"),
    ],
)
def test_a_manual_value_that_the_planter_cannot_have_is_refused(
    seed: OnDemo, key: str, text: str, match: str
) -> None:
    form = manual_form(seed, key)
    form.typed.setText(text)
    form.accept()
    assert not form.take.isEnabled()
    with pytest.raises(Refusal, match=match):
        form.edit()


def test_depth_from_the_manual_may_be_a_depth_or_a_notch(seed: OnDemo) -> None:
    form = manual_form(seed, "depth")
    form.typed.setText("1 1/2")
    assert form.edit().value.value == Q(1.5, "in")
    form.typed.setText("n5")
    assert form.edit().value.value == 5


def test_the_form_begins_at_its_first_field_and_tab_ends_at_the_buttons(
    empty: LotForm, qtbot: Any
) -> None:
    with qtbot.waitExposed(empty):
        empty.open()
    begun = empty.focusWidget()
    qtbot.keyClick(empty.number, Qt.Key.Key_Tab)
    following = empty.focusWidget()
    empty.dose.setFocus()
    qtbot.keyClick(empty.dose, Qt.Key.Key_Tab)
    last = empty.focusWidget()
    empty.close()
    assert (begun, following, last) == (empty.number, empty.crop, empty.cancel)


def test_bulk_density_and_lubricant_are_kept_as_entered(seed: OnDemo, filled: LotForm) -> None:
    filled.dense.line.setText("56 lb/bu")
    filled.dose.setText("2 oz")
    filled.accept()
    stored = lot(seed.store, "N-1")
    assert (stored.bulk_density, stored.lubricant) == (Q(56.0, "lb/bu"), Q(2.0, "oz"))
    assert LotForm(stored, seed.door, seed.outlook, seed.page).lot() == stored


@pytest.mark.parametrize("text", ["2", "2 miles", "some oz"])
def test_a_dose_needs_a_mass_or_a_volume(filled: LotForm, text: str) -> None:
    filled.dose.setText(text)
    assert "Dry lubricant" in filled.refusal.text()


def test_a_field_keeps_altitude_and_run(seed: OnDemo) -> None:
    form = FieldForm(field(seed.store, "Crow Strip"), seed.door, seed.outlook, seed.page)
    form.altitude.line.setText("1200 ft")
    form.run.line.setText("800 m")
    form.accept()
    stored = field(seed.store, "Crow Strip")
    assert (stored.altitude, stored.run_length) == (Q(1200.0, "ft"), Q(800.0, "m"))
    assert FieldForm(stored, seed.door, seed.outlook, seed.page).field() == stored
