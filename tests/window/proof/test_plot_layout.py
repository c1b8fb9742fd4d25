"""Scales of proof plots hold every figure between round ticks; columns line up with rows."""

from hypothesis import given
from hypothesis import strategies as st

from changeover.window.proof.plot_layout import (
    Level,
    RowPlot,
    Series,
    Shape,
    Spot,
    columns,
    scale_for,
    scale_of,
)

SIZES = st.lists(st.floats(1e-6, 1e6), min_size=1, max_size=20)


@given(SIZES)
def test_a_scale_holds_every_figure_in_few_ticks(values: list[float]) -> None:
    scale = scale_for(values)
    assert scale.low <= min(values)
    assert max(values) <= scale.high * (1 + 1e-9)
    assert 2 <= len(scale.ticks) <= 12


def test_shares_get_ticks_that_are_round_in_percent() -> None:
    assert [round(tick * 100, 6) for tick in scale_for([0.078], factor=100).ticks] == [
        0,
        2,
        4,
        6,
        8,
    ]


def test_a_scale_takes_in_intervals_levels_and_band() -> None:
    series = Series("skips", Shape.RING, {3: Spot(0.01, 0.0, 0.05)})
    plot = RowPlot((1, 2, 3), (series,), (Level(0.09, "limit"),), band=(0.0, 0.12))
    assert scale_of(plot).high >= 0.12


def test_places_are_kept_within_the_plot() -> None:
    scale = scale_for([10.0])
    assert scale.place(0.0, 20, 220) == 220
    assert scale.place(99.0, 20, 220) == 20


def test_columns_stand_evenly_between_the_edges() -> None:
    assert columns((5, 6, 7, 8), 0, 400) == {5: 50, 6: 150, 7: 250, 8: 350}


def test_a_plot_says_itself_in_words() -> None:
    series = Series("skips", Shape.RING, {1: Spot(0.01, 0, 0.02), 2: Spot(0.04, 0.02, 0.07)})
    assert RowPlot((1, 2), (series,), unit="%", factor=100).says == "2 rows: skips 1 to 4 %"
    assert RowPlot((), ()).says == "nothing to show yet"
