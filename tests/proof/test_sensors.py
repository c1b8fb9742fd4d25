"""Row sensors against controllers, and silent rows."""

import pytest

from changeover.proof.sensors import rows_not_reporting, sensor_capacity
from changeover.quantities import Refusal


@pytest.mark.parametrize(
    ("sensors", "controllers", "needed", "unread"), [(24, 1, 1, 0), (32, 1, 2, 8), (32, 2, 2, 0)]
)
def test_thirty_two_rows_need_two_controllers(sensors, controllers, needed, unread) -> None:
    found = sensor_capacity(sensors, controllers)
    assert (found.needed, found.unread) == (needed, unread)
    assert found.enough == (unread == 0)


def test_the_users_controller_may_read_more() -> None:
    assert sensor_capacity(32, 1, per_controller=48).enough


def test_silent_rows_and_the_controller_they_share() -> None:
    wiring = {row: "left" if row <= 4 else "right" for row in range(1, 9)}
    found = rows_not_reporting(range(1, 9), [1, 2, 4], wiring)
    assert found.rows == (3, 5, 6, 7, 8)
    assert found.controllers == ("right",)


def test_a_row_nobody_knows_is_refused() -> None:
    with pytest.raises(Refusal, match="Row 9"):
        rows_not_reporting([1, 2], [9], {1: "left", 2: "left"})


@pytest.mark.parametrize("counts", [(0, 1, 24), (24, -1, 24), (24, 1, 0)])
def test_impossible_counts_are_refused(counts) -> None:
    with pytest.raises(Refusal):
        sensor_capacity(*counts)
