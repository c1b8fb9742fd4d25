"""Parts, shelf counts and meters refuse what cannot be."""

import pytest

from changeover.planter.parts import Condition, Meter, Part, ShelfCount
from changeover.quantities import Q, Refusal


@pytest.mark.parametrize(
    "bad",
    [
        lambda: Part("", "Disc", "disc"),
        lambda: Part("C30", "Disc", "disc", cells=0),
        lambda: Part("C30", "Disc", "disc", hole=Q(31, "mm")),
        lambda: ShelfCount("C30", Condition.GOOD, -1),
        lambda: Meter(" "),
        lambda: Meter("M-1", hours=-2),
    ],
)
def test_impossible_parts_are_refused(bad) -> None:
    with pytest.raises(Refusal):
        bad()


def test_a_part_without_crops_suits_any() -> None:
    assert Part("B1", "Brush", "brush").suits == frozenset()
