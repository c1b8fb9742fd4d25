"""First start: a planter from the short form, an empty store, a copy of the demo."""

import pytest

from changeover.bundled import bundled
from changeover.desk.board import read_board
from changeover.desk.demo.working_copy import DEMO, start_again, working_copy
from changeover.desk.opening import open_store
from changeover.desk.starting import ShortForm, new_store, planter_from
from changeover.planter.drive import MotorDrive, MotorKind
from changeover.planter.places import Scope
from changeover.quantities import Q, Refusal


def test_the_short_form_divides_the_rows_into_groups() -> None:
    planter = planter_from(ShortForm(" Bar ", 36, Q(20.0, "in"), drives=3, fans=2, tanks=2))
    assert planter.name == "Bar"
    assert [len(group.rows) for group in planter.groups_of(Scope.DRIVE)] == [12, 12, 12]
    assert len(planter.groups_of(Scope.CONTROLLER)) == planter.controllers == 2


def test_the_short_form_turns_every_drive_the_same_way() -> None:
    motor = MotorDrive(MotorKind.ELECTRIC, 30.0, Q(50.0, "rpm"), Q(3000.0, "rpm"))
    planter = planter_from(ShortForm("Bar", 8, Q(30.0, "in"), drives=2, drive=motor))
    assert set(planter.drives) == {"drive 1", "drive 2"}


def test_a_split_planter_has_rows_between_the_main_rows() -> None:
    planter = planter_from(ShortForm("Bar", 31, Q(30.0, "in"), split=True))
    assert (len(planter.main_rows), planter.narrow_spacing) == (16, Q(15.0, "in"))


@pytest.mark.parametrize(
    ("form", "match"),
    [
        (ShortForm("", 8, Q(30.0, "in")), "has no name"),
        (ShortForm("Bar", 65, Q(30.0, "in")), "cannot have 65 rows; enter 1 to 64"),
        (ShortForm("Bar", 0, Q(30.0, "in")), "cannot have 0 rows; enter 1 to 64"),
        (ShortForm("Bar", 8, Q(30.0, "in"), split=True), "odd number of rows"),
        (ShortForm("Bar", 2, Q(30.0, "in"), fans=3), "cannot be divided"),
        (ShortForm("Bar", 8, Q(300.0, "in")), "row spacing"),
    ],
)
def test_a_planter_that_cannot_be_is_refused(form, match) -> None:
    with pytest.raises(Refusal, match=match):
        planter_from(form)


def test_a_new_store_has_the_planter_and_nothing_set(small) -> None:
    board = read_board(small, "Bar")
    assert (board.label_now, dict(board.as_found.values)) == ("Nothing entered yet", {})
    assert not board.demo


def test_a_new_store_never_replaces_a_file(tmp_path) -> None:
    path = tmp_path / "notes.sqlite"
    path.write_text("mine")
    with pytest.raises(Refusal, match="There is a file"):
        new_store(path)
    assert path.read_text() == "mine"


def test_the_demo_that_travels_along_stays_as_it_is(tmp_path) -> None:
    original = bundled(DEMO).read_bytes()
    store = open_store(working_copy(tmp_path))
    with store.work("Ada") as work:
        work.mark_demo("changed")
    store.close()
    assert bundled(DEMO).read_bytes() == original


def test_starting_again_brings_the_demo_back(tmp_path) -> None:
    path = working_copy(tmp_path)
    path.write_bytes(b"spoilt")
    assert working_copy(tmp_path).read_bytes() == b"spoilt"
    start_again(path)
    assert path.read_bytes() == bundled(DEMO).read_bytes()


def test_a_copy_that_cannot_be_written_is_refused(tmp_path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(Refusal):
        working_copy(tmp_path / "file" / "folder")
