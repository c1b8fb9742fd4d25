"""Lines of depth and load against scipy, printed examples of intervals and the load classes."""

import numpy as np
import pytest
from scipy import stats

from changeover.planter.scales import DepthScale
from changeover.quantities import Q, Units
from changeover.seed import depth_calibration, down_pressure
from changeover.seed.calibration_line import fit_line, t_quantile
from changeover.seed.row_line import RowDigs, calibrate_row

NOTCHES = [2, 2, 4, 4, 6, 6, 8, 8]
DEPTHS = [27.0, 31.0, 39.0, 42.0, 52.5, 50.0, 66.0, 61.5]
HANNA = "Hanna, Steward & Aldinger 2010, Appl. Eng. Agric. 26(4):551-556"


def test_line_equals_the_reference_library(outside_check) -> None:
    ours = depth_calibration.fit_depth_line(NOTCHES, Q(DEPTHS, "mm")).line
    theirs = stats.linregress(NOTCHES, DEPTHS)
    half = stats.t.ppf(0.975, 6) * theirs.stderr
    for part, printed, mine in (
        ("slope", theirs.slope, ours.slope),
        ("depth at notch 0", theirs.intercept, ours.at(0)),
        ("half interval of the slope", half, ours.slope_half_width()),
    ):
        outside_check(
            calculation=f"depth against notch, {part}",
            source="scipy.stats.linregress",
            trust="published",
            printed=printed,
            ours=mine,
            unit="mm",
            tolerance=1e-9,
        )


def test_interval_of_the_line_equals_the_reference_library(outside_check) -> None:
    import statsmodels.api as sm

    fitted = sm.OLS(DEPTHS, sm.add_constant(NOTCHES)).fit()
    low, high = fitted.get_prediction([[1.0, 5.0]]).conf_int()[0]
    ours = depth_calibration.fit_depth_line(NOTCHES, Q(DEPTHS, "mm")).half_width(5)
    outside_check(
        calculation="half interval of the depth at notch 5",
        source="statsmodels OLS, prediction of the mean",
        trust="published",
        printed=(high - low) / 2,
        ours=ours.to("mm").magnitude,
        unit="mm",
        tolerance=1e-9,
    )


CRYSTALS = (
    "Greenwell & Schubert Kabban 2014, The R Journal 6(1):90-100, its package's tests; weights "
    "from memory of Graybill & Iyer 1994, crystal growth"
)
WEIGHTS = [0.08, 1.12, 4.43, 4.98, 4.92, 7.18, 5.57, 8.40, 8.81, 10.81, 11.16, 10.12, 13.12, 15.04]


@pytest.mark.parametrize(
    ("mean", "what", "low", "high"),
    [(False, "a reading", 11.0946, 20.7240), (True, "the line", 14.6590, 17.1596)],
)
def test_inverse_interval_of_a_printed_example(outside_check, mean, what, low, high) -> None:
    line = fit_line(range(2, 30, 2), WEIGHTS, "Crystals")
    found = line.reached_at(8.0, mean=mean)
    for end, printed, ours in zip(("low", "high"), (low, high), found, strict=True):
        outside_check(
            calculation=f"hours until {what} reaches 8 g, {end} end",
            source=CRYSTALS,
            trust="published",
            printed=printed,
            ours=ours,
            unit="h",
            tolerance=0.00005,
        )


@pytest.mark.parametrize("x", [5.0, 12.0])
def test_interval_of_a_reading_equals_the_reference_library(outside_check, x) -> None:
    import statsmodels.api as sm

    fitted = sm.OLS(DEPTHS, sm.add_constant(NOTCHES)).fit()
    low, high = fitted.get_prediction([[1.0, x]]).conf_int(obs=True)[0]
    outside_check(
        calculation=f"half prediction interval of a dig at notch {x:g}",
        source="statsmodels OLS, prediction of an observation",
        trust="published",
        printed=(high - low) / 2,
        ours=fit_line(NOTCHES, DEPTHS, "Depths").reading_half_width(x),
        unit="mm",
        tolerance=1e-9,
    )


def test_band_of_down_pressure_by_the_reference_library(outside_check) -> None:
    """The band's low end is where the library's prediction interval just reaches 490 N."""
    import statsmodels.api as sm
    from scipy.optimize import brentq

    settings = [0.0, 50.0, 100.0, 150.0, 200.0]
    loads = [210.0, 480.0, 790.0, 1_060.0, 1_290.0]
    fitted = sm.OLS(loads, sm.add_constant(settings)).fit()

    def short(setting: float) -> float:
        return float(fitted.get_prediction([[1.0, setting]]).conf_int(obs=True)[0][1]) - 490.0

    line = down_pressure.fit_load_line(settings, Q(loads, "N"))
    band = down_pressure.band_for_load(line, Q(490, "N"), Q(890, "N"), 0, 200)
    outside_check(
        calculation="low end of the band of down pressure for a medium load",
        source="statsmodels OLS, prediction of an observation, solved for 490 N",
        trust="published",
        printed=float(brentq(short, 0.0, 100.0, xtol=1e-10)),
        ours=band.low,
        unit="lbf",
        tolerance=1e-7,
    )


def test_a_rows_own_step_equals_the_reference_library(outside_check) -> None:
    scale = DepthScale(Q(0.5, "in"), Q(0.25, "in"), 13)
    by_notch = [(n, Q(np.array([DEPTHS[i], DEPTHS[i + 1]]), "mm")) for i, n in ((2, 4), (6, 8))]
    found = calibrate_row(scale, RowDigs(1, *by_notch[0], by_notch[1:]), Units.US)
    theirs = stats.linregress([4, 4, 8, 8], [DEPTHS[i] for i in (2, 3, 6, 7)])
    for part, printed, ours in (
        ("step", theirs.slope, found.step),
        ("half interval of the step", stats.t.ppf(0.975, 2) * theirs.stderr, found.half_width),
        ("depth at notch 1", theirs.intercept + theirs.slope, found.taken_by(scale).depth(1, 1)),
    ):
        outside_check(
            calculation=f"a row's own depth line, {part}",
            source="scipy.stats.linregress",
            trust="published",
            printed=printed,
            ours=ours.to("mm").magnitude,
            unit="mm",
            tolerance=1e-9,
        )


@pytest.mark.parametrize(
    ("freedom", "printed"), [(1, 12.706), (4, 2.776), (10, 2.228), (30, 2.042)]
)
def test_student_t(outside_check, freedom, printed) -> None:
    outside_check(
        calculation=f"Student's t, two-sided 95 %, {freedom} degrees of freedom",
        source="tables of Student's t in any statistics text",
        trust="from memory",
        printed=printed,
        ours=t_quantile(freedom, 0.95),
        unit="",
        tolerance=0.0005,
    )


def test_quarter_inch_a_notch(outside_check) -> None:
    line = depth_calibration.common_depth_line(Q(1, "in"))
    outside_check(
        calculation="depth at the fifth notch, first at 1 in",
        source="a quarter inch a notch",
        trust="common practice",
        printed=2.0,
        ours=line.depth(5).to("in").magnitude,
        unit="in",
        tolerance=1e-9,
    )


@pytest.mark.parametrize(
    ("load", "name"), [(180, "light"), (489, "light"), (490, "medium"), (890, "medium")]
)
def test_load_classes_at_their_ends(load, name) -> None:
    """The paper's classes: light 180-490 N, medium 490-890 N, heavy above."""
    assert down_pressure.load_class(Q(load, "N")) == name


@pytest.mark.parametrize(("limit", "printed"), [("LIGHT_LOAD", 40.5), ("HEAVY_LOAD", 200.0)])
def test_load_classes_in_pounds(outside_check, limit, printed) -> None:
    ours = getattr(down_pressure, limit).to("lbf").magnitude
    outside_check(
        calculation=f"{limit.lower().replace('_', ' ')} of the gauge wheels",
        source=HANNA,
        trust="published",
        printed=printed,
        ours=ours,
        unit="lbf",
        tolerance=0.1,
        note="180 and 890 N",
    )


def test_anscombe_line(outside_check) -> None:
    x = np.array([10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5], dtype=float)
    y = np.array([8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68])
    line = fit_line(x, y, "Anscombe")
    for part, printed, ours, tolerance in (
        ("slope", 0.500, line.slope, 0.0005),
        ("intercept", 3.00, line.at(0), 0.005),
        ("residual standard deviation", 1.237, line.spread, 0.0005),
    ):
        outside_check(
            calculation=f"least squares, {part}",
            source="Anscombe 1973, The American Statistician 27:17-21, first data set",
            trust="published",
            printed=printed,
            ours=ours,
            unit="",
            tolerance=tolerance,
        )
