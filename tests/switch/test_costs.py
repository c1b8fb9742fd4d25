"""What a switch costs: lost hours and area, lateness, repairs, and which crop goes first."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.bundled import bundled
from changeover.quantities import Q, Refusal
from changeover.seed.reasons import Trust
from changeover.switch.costs import (
    FieldWork,
    Timeliness,
    choose_order,
    field_capacity,
    lost_time,
    read_machine,
    read_timeliness,
    repair_to_date,
)

TABLE = bundled("resources", "machine_costs.toml").read_text(encoding="utf-8")
STEEP = Timeliness(((120, 0), (130, 10), (140, 30)))
FLAT = Timeliness(((120, 0), (140, 2)))


def test_a_switch_loses_the_area_of_its_hours() -> None:
    lost = lost_time(Q(150, "min"), Q(13, "acre/h"), 0.5)
    assert lost.hours.to("h").magnitude == pytest.approx(1.25)
    assert lost.area.to("acre").magnitude == pytest.approx(16.25)


def test_loss_is_straight_between_points_and_goes_on_after_the_last() -> None:
    assert [STEEP.loss(day) for day in (110, 120, 125, 130, 135, 140, 145)] == [
        0, 0, 5, 10, 20, 30, 40,
    ]  # fmt: skip


@given(st.floats(100, 160), st.floats(0.1, 40))
def test_the_mean_loss_is_that_of_many_days(begin, length) -> None:
    steps = 4000
    days = (begin + length * (step + 0.5) / steps for step in range(steps))
    assert STEEP.mean_loss(begin, begin + length) == pytest.approx(
        sum(map(STEEP.loss, days)) / steps, rel=1e-3, abs=1e-3
    )


def beans(area: float, losses: Timeliness = FLAT) -> FieldWork:
    return FieldWork("beans", Q(area, "acre"), Q(12, "acre/h"), losses)


CORN = FieldWork("corn", Q(400, "acre"), Q(12, "acre/h"), STEEP)


def test_few_beans_are_finished_first_and_many_are_not() -> None:
    few = choose_order(beans(20, STEEP), CORN, Q(3, "h"), Q(3, "h"), 124, 6)
    many = choose_order(beans(600), CORN, Q(3, "h"), Q(3, "h"), 124, 6)
    assert few.finish_first
    assert not many.finish_first
    assert many.gain == pytest.approx(many.loss_if_finished - many.loss_if_changed)
    assert few.end_if_changed - few.end_if_finished == pytest.approx(3 / 6)


def test_losses_add_up_by_hand() -> None:
    work = FieldWork("corn", Q(120, "acre"), Q(12, "acre/h"), STEEP)
    none = FieldWork("beans", Q(0, "acre"), Q(12, "acre/h"), FLAT)
    choice = choose_order(none, work, Q(5, "h"), Q(0, "h"), 120, 5)
    assert choice.end_if_finished == pytest.approx(123)
    assert choice.loss_if_finished == pytest.approx(120 * STEEP.loss(122))


def test_figures_of_the_planter_say_how_far_to_trust_them() -> None:
    planter = read_machine(TABLE, "row_crop_planter")
    assert planter.trust is Trust.MEMORY
    assert "D497" in planter.source
    assert repair_to_date(planter, 100_000, Q(0, "h")) == 0
    one, two = (repair_to_date(planter, 100_000, Q(hours, "h")) for hours in (400, 800))
    assert two > 2 * one


def test_losses_of_corn_are_read() -> None:
    assert read_timeliness(TABLE, "corn_northern_illinois").loss(140) == 17


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(Refusal, match="give 0 to 1"):
        lost_time(Q(1, "h"), Q(12, "acre/h"), 1.2)
    with pytest.raises(Refusal, match="below zero"):
        lost_time(Q(-1, "h"), Q(12, "acre/h"))
    with pytest.raises(Refusal, match="sort them"):
        Timeliness(((130, 1), (120, 0)))
    with pytest.raises(Refusal, match="more than 0"):
        choose_order(beans(1), CORN, Q(1, "h"), Q(1, "h"), 120, 0)
    with pytest.raises(Refusal, match="enter your own"):
        read_timeliness(TABLE, "corn_nowhere")
    with pytest.raises(Refusal, match="add them to the table"):
        read_machine(TABLE, "corn_nowhere")
    with pytest.raises(Refusal, match="below zero"):
        repair_to_date(read_machine(TABLE, "row_crop_planter"), -1, Q(1, "h"))


def test_capacity_agrees_in_both_systems() -> None:
    ours = field_capacity(Q(30, "ft"), Q(5, "mph"), 0.6)
    assert ours.to("acre/h").magnitude == pytest.approx(30 * 5 * 0.6 / 8.25)
    assert ours.to("hectare/h").magnitude == pytest.approx(
        Q(5, "mph").to("km/h").magnitude * Q(30, "ft").to("m").magnitude * 0.6 / 10
    )
