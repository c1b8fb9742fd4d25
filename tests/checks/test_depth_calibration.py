"""Lines of depth and load against scipy, printed examples of intervals and the load classes."""

import numpy as np
import pytest
from scipy import stats

from changeover.quantities import Q
from changeover.seed import depth_calibration, down_pressure
from changeover.seed.calibration_line import fit_line, t_quantile

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
