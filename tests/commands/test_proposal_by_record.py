"""``changeover proposal`` follows what was measured: a row's own depth line, a circuit's loads."""

from collections.abc import Callable
from contextlib import closing
from dataclasses import replace
from typing import Any

import pytest

from changeover.__main__ import main
from changeover.desk.board import read_board
from changeover.desk.door import apply
from changeover.desk.edits import PutPlanter
from changeover.desk.opening import open_store
from changeover.planter.load_reading import LoadReading
from changeover.planter.places import Place, Scope
from changeover.planter.scales import DugLine
from changeover.quantities import Q

Answer = Callable[..., dict[str, Any]]
ROWS = ("--planter", "Penny Twelve", "--lot", "Y-208", "--field", "Otter Flat")
OWN = "this row’s own line, 0.2 in a notch, 0.40 in deeper at notch 1, by 10 digs in your record"


def put(store: str, planter: str, **changes: Any) -> None:
    with closing(open_store(store)) as opened:
        before = read_board(opened, planter, proposal=False).planter
        if "line" in changes:
            changes = {"depth": before.depth.with_row(*changes["line"])}
        apply(opened, PutPlanter(replace(before, **changes), before=before), "Ada")


@pytest.fixture
def dug(store: str) -> str:
    """Give a store in which row 3 of a planter has a depth line of its own by ten digs."""
    line = (3, Q(0.4, "in"), Q(0.2, "in"), DugLine(10, 6.0, 40.0, Q(0.05, "in")))
    put(store, "Penny Twelve", line=line)
    return store


def depths(answered: dict[str, Any]) -> dict[str, dict[str, Any]]:
    return {one["place"]: one for one in answered["settings"] if one["setting"] == "depth"}


def test_the_json_states_the_rows_own_line_with_interval_and_record(
    dug: str, answer: Answer
) -> None:
    found = depths(answer("proposal", dug, *ROWS))
    assert (found["row 3"]["value"], found["row 2"]["value"]) == (3, 4)
    assert (found["row 3"]["text"], found["row 2"]["text"]) == ("1.30 in", "1.25 in")
    assert OWN in found["row 3"]["reason"]["how"]
    assert "± 0.07 in (95 %)" in found["row 3"]["reason"]["how"]
    assert found["row 3"]["reason"]["source"].endswith("the row’s notch: your record")
    assert OWN not in found["row 2"]["reason"]["how"]


def test_the_reasons_for_people_tell_it_too(dug: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["proposal", dug, *ROWS, "--why"]) == 0
    assert OWN in " ".join(capsys.readouterr().out.split())


def test_the_down_pressure_has_a_band_by_class_and_readings(store: str, answer: Answer) -> None:
    circuit = Place(Scope.DOWN_PRESSURE, "middle")
    read = ((0, 40), (100, 108), (200, 165), (300, 242))
    readings = tuple(LoadReading(circuit, Q(a, "lbf"), Q(b, "lbf")) for a, b in read)
    put(store, "Old Fiddle 24", load_readings=readings)
    job = ("--planter", "Old Fiddle 24", "--lot", "Y-208", "--field", "Otter Flat")
    told = answer("proposal", store, *job)["settings"]
    (one,) = (each for each in told if each["setting"] == "down_pressure" and each["low"])
    assert one["place"] == "middle"
    low, value, high = (one[key]["value"] for key in ("low", "value", "high"))
    assert low < value < high
    assert {one[key]["unit"] for key in ("low", "value", "high")} == {"lbf"}
    assert "95 % prediction interval of a reading" in one["reason"]["how"]
    assert one["reason"]["trust"] == "your record"
