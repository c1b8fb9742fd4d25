"""One store for each kind of database: a SQLite file, and a PostgreSQL server of our own."""

import shutil
import subprocess
import tempfile
import uuid
from collections.abc import Iterator
from pathlib import Path

import pytest

from changeover.planter.groups import equal_groups
from changeover.planter.machine import Planter
from changeover.planter.places import Scope
from changeover.quantities import Q
from changeover.store.opening import Store, open_store


def _program(name: str) -> str | None:
    found = sorted(Path("/usr/lib/postgresql").glob(f"*/bin/{name}"))
    return str(found[-1]) if found else shutil.which(name)


def _as_postgres(*command: str) -> None:
    runner = ("runuser", "-u", "postgres", "--") if Path("/root").owner() == _me() else ()
    subprocess.run((*runner, *command), check=True, capture_output=True, timeout=60, cwd="/")


def _me() -> str:
    import getpass

    return getpass.getuser()


@pytest.fixture(scope="session")
def server() -> Iterator[str]:
    """Give the address of a PostgreSQL server that lives as long as the tests."""
    pytest.importorskip("psycopg", reason="psycopg is not installed")
    initdb, control = _program("initdb"), _program("pg_ctl")
    if initdb is None or control is None:
        pytest.skip("PostgreSQL's programs initdb and pg_ctl are not installed")
    folder = Path(tempfile.mkdtemp(prefix="changeover-pg-"))
    folder.chmod(0o777)
    data = folder / "data"
    try:
        _as_postgres(initdb, "-D", str(data), "-A", "trust", "-U", "postgres", "--no-sync")
        listen = f"-c listen_addresses='' -c unix_socket_directories={folder} -c fsync=off"
        _as_postgres(
            control, "-D", str(data), "-w", "-o", listen, "-l", str(folder / "log"), "start"
        )
    except (OSError, subprocess.SubprocessError) as error:
        shutil.rmtree(folder, ignore_errors=True)
        pytest.skip(f"a PostgreSQL server cannot be started here: {error}")
    try:
        yield f"postgresql://postgres@/%s?host={folder}"
    finally:
        _as_postgres(control, "-D", str(data), "-m", "immediate", "stop")
        shutil.rmtree(folder, ignore_errors=True)


def _new_database(server: str) -> str:
    import psycopg

    name = f"store_{uuid.uuid4().hex}"
    address = (server % "postgres").replace("/%s", "/postgres")
    with psycopg.connect(address, autocommit=True) as connection:
        connection.execute(f'CREATE DATABASE "{name}"')
    return server % name


@pytest.fixture(params=["sqlite", "postgresql"])
def where(request: pytest.FixtureRequest, tmp_path: Path) -> str | Path:
    """Give where a new store can be made, once for each kind of database."""
    if request.param == "sqlite":
        return tmp_path / "store.sqlite"
    return _new_database(request.getfixturevalue("server"))


@pytest.fixture
def store(where: str | Path) -> Iterator[Store]:
    opened = open_store(where, create=True)
    yield opened
    opened.close()


@pytest.fixture
def planter() -> Planter:
    return Planter(
        "Small Bar",
        4,
        Q(30, "in"),
        groups=(*equal_groups(Scope.FAN, 2, 4), *equal_groups(Scope.DRIVE, 1, 4)),
    )


@pytest.fixture
def stocked(store: Store, planter: Planter) -> Store:
    """Give a store with one planter in it."""
    with store.work("Ada", "begin") as work:
        work.planters.put(planter, None)
    return store
