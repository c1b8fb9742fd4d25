"""The crew's hours are read as people write them, and what cannot be is refused."""

import pytest

from changeover.quantities import Refusal
from changeover.switch.crew import (
    SKILLS,
    CrewMember,
    SharedTool,
    clock_text,
    hours_text,
    named,
    read_hours,
)


@pytest.mark.parametrize(
    ("text", "hours"),
    [
        ("", ()),
        ("7-12", ((420, 720),)),
        ("7:00-12:00, 13:30 – 18", ((420, 720), (810, 1080))),
        ("0-24", ((0, 1440),)),
    ],
)
def test_hours_are_read(text: str, hours: object) -> None:
    assert read_hours(text) == hours
    assert read_hours(hours_text(read_hours(text))) == hours


@pytest.mark.parametrize("text", ["7", "seven-8", "12-7", "7-25", "7:00-12:00-13:00"])
def test_what_is_no_hours_is_refused(text: str) -> None:
    with pytest.raises(Refusal, match=r"write (them|it) like"):
        read_hours(text)


def test_hours_that_overlap_are_refused() -> None:
    with pytest.raises(Refusal, match="not in order"):
        CrewMember("Ann", hours=((420, 720), (700, 900)))


def test_nothing_named_means_everything_and_a_strange_skill_is_refused() -> None:
    assert CrewMember("Ann").abilities == frozenset(SKILLS)
    assert CrewMember("Ann", frozenset({"Meters"})).abilities == {"Meters"}
    with pytest.raises(Refusal, match="“Milking” is no skill"):
        CrewMember("Ann", frozenset({"Milking"}))


def test_a_count_below_zero_is_refused() -> None:
    with pytest.raises(Refusal, match="cannot be -1 of “seed vacuum”"):
        SharedTool("seed vacuum", -1)


def test_names_that_are_not_entered_can_do_everything() -> None:
    ann = CrewMember("Ann", frozenset({"Meters"}))
    assert named([ann], ["Bo", "Ann", "Bo"]) == (CrewMember("Bo"), ann)


def test_a_minute_past_midnight_is_written_from_nought() -> None:
    assert [clock_text(minute) for minute in (425, 1440, 1445)] == ["7:05", "24:00", "0:05"]
