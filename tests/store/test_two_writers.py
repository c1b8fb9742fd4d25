"""Two people on one store at the same moment: nobody's work is lost silently."""

import threading
from collections.abc import Iterator

import pytest

from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Q, Refusal
from changeover.seed.fields import Field
from changeover.store.connecting import is_address
from changeover.store.opening import Store, open_store
from changeover.store.values import Side

DISC = Cell("disc", Place.of_row(1))


@pytest.fixture
def second(where, stocked) -> Iterator[Store]:
    """Give the same store opened a second time."""
    opened = open_store(where)
    yield opened
    opened.close()


def test_one_sees_what_the_other_saved(stocked, second) -> None:
    with stocked.work("Ada") as work:
        work.cells.set("Small Bar", Side.AS_FOUND, {DISC: "C30"})
    with second.read() as work:
        assert work.cells.read("Small Bar", Side.AS_FOUND).get(DISC) == "C30"


def test_of_two_who_add_the_same_field_at_once_one_is_refused(stocked, second) -> None:
    outcomes = []
    gate = threading.Barrier(2)

    def add(store, acres) -> None:
        gate.wait(10)
        try:
            with store.work("someone") as work:
                work.fields.put(Field("F", Q(acres, "acre")), None)
            outcomes.append("saved")
        except Refusal:
            outcomes.append("refused")

    threads = [threading.Thread(target=add, args=one) for one in ((stocked, 1.0), (second, 2.0))]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(20)
    assert sorted(outcomes) == ["refused", "saved"]


def test_a_reader_sees_one_state_while_another_writes(where, stocked, second) -> None:
    if not is_address(where):
        stocked._engine.dispose()
    with stocked.read() as reading:
        before = reading.cells.read("Small Bar", Side.AS_FOUND).get(DISC)
        with second.work("Bo") as work:
            work.cells.set("Small Bar", Side.AS_FOUND, {DISC: "S56"})
        assert reading.cells.read("Small Bar", Side.AS_FOUND).get(DISC) == before
