"""Every past revision of the tables opens today with its data; migrations stand on their own."""

import ast
import sqlite3
from contextlib import closing
from importlib import import_module
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory

import changeover.store
from changeover.bundled import bundled
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.quantities import Q
from changeover.store.base import Base
from changeover.store.opening import open_store
from changeover.store.revisions import HEAD, REVISIONS
from changeover.store.values import PlannedJob, Side

PAST = sorted(Path(__file__).with_name("revisions").glob("*.sql"))


@pytest.fixture(params=PAST, ids=lambda path: path.stem)
def old_store(request, tmp_path) -> Path:
    """Give a store file of an old revision with a planter, a lot and history in it."""
    path = tmp_path / "old.sqlite"
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript(request.param.read_text(encoding="utf-8"))
    return path


def test_there_is_an_old_store_for_every_past_revision() -> None:
    assert tuple(path.stem for path in PAST) == REVISIONS[:-1]


def test_a_store_of_every_past_revision_opens_with_its_data(old_store) -> None:
    store = open_store(old_store)
    with store.read() as work:
        planter = work.planters.get("Old Bar")
        found = work.cells.read("Old Bar", Side.AS_FOUND)
        assert (planter.rows, planter.singulator.name(2)) == (2, "open")
        assert found.get(Cell("disc", Place.of_row(1))) == "C30"
        assert found.get(Cell("vacuum", Place(Scope.FAN, "fan 1"))) == Q(18.0, "inH2O")
        assert work.lots.get("K-1").thousand_seed_mass == Q(300.0, "g")
        assert work.history.latest("Old Bar", 1)[0].new == "C30"
    store.close()


def test_what_is_new_can_be_used_in_an_old_store(old_store) -> None:
    store = open_store(old_store)
    with store.work("Ada") as work:
        work.jobs.put(PlannedJob(lot="K-1", name="first"), None)
    with store.read() as work:
        assert work.jobs.get("first").lot == "K-1"
    store.close()


def test_a_switch_of_the_second_revision_is_still_open(tmp_path) -> None:
    path = tmp_path / "old.sqlite"
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript(PAST[1].read_text(encoding="utf-8"))
    store = open_store(path)
    with store.read() as work:
        switch = work.switches.require("Old Bar")
        assert (switch.job.speed, len(switch.ticks)) == (Q(5.0, "mph"), 1)
        assert work.setups.records()[0].disc == "C30"
    store.close()


def test_a_job_of_the_third_revision_is_still_there(tmp_path) -> None:
    path = tmp_path / "old.sqlite"
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript(PAST[2].read_text(encoding="utf-8"))
    store = open_store(path)
    with store.read() as work:
        assert work.jobs.get("corn first").lot == "K-1"
    store.close()


def test_an_offset_of_the_ninth_revision_keeps_the_scales_step(tmp_path) -> None:
    path = tmp_path / "old.sqlite"
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript(PAST[8].read_text(encoding="utf-8"))
    store = open_store(path)
    with store.read() as work:
        depth = work.planters.get("Old Bar").depth
    assert (depth.offsets[2], depth.step_of(2)) == (Q(0.1, "in"), Q(0.25, "in"))
    assert (dict(depth.steps), dict(depth.digs)) == ({}, {})
    store.close()


def test_the_migrations_make_just_the_tables_of_the_models(store) -> None:
    for path in Path(changeover.store.__file__).parent.glob("*_tables.py"):
        import_module(f"changeover.store.{path.stem}")
    with store._engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, Base.metadata) == []


def test_the_listed_revisions_are_those_of_the_scripts() -> None:
    config = Config()
    config.set_main_option("script_location", str(bundled("migrations")))
    scripts = ScriptDirectory.from_config(config)
    found = tuple(one.revision for one in scripts.walk_revisions())[::-1]
    assert (found, scripts.get_current_head()) == (REVISIONS, HEAD)


@pytest.mark.parametrize("path", sorted(bundled("migrations").rglob("*.py")), ids=lambda p: p.name)
def test_a_migration_imports_nothing_of_the_program(path) -> None:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    for node in ast.walk(tree):
        names = [a.name for a in node.names] if isinstance(node, ast.Import) else []
        names += [node.module or ""] if isinstance(node, ast.ImportFrom) else []
        assert not any(name.startswith("changeover") for name in names)


def test_opening_a_store_of_today_does_not_load_alembic(tmp_path) -> None:
    import subprocess
    import sys

    path = tmp_path / "s.sqlite"
    open_store(path, create=True).close()
    code = (
        "import sys; from changeover.store.opening import open_store;"
        f"open_store({str(path)!r}).close(); print('alembic' in sys.modules)"
    )
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert told.stdout.strip() == "False"


def test_ticks_of_cleaning_come_to_name_the_lot_first(tmp_path) -> None:
    path = tmp_path / "old.sqlite"
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript(PAST[10].read_text(encoding="utf-8"))
    store = open_store(path)
    with store.read() as work:
        switch = work.switches.open("Old Bar")
        assert switch is not None
        assert {tick.task for tick in switch.ticks} == {
            "meter",
            "clean_tank.K-1/different_crop",
            "meter.K+1/different_crop+treated_to_untreated/disc+brush",
            "clean_floor.K-1/different_crop+other_variety",
        }
    store.close()
