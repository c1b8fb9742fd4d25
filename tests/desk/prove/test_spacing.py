"""Spacing tests: typed spacings and positions, what a test settles, and a file taken in."""

import numpy as np
import pytest

from changeover.desk.door import apply
from changeover.desk.prove.proofs import findings, proofs
from changeover.desk.prove.spacing import (
    SpacingTest,
    import_spacings,
    judge_test,
    read_figures,
    save_test,
    spacing_of,
)
from changeover.proof.spacing_limits import SpacingLimits
from changeover.quantities import Q, Refusal

VECTOR = "18 20 22 19 17 2 20 41 18 21 23 19 20 6 14 40 22 18 61 20 19 21 17 20 24 18 22 20 19 21"


def test_positions_along_a_tape_become_spacings() -> None:
    found = read_figures("0 6,5 13 20.5", "in", positions=True, row=3)
    assert found.magnitude.tolist() == [6.5, 6.5, 7.5]


@pytest.mark.parametrize(
    ("text", "says"),
    [("", "no figures"), ("6 x", "figure 2: “x”"), ("6 -1", "not possible"), ("9 6", "behind")],
)
def test_bad_figures_are_named_by_row_and_figure(text, says) -> None:
    with pytest.raises(Refusal, match=f"Row 3.*{says}"):
        read_figures(text, "in", positions=True, row=3)


def test_a_made_up_vector_gives_the_shares_reckoned_by_hand() -> None:
    test = SpacingTest(Q(20.0, "cm"), {1: read_figures(VECTOR, "cm", positions=False, row=1)})
    one = judge_test(test).overall
    assert one.counts == (2, 25, 2, 1, 0)
    assert one.by_spacings.quality_of_feed == pytest.approx(25 / 30)
    assert one.by_positions.quality_of_feed == pytest.approx(26 / 32)


def test_a_test_is_kept_and_a_poor_row_closed_by_a_good_one(small) -> None:
    poor = Q(np.tile([6.0, 13.0], 60), "in")
    limits = SpacingLimits(misses_most=0.08)
    test = SpacingTest(Q(6.5, "in"), {2: poor}, limits, "south end")
    apply(small, save_test("Bar", test), "Ada")
    kept = spacing_of(proofs(small, "Bar")[0])
    assert (kept.target, kept.limits, kept.note) == (test.target, limits, "south end")
    assert kept.rows[2].magnitude.tolist() == poor.magnitude.tolist()
    assert [one.finding.row for one in findings(small, "Bar")] == [2]
    apply(small, save_test("Bar", test.with_row(2, Q(np.full(120, 6.5), "in"))), "Ada")
    assert findings(small, "Bar") == ()


def test_a_file_is_taken_into_the_test_and_stray_rows_refused(tmp_path) -> None:
    path = tmp_path / "tape.csv"
    path.write_text("row,position (in)\n1,0\n1,6\n1,13\n", encoding="utf-8")
    found = import_spacings(path, SpacingTest(Q(6.5, "in")), range(1, 5))
    assert found.rows[1].magnitude.tolist() == [6.0, 7.0]
    with pytest.raises(Refusal, match="not on this planter"):
        import_spacings(path, SpacingTest(), range(2, 5))


def test_without_a_target_nothing_is_judged() -> None:
    with pytest.raises(Refusal, match="target spacing is missing"):
        judge_test(SpacingTest(None, {1: Q(np.array([6.0]), "in")}))
