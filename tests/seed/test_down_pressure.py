"""Down pressure: a row's own line gives the setting, within what the settings reach."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.quantities import Q, Refusal
from changeover.seed import down_pressure

LINE = down_pressure.fit_load_line([0, 50, 100, 150], Q([210.0, 480.0, 790.0, 1_060.0], "N"))


@given(st.floats(250, 1_000))
def test_the_setting_gives_the_load_asked_for(newtons) -> None:
    choice = down_pressure.setting_for_load(LINE, Q(newtons, "N"), 0, 150)
    assert choice.load.to("N").magnitude == pytest.approx(newtons)
    assert choice.half_width is not None


@given(st.floats(250, 900), st.floats(0, 100), st.floats(0, 100))
def test_a_wider_target_never_narrows_the_band(newtons, less, more) -> None:
    narrow = down_pressure.band_for_load(LINE, Q(newtons, "N"), Q(newtons, "N"), 0, 150)
    wide = down_pressure.band_for_load(LINE, Q(newtons - less, "N"), Q(newtons + more, "N"), 0, 150)
    exact = down_pressure.setting_for_load(LINE, Q(newtons, "N"), 0, 150).setting
    assert wide.low <= narrow.low <= exact <= narrow.high <= wide.high


@given(st.floats(300, 700))
def test_a_reading_at_an_end_of_the_band_may_give_the_end_of_the_target(newtons) -> None:
    line = LINE.line
    band = down_pressure.band_for_load(LINE, Q(newtons, "N"), Q(newtons + 200, "N"), 0, 150)
    for end, load, way in ((band.low, newtons, 1), (band.high, newtons + 200, -1)):
        reach = line.at(end) + way * line.reading_half_width(end)
        assert reach == pytest.approx(load)


@given(st.floats(300, 700))
def test_units_do_not_change_the_band(newtons) -> None:
    bands = [
        down_pressure.band_for_load(LINE, low, high, 0, 150)
        for low, high in (
            (Q(newtons, "N"), Q(newtons + 100, "N")),
            (Q(newtons, "N").to("lbf"), Q(newtons + 100, "N").to("lbf")),
        )
    ]
    assert bands[0].low == pytest.approx(bands[1].low)
    assert bands[0].high == pytest.approx(bands[1].high)


@given(st.floats(0, 3_000), st.floats(0, 500))
def test_a_higher_load_is_never_in_a_lighter_class(newtons, more) -> None:
    order = ["too light", "light", "medium", "heavy"]
    lower = down_pressure.load_class(Q(newtons, "N"))
    assert order.index(down_pressure.load_class(Q(newtons + more, "N"))) >= order.index(lower)


def test_a_load_out_of_reach_is_refused_with_the_range() -> None:
    with pytest.raises(Refusal, match="the settings give"):
        down_pressure.setting_for_load(LINE, Q(2_000, "N"), 0, 150)


def test_a_load_that_falls_with_the_setting_is_refused() -> None:
    with pytest.raises(Refusal, match="does not grow"):
        down_pressure.fit_load_line([0, 50], Q([500.0, 300.0], "N"))


def test_the_wheels_cannot_pull() -> None:
    assert LINE.load(-500) == Q(0, "N")
