"""The demo in the repository is just what its text files say, and says that all is invented."""

import pytest

from changeover.bundled import bundled
from changeover.desk.demo.build import build_demo
from changeover.desk.demo.working_copy import DEMO
from changeover.desk.fleet import planter_names
from changeover.desk.opening import open_store
from changeover.planter.drive import GroundDrive, MotorDrive
from changeover.planter.places import Scope
from changeover.quantities import Refusal
from changeover.store.compacting import content


def test_the_demo_is_rebuilt_with_the_same_content(tmp_path) -> None:
    built = build_demo(tmp_path / "demo.sqlite")
    same = content(built) == content(bundled(DEMO))
    assert same, "build it anew: python -m changeover.desk.demo.build demo.sqlite"


def test_a_file_that_is_there_is_not_built_over(tmp_path) -> None:
    path = tmp_path / "demo.sqlite"
    path.write_text("mine")
    with pytest.raises(Refusal, match="is there already"):
        build_demo(path)


def test_the_demo_has_the_three_planters(demo) -> None:
    with demo.read() as work:
        machines = {name: work.planters.get(name) for name in planter_names(demo)}
    rows = {name: one.rows for name, one in machines.items()}
    assert rows == {"Penny Twelve": 12, "Old Fiddle 24": 24, "Magpie 31": 31}
    assert isinstance(machines["Penny Twelve"].drives["drive 1"], GroundDrive)
    assert isinstance(machines["Old Fiddle 24"].drives["drive 3"], MotorDrive)
    assert len(machines["Old Fiddle 24"].groups_of(Scope.FAN)) == 2
    assert len(machines["Magpie 31"].split_rows) == 15


def test_the_demo_has_lots_of_five_crops_a_shelf_and_two_seasons(demo) -> None:
    with demo.read() as work:
        crops = {lot.crop for lot in work.lots.all()}
        years = {line.when[:4] for line in work.history.latest(None, 100_000)}
        meters = work.meters.all()
        assert len(work.shelf.all()) > 10
    assert (len(crops), years, len(meters)) == (5, {"2025", "2026"}, 67)


def test_the_demo_says_that_it_is_invented(demo) -> None:
    with demo.read() as work:
        assert work.demo
    assert open_store is not None
