"""A flush is reckoned in closed form, entered into the log, and printed with the clean-out."""

import math
from collections.abc import Callable
from datetime import UTC, datetime, timedelta

import pytest

from changeover.desk.door import Outcome
from changeover.desk.edits import Edit
from changeover.desk.export import log_of
from changeover.desk.flush import (
    FlushCase,
    flush_case,
    flush_text,
    limit_text,
    log_flush,
    purity_limits,
    read_limit,
    read_seeds,
    reckon,
)
from changeover.desk.plan_switch import work_view
from changeover.quantities import Refusal, Units
from changeover.store.opening import Store

PLANTER = "Old Fiddle 24"
Do = Callable[[Edit], Outcome]


@pytest.fixture
def case(demo: Store) -> FlushCase:
    return flush_case(work_view(demo, PLANTER))


def test_seeds_length_and_area_follow_the_closed_form(case: FlushCase) -> None:
    found = reckon(case, 40, 800, 0.001)
    assert found.seeds == pytest.approx(800 * math.log(40 / (800 * 0.001)))
    feet = found.seeds / float(case.seeds_per_length.to("seed/ft").magnitude)
    assert float(found.row_length.to("ft").magnitude) == pytest.approx(feet)
    acres = case.rows * feet * float(case.row_spacing.to("ft").magnitude) / 43_560
    assert float(found.area.to("acre").magnitude) == pytest.approx(acres)


def test_the_rate_and_rows_are_those_wanted(case: FlushCase) -> None:
    assert (case.old, case.new, case.rows) == ("M-41", "Y-208", 24)
    spacing = 43_560 * 12 * 12 / 140_000 / 30
    per_inch = float(case.seeds_per_length.to("seed/inch").magnitude)
    assert 1 / per_inch == pytest.approx(spacing, rel=1e-6)


def test_a_flush_is_logged_and_printed_and_can_be_taken_back(
    demo: Store, do: Do, case: FlushCase
) -> None:
    edit = log_flush(case, (40, 800, 0.001), "Ann", measured=True, now=datetime.now(UTC))
    back = do(edit).inverse
    view = work_view(demo, PLANTER)
    assert view.board.before is not None
    log = log_of(view, view.board.before)
    assert log is not None
    (line,) = (one for one in log.lines if one.what.startswith("flushed"))
    assert (line.who, line.lot_before, line.lot_after) == ("Ann", "M-41", "Y-208")
    assert "40 old seeds among 800 in a row, counted" in line.steps
    do(back)
    assert work_view(demo, PLANTER).flushes == ()


def test_a_flush_of_an_earlier_switch_is_not_in_this_log(
    demo: Store, do: Do, case: FlushCase
) -> None:
    long_ago = datetime.now(UTC) - timedelta(days=3650)
    do(log_flush(case, (40, 800, 0.001), "Ann", measured=False, now=long_ago))
    assert work_view(demo, PLANTER).flushes == ()


@pytest.mark.parametrize(
    ("text", "share"),
    [("0.1 %", 0.001), ("1 in 400", 0.0025), ("1:10 000", 0.0001), ("0.01", 0.01)],
)
def test_limits_are_read_as_they_are_printed(text: str, share: float) -> None:
    assert read_limit(text) == pytest.approx(share)


@pytest.mark.parametrize(
    ("figures", "words"),
    [((40, 20, 0.001), "cannot be"), ((40, 800, 0), "never met by flushing"), ((-1, 8, 0.1), "be")],
)
def test_figures_that_cannot_be_are_refused(
    case: FlushCase, figures: tuple[float, float, float], words: str
) -> None:
    with pytest.raises(Refusal, match=words):
        log_flush(case, figures, "Ann", measured=True)


def test_words_that_are_no_figures_and_a_log_without_a_name_are_refused(case: FlushCase) -> None:
    for text in ("little", "1 in 0", "1 in few"):
        with pytest.raises(Refusal, match="no limit"):
            read_limit(text)
    with pytest.raises(Refusal, match="no number of seeds"):
        read_seeds("some", "Old seed left")
    with pytest.raises(Refusal, match="name of the person"):
        log_flush(case, (40, 800, 0.001), " ", measured=True)


def test_without_another_lot_nothing_is_flushed(demo: Store) -> None:
    with pytest.raises(Refusal, match="nothing is flushed"):
        flush_case(work_view(demo, "Penny Twelve"))


def test_what_it_takes_is_said(case: FlushCase) -> None:
    assert "nothing has to be flushed" in flush_text(reckon(case, 0, 800, 0.01), case, Units.US)
    said = flush_text(reckon(case, 40, 800, 0.001), case, Units.METRIC)
    assert said.startswith("Each row has to drop 3\u202f130 seeds: ")
    assert "with 24 rows" in said
    one = next(limit for limit in purity_limits() if limit.purity == "certified")
    assert limit_text(one).startswith("1 in 400 plants in the field")
