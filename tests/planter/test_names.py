"""A name may be in any script, but not too long to read nor with signs that cannot be seen."""

import pytest

from changeover.planter.machine import Planter
from changeover.planter.names import MOST_CHARACTERS
from changeover.planter.parts import Part
from changeover.quantities import Q, Refusal
from changeover.seed.fields import Field
from changeover.seed.lots import SeedLot

MAKES = (
    lambda name: Planter(name, 8, Q(30, "in")),
    lambda name: SeedLot(name, "corn"),
    lambda name: Field(name, Q(5, "acre")),
    lambda name: Part(name, "", "disc"),
)
EACH = pytest.mark.parametrize("make", MAKES, ids=("planter", "lot", "field", "part"))


@EACH
@pytest.mark.parametrize("name", ["A/B", "=1+1", "播种机 naïve", "x" * MOST_CHARACTERS])
def test_any_script_and_sign_is_a_name(make, name) -> None:
    assert name in vars(make(name)).values()


@EACH
@pytest.mark.parametrize("name", ["a\nb", "a\x00b", "\ud800", "x" * (MOST_CHARACTERS + 1)])
def test_what_cannot_be_read_is_no_name(make, name) -> None:
    with pytest.raises(Refusal, match="name"):
        make(name)
