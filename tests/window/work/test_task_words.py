"""Times and tasks in the words of a card."""

import pytest

from changeover.window.work.task_words import minutes_text


@pytest.mark.parametrize(
    ("minutes", "text"),
    [
        (0, "0 min"),
        (0.5, "½ min"),
        (1.5, "1½ min"),
        (12, "12 min"),
        (130, "2 h 10 min"),
        (120, "2 h"),
    ],
)
def test_a_time_is_said_in_minutes_and_hours(minutes: float, text: str) -> None:
    assert minutes_text(minutes) == text
