"""A kind of part stays, with its code, while a planter, the shelf or the manual has it."""

from dataclasses import replace

import pytest

from changeover.desk.edits import PutManual, PutPart, SetShelf
from changeover.desk.shelf import parts
from changeover.planter.parts import Condition, Part, ShelfCount
from changeover.quantities import Q, Refusal
from changeover.seed.manual import ManualValue


def _part(store, code) -> Part:
    return next(one for one in parts(store) if one.code == code)


@pytest.mark.parametrize("new", [None, "Z"])
@pytest.mark.parametrize(
    ("code", "says"),
    [
        ("F22", "is mounted on Penny Twelve at row 1"),
        ("S56", "is (mounted|wanted) on"),
        ("seal R", "the shelf holds 9; set the count to 0 first"),
    ],
)
def test_a_part_in_use_keeps_its_code(demo, do, code, says, new) -> None:
    part = _part(demo, code)
    with pytest.raises(Refusal, match=says):
        do(PutPart(replace(part, code=new) if new else None, before=part))


def test_a_part_in_use_may_change_its_name(demo, do) -> None:
    part = _part(demo, "F22")
    do(PutPart(replace(part, name="Sunflower disc"), before=part))
    assert _part(demo, "F22").name == "Sunflower disc"


def test_a_part_that_the_manual_names_stays(demo, do) -> None:
    part = Part("Z9", "new disc", "disc")
    do(PutPart(part))
    done = do(PutManual(ManualValue("corn", "vacuum", Q(15.0, "inH2O"), part="Z9")))
    with pytest.raises(Refusal, match="named in your manual's values for corn"):
        do(PutPart(None, before=part))
    do(done.inverse)
    do(PutPart(None, before=part))


def test_a_part_nobody_has_can_go_and_come_back(demo, do) -> None:
    part = _part(demo, "seal R")
    nine = ShelfCount("seal R", Condition.NEW, 9, "C4")
    do(SetShelf(replace(nine, count=0), before=nine))
    gone = do(PutPart(None, before=part))
    assert "seal R" not in [one.code for one in parts(demo)]
    do(gone.inverse)
    assert _part(demo, "seal R") == part
