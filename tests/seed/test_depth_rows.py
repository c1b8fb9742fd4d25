"""Notch per row: through that row's own offset, and a sentence where the scale does not reach."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.machine import Planter
from changeover.planter.scales import DepthScale, DugLine
from changeover.planter.settings import standard
from changeover.quantities import Q, Refusal, Units
from changeover.seed.depth_rows import named_rows, propose_depth
from changeover.seed.manual import ManualValue
from changeover.seed.reasons import Reason, Trust
from tests.seed.made_up import case, planter

DEPTH = standard("depth")


def scale(count: int = 13, **offsets: float) -> DepthScale:
    rows = {int(key[1:]): Q(value, "in") for key, value in offsets.items()}
    return DepthScale(Q(0.5, "in"), Q(0.25, "in"), count, rows)


def notches(machine: object, **changes: object) -> list[object]:
    cells, _ = propose_depth(case("corn", planter=machine, **changes), DEPTH)
    return [one.value for one in cells.values()]


def test_each_row_takes_its_own_notch() -> None:
    machine = planter(4, depth=scale(r2=0.25, r4=-0.5))
    assert notches(machine) == [6, 5, 6, 8]


def test_the_reason_says_notch_and_offset() -> None:
    cells, _ = propose_depth(case("corn", planter=planter(2, depth=scale(r2=0.25))), DEPTH)
    first, second = (one.reason.how for one in cells.values())
    assert "Notch 6 of 13 gives 1.75 in (0.25 in a notch)" in first
    assert "this row plants 0.25 in deeper than its scale says" in second


def dug_scale() -> DepthScale:
    """Return a scale on which row 2 has a line of its own by ten digs."""
    dug = DugLine(10, 6.0, 40.0, Q(0.05, "in"))
    return scale().with_row(2, Q(0.5, "in"), Q(0.2, "in"), dug)


def test_a_row_takes_the_notch_of_its_own_line() -> None:
    assert notches(planter(2, depth=dug_scale())) == [6, 5]


def test_the_reason_states_the_rows_own_line_its_interval_and_your_record() -> None:
    cells, _ = propose_depth(case("corn", planter=planter(2, depth=dug_scale())), DEPTH)
    common, own = (one.reason for one in cells.values())
    assert own.how.endswith(
        "Notch 5 of 13 gives 1.80 in ± 0.04 in (95 %); this row’s own line, 0.2 in a notch, "
        "0.50 in deeper at notch 1, by 10 digs in your record"
    )
    assert own.source == f"{common.source}; the row’s notch: your record"
    (record,) = (rung for rung in own.evidence if rung.trust is Trust.RECORD)
    assert "the row’s notch: this row’s own line, 0.2 in a notch" in record.says
    assert own.trust is common.trust


def reason_of(machine: Planter) -> Reason:
    cells, _ = propose_depth(case("corn", planter=machine), DEPTH)
    return next(iter(cells.values())).reason


def test_a_step_that_a_person_entered_has_no_interval() -> None:
    entered = scale().with_row(1, Q(0, "in"), Q(0.2, "in"), None)
    how = reason_of(planter(2, depth=entered)).how
    assert how.endswith("gives 1.70 in; this row’s own line, 0.2 in a notch, as you entered it")


def test_an_offset_by_digs_has_their_interval() -> None:
    entered = scale().with_row(1, Q(-0.1, "in"), None, DugLine(5, 6.0, 0.0, Q(0.05, "in")))
    how = reason_of(planter(2, depth=entered)).how
    assert "gives 1.65 in ± 0.06 in (95 %); this row plants 0.10 in shallower" in how


def test_a_row_dug_to_plant_as_the_scale_says_is_told_by_your_record() -> None:
    entered = scale().with_row(1, Q(0, "in"), None, DugLine(5, 6.0, 0.0, Q(0.05, "in")))
    how = reason_of(planter(2, depth=entered)).how
    assert how.endswith("this row plants as its scale says, by 5 digs in your record")


def test_rows_with_the_same_line_but_other_digs_keep_their_own_interval() -> None:
    wide = DugLine(10, 6.0, 40.0, Q(0.5, "in"))
    machine = planter(3, depth=dug_scale().with_row(3, Q(0.5, "in"), Q(0.2, "in"), wide))
    cells, _ = propose_depth(case("corn", planter=machine), DEPTH)
    hows = [one.reason.how for one in cells.values()]
    assert "± 0.04 in" in hows[1]
    assert "± 0.41 in" in hows[2]


def test_alike_rows_share_one_reason() -> None:
    cells, _ = propose_depth(case("corn", planter=planter(48, depth=scale(r7=0.1))), DEPTH)
    assert len({id(one.reason) for one in cells.values()}) == 2


def test_too_few_notches_give_no_value_and_a_sentence() -> None:
    machine = planter(6, depth=scale(4))
    cells, warnings = propose_depth(case("corn", planter=machine), DEPTH)
    assert {one.value for one in cells.values()} == {None}
    assert all("No proposal" in one.reason.why for one in cells.values())
    assert warnings[0].startswith("Rows 1 to 6 cannot plant 1.75 in deep: the 4 notches reach")


def test_only_the_row_that_cannot_reach_is_left_out() -> None:
    machine = planter(3, depth=scale(6, r2=-0.5))
    cells, warnings = propose_depth(case("corn", planter=machine), DEPTH)
    assert [one.value for one in cells.values()] == [6, None, 6]
    assert warnings[0].startswith("Row 2 cannot plant")


def test_a_manual_notch_is_the_same_on_every_row() -> None:
    manual = (ManualValue("corn", "depth", 9),)
    assert notches(planter(3, depth=scale(r2=0.25)), manual=manual) == [9, 9, 9]


def test_a_manual_notch_that_does_not_exist_is_said() -> None:
    manual = (ManualValue("corn", "depth", 20),)
    cells, warnings = propose_depth(case("corn", manual=manual), DEPTH)
    assert {one.value for one in cells.values()} == {None}
    assert warnings == ("Depth: notch 20 does not exist; the planter has 1 to 13.",)


@given(st.floats(-0.6, 0.6), st.sampled_from([None, 0.15, 0.4]), st.sampled_from(Units))
def test_the_notch_is_that_of_the_planters_own_scale(
    offset: float, step: float | None, units: Units
) -> None:
    own = (Q(offset, "in"), Q(step, "in") if step else None, None)
    machine = planter(2, depth=scale(8).with_row(1, *own).with_row(2, *own))
    try:
        wanted: int | None = machine.depth.notch(Q(1.75, "in"), 1)
    except Refusal:
        wanted = None
    assert notches(machine, units=units) == [wanted, wanted]


@pytest.mark.parametrize(
    ("rows", "words"),
    [([3], "Row 3"), ([1, 2, 3], "Rows 1 to 3"), ([7, 1, 2, 9], "Rows 1 to 2, 7, 9")],
)
def test_rows_in_words(rows: list[int], words: str) -> None:
    assert named_rows(rows) == words
