"""Stores for the desk: a working copy of the demo, and a small empty one with a planter."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from changeover.desk.demo.working_copy import working_copy
from changeover.desk.door import Outcome, apply
from changeover.desk.edits import Edit
from changeover.desk.opening import Store, open_store
from changeover.desk.starting import ShortForm, new_store, put_planter
from changeover.quantities import Q

Do = Callable[[Edit], Outcome]


@pytest.fixture
def demo(tmp_path: Path) -> Iterator[Store]:
    store = open_store(working_copy(tmp_path))
    yield store
    store.close()


@pytest.fixture
def do(demo: Store) -> Do:
    """Give the door of the demo store, as Ada."""
    return lambda edit: apply(demo, edit, "Ada")


@pytest.fixture
def small(tmp_path: Path) -> Iterator[Store]:
    """Give a new store with a planter of four rows, two fans and a drive."""
    store = new_store(tmp_path / "small.sqlite")
    form = ShortForm("Bar", 4, Q(30.0, "in"), fans=2)
    apply(store, put_planter(form), "Ada")
    yield store
    store.close()
