"""Singulator: the share by crop and shape, the nearest position, one step by bench evidence."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.scales import Index, Position
from changeover.quantities import Q, Refusal
from changeover.seed.crops import Crop
from changeover.seed.reasons import Trust
from changeover.seed.singulator import answer_singulator, moved_by_bench
from tests.seed.made_up import case, crop_table, lot, planter

INDEX = Index(tuple(Position(f"{share:g}", share) for share in (0.25, 0.5, 0.75, 1.0)))


@pytest.mark.parametrize(
    ("crop", "position"),
    [("corn", 2), ("popcorn", 2), ("soybean", 4), ("dry_bean_navy", 4), ("sunflower", 2)],
)
def test_the_share_by_crop(crop: str, position: int) -> None:
    assert answer_singulator(case(crop), None).value == position


def test_corn_is_common_practice_others_are_remembered() -> None:
    assert answer_singulator(case("corn"), None).reason.trust is Trust.PRACTICE
    assert answer_singulator(case("soybean"), None).reason.trust is Trust.MEMORY


def test_seed_shape_decides_where_the_family_does_not() -> None:
    oval = answer_singulator(case("sorghum"), None)
    assert (oval.value, dict(_inputs(oval))["seed shape"]) == (3, "oval")
    flat = lot("sorghum", length=Q(5, "mm"), width=Q(4, "mm"), thickness=Q(1.5, "mm"))
    assert answer_singulator(case("sorghum", lot=flat), None).value == 2


def _inputs(answer: object) -> list[tuple[str, str]]:
    return [(one.name, one.text) for one in answer.reason.inputs]  # type: ignore[attr-defined]


def test_an_unknown_shape_of_an_unknown_family_has_no_proposal() -> None:
    answer = answer_singulator(case("cotton"), None)
    assert answer.value is None
    assert answer.reason.why.startswith("No proposal: enter it from your manual.")
    oats = Crop("oats", "Oats", rules=crop_table()["corn"].rules)
    assert answer_singulator(replace(case(), crop=oats), None).value is None


def test_an_index_without_shares_has_no_proposal() -> None:
    machine = planter(singulator=Index.of("1", "2", "3"))
    answer = answer_singulator(case("corn", planter=machine), None)
    assert answer.value is None
    assert "what share each position leaves" in answer.reason.why


def test_the_nearest_position_is_said_to_be_the_nearest() -> None:
    machine = planter(singulator=Index((Position("a", 0.2), Position("b", 0.6))))
    answer = answer_singulator(case("corn", planter=machine), None)
    assert answer.value == 2
    assert any("no position that leaves 50%" in one for one in answer.reason.cautions)


@pytest.mark.parametrize(
    ("position", "skips", "doubles", "there"),
    [
        (2, 0.0, 0.05, 1),
        (2, 0.05, 0.0, 3),
        (1, 0.0, 0.05, 1),
        (4, 0.05, 0.0, 4),
        (2, 0.02, 0.02, 2),
    ],
)
def test_doubles_cover_more_skips_less_never_beyond(
    position: int, skips: float, doubles: float, there: int
) -> None:
    assert moved_by_bench(INDEX, position, skips, doubles) == there


@given(st.permutations([0.25, 0.5, 0.75, 1.0]), st.integers(1, 4), st.floats(0.01, 0.5))
def test_the_order_of_the_index_does_not_matter(
    shares: list[float], position: int, doubles: float
) -> None:
    index = Index(tuple(Position(f"{share:g}", share) for share in shares))
    there = moved_by_bench(index, position, 0.0, doubles)
    assert shares[there - 1] <= shares[position - 1]


@pytest.mark.parametrize(
    ("index", "position", "skips", "doubles"),
    [
        (INDEX, 2, 1.2, 0.0),
        (INDEX, 2, 0.6, 0.6),
        (INDEX, 5, 0.0, 0.1),
        (Index.of("1", "2"), 1, 0.0, 0.1),
    ],
)
def test_impossible_bench_results_are_refused(
    index: Index, position: int, skips: float, doubles: float
) -> None:
    with pytest.raises(Refusal):
        moved_by_bench(index, position, skips, doubles)
