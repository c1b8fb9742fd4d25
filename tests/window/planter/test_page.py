"""The Planters page lists the fleet, its form describes a planter, meters move between rows."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt

from changeover.desk.board import read_board
from changeover.desk.fleet import planter_names
from changeover.planter.drive import GroundDrive
from changeover.planter.places import Scope
from changeover.quantities import Q, Units
from changeover.window.planter.form import PlanterForm
from changeover.window.planter.page import PlantersPage
from tests.window.on_demo import OnDemo, on_demo

NAMES = ("Magpie 31", "Old Fiddle 24", "Penny Twelve")


@pytest.fixture
def fleet(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, PlantersPage) as put:
        yield put


def form_for(fleet: OnDemo, qtbot: Any, name: str | None) -> PlanterForm:
    planter = read_board(fleet.store, name, proposal=False).planter if name else None
    form = PlanterForm(planter, fleet.door, fleet.outlook, fleet.page)
    qtbot.addWidget(form)
    return form


def test_the_models_are_sound(fleet: OnDemo, qtmodeltester: Any) -> None:
    qtmodeltester.check(fleet.page.model)
    qtmodeltester.check(fleet.page.meters.model)


def test_every_planter_has_a_line(fleet: OnDemo) -> None:
    assert tuple(line.name for line in fleet.page.model.rows) == NAMES


@pytest.mark.parametrize("units", list(Units))
@pytest.mark.parametrize("name", NAMES)
def test_an_untouched_form_gives_back_the_very_planter(
    fleet: OnDemo, qtbot: Any, name: str, units: Units
) -> None:
    fleet.outlook.units = units
    form = form_for(fleet, qtbot, name)
    assert form.planter() == read_board(fleet.store, name, proposal=False).planter


def test_a_new_planter_is_described_and_looked_at(fleet: OnDemo, qtbot: Any) -> None:
    form = fleet.page.add()
    form.name.setText("Wren Eight")
    form.rows.setText("8")
    form.spacing.setText("30 in")
    form.groups[Scope.TANK].setText("1-3; 4-8")
    qtbot.mouseClick(form.take, Qt.MouseButton.LeftButton)
    assert fleet.outlook.planter == "Wren Eight"
    tanks = fleet.outlook.board.planter.groups_of(Scope.TANK)
    assert [tank.rows for tank in tanks] == [(1, 2, 3), (4, 5, 6, 7, 8)]


def test_a_ground_drive_is_entered_with_its_sprockets(fleet: OnDemo, qtbot: Any) -> None:
    form = form_for(fleet, qtbot, None)
    form.name.setText("Wren Eight")
    form.rows.setText("8")
    form.spacing.setText("30 in")
    form.drive.kind.setCurrentText("ground wheel and sprockets")
    for field, typed in (
        ("driver", "15, 19"),
        ("driven", "24"),
        ("wheel", "8 ft"),
        ("ratio", "0.5"),
    ):
        getattr(form.drive, field).setText(typed)
    drive = form.planter().drives["drive 1"]
    assert drive == GroundDrive((15, 19), (24,), Q(8.0, "ft"), 0.5)


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("rows", "65", "1 to 64"),
        ("rows", "many", "not a whole number"),
        ("spacing", "30 kg", "not a unit of row spacing"),
        ("notches", "0", "1 to 60"),
        ("closing", "a, a", "share a name"),
        ("step", "0", "must be above zero"),
        ("name", " ", "no name"),
    ],
)
def test_what_cannot_be_is_said_while_it_is_typed(
    fleet: OnDemo, qtbot: Any, field: str, typed: str, sentence: str
) -> None:
    form = form_for(fleet, qtbot, "Old Fiddle 24")
    getattr(form, field).setText(typed)
    assert sentence in form.refusal.text()
    assert not form.take.isEnabled()


def test_a_name_that_is_taken_is_refused_in_the_form(fleet: OnDemo, qtbot: Any) -> None:
    form = form_for(fleet, qtbot, "Old Fiddle 24")
    form.name.setText("Penny Twelve")
    qtbot.mouseClick(form.take, Qt.MouseButton.LeftButton)
    assert "Penny Twelve" in form.refusal.text()


def test_retiring_a_planter_is_undone_whole(fleet: OnDemo) -> None:
    before = read_board(fleet.store, "Magpie 31", proposal=False)
    fleet.page.view.selectRow(0)
    fleet.page.retire()
    assert "Magpie 31" not in [line.name for line in fleet.page.model.rows]
    fleet.door.stack.undo()
    assert read_board(fleet.store, "Magpie 31", proposal=False).as_found == before.as_found


def test_retiring_the_planter_in_view_looks_at_another_and_refuses_nothing(fleet: OnDemo) -> None:
    fleet.outlook.moved.connect(lambda: fleet.page.refresh(fleet.page.wants))
    fleet.door.changed.connect(lambda _changed: fleet.outlook.board)
    fleet.page.retire()
    assert fleet.refused == []
    assert fleet.outlook.planter == "Magpie 31"
    assert "Old Fiddle 24" not in planter_names(fleet.store)
    assert "not signed off" in fleet.answers.told[0]
    assert "of 24 rows ready" in fleet.answers.told[0]


def test_a_new_planter_says_what_is_wanted_before_it_scolds(fleet: OnDemo, qtbot: Any) -> None:
    form = fleet.page.add()
    qtbot.addWidget(form)
    assert form.refusal.text() == PlanterForm.wanted
    form.accept()
    assert "is not a whole number" in form.refusal.text()
    assert not form.take.isEnabled()


def test_a_typed_row_makes_two_meters_change_places(fleet: OnDemo) -> None:
    model = fleet.page.meters.model
    first, second = model.rows[0], model.rows[1]
    assert model.setData(model.index(0, 2), str(second.row))
    rows = {meter.serial: meter.row for meter in model.rows}
    assert (rows[first.serial], rows[second.serial]) == (second.row, first.row)


def test_a_row_that_the_planter_lacks_is_refused(fleet: OnDemo) -> None:
    assert not fleet.page.meters.model.setData(fleet.page.meters.model.index(0, 2), "99")
    assert "no row 99" in fleet.refused[0]


def test_hours_and_zero_are_typed_in_place(fleet: OnDemo) -> None:
    model = fleet.page.meters.model
    assert model.setData(model.index(0, 4), "120")
    assert model.setData(model.index(0, 3), "0.5 mm")
    assert (model.rows[0].hours, model.rows[0].hub_zero) == (120.0, Q(0.5, "mm"))
    assert not model.setData(model.index(0, 4), "long")


def test_without_a_planter_every_step_leads_to_the_form_of_the_first(
    qtbot: Any, tmp_path: Path
) -> None:
    from changeover.desk.starting import new_store
    from changeover.window.main_window import MainWindow
    from tests.window.on_demo import Answers, outlook_on

    store = new_store(tmp_path / "new.sqlite")
    door, outlook = outlook_on(store, "")
    window = MainWindow(lambda job, *a, **k: job(store, *a, **k), door, outlook, Answers())
    qtbot.addWidget(window)
    for key in window.page_keys():
        window.open_page(key)
        assert window.current == "planter"
    store.close()


def test_tank_wheel_tracks_and_loads_are_entered_and_kept(fleet: OnDemo, qtbot: Any) -> None:
    form = form_for(fleet, qtbot, NAMES[0])
    circuit = form.planter().groups_of(Scope.DOWN_PRESSURE)
    form.capacity.setText("50 bu")
    form.tracks.setText("5, 8")
    form.loads.setText("row 5: 100 lbf = 70 lbf, 200 lbf = 150 lbf")
    qtbot.mouseClick(form.take, Qt.MouseButton.LeftButton)
    kept = read_board(fleet.store, NAMES[0], proposal=False).planter
    assert (kept.tank_capacity, kept.wheel_track_rows) == (Q(50.0, "bu"), frozenset({5, 8}))
    assert [one.load for one in kept.load_readings] == [Q(70.0, "lbf"), Q(150.0, "lbf")]
    assert kept.groups_of(Scope.DOWN_PRESSURE) == circuit
    assert form_for(fleet, qtbot, NAMES[0]).planter() == kept
