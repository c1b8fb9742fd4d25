"""Field capacity, lost area, repairs and losses by planting day against print."""

import pytest

from changeover.bundled import bundled
from changeover.quantities import Q
from changeover.switch.costs import (
    field_capacity,
    lost_time,
    read_machine,
    read_timeliness,
    repair_to_date,
)

TABLE = bundled("resources", "machine_costs.toml").read_text(encoding="utf-8")
FORMULA = "Srivastava et al. 2006 (ASABE); Iowa State A3-24: ac/h = ft · mph · efficiency / 8.25"
TWELVE_ROWS = [(5.0, 0.60, 10.91), (5.5, 0.65, 13.00), (6.0, 0.70, 15.27)]
NAFZIGER = "Nafziger, University of Illinois, 2 May 2014 (northern Illinois 2007-13)"
LOSSES = [(111, 0), (120, 2), (130, 8), (140, 17), (150, 29), (161, 49)]


@pytest.mark.parametrize(("mph", "share", "printed"), TWELVE_ROWS)
def test_twelve_rows_at_thirty_inches(outside_check, mph, share, printed) -> None:
    ours = field_capacity(Q(12 * 30, "in"), Q(mph, "mph"), share)
    outside_check(
        calculation=f"field capacity, 12 rows at 30 in, {mph} mph, {share:.0%}", source=FORMULA,
        trust="derived", printed=printed, ours=ours.to("acre/h").magnitude, unit="ac/h",
        tolerance=0.005,
    )  # fmt: skip


def test_an_hour_lost_loses_the_field_capacity(outside_check) -> None:
    lost = lost_time(Q(60, "min"), field_capacity(Q(30, "ft"), Q(6, "mph"), 0.60))
    outside_check(
        calculation="area lost to a switch of one hour, 30 ft at 6 mph, 60 %",
        source="Iowa State University PM 696, Estimating field capacity of farm machines",
        trust="published", printed=13.1, ours=lost.area.to("acre").magnitude, unit="ac",
        tolerance=0.05,
    )  # fmt: skip


def test_repairs_over_the_life_of_a_planter(outside_check) -> None:
    planter = read_machine(TABLE, "row_crop_planter")
    ours = repair_to_date(planter, 1.0, Q(planter.life_hours, "h"))
    outside_check(
        calculation="repairs of a row-crop planter over 1 500 h, share of price",
        source="ASABE D497", trust="from memory", printed=0.75, ours=ours, unit="",
        tolerance=0.005, note="0.32 · 1.5^2.1 agrees with the 75 % printed beside it",
    )  # fmt: skip


@pytest.mark.parametrize(("day", "printed"), LOSSES)
def test_corn_lost_by_planting_day(outside_check, day, printed) -> None:
    ours = read_timeliness(TABLE, "corn_northern_illinois").loss(day)
    outside_check(
        calculation=f"corn lost by planting on day {day} of the year", source=NAFZIGER,
        trust="published", printed=printed, ours=ours, unit="bu/ac", tolerance=0,
    )  # fmt: skip
