"""``changeover timetable`` shares the work out, as text, JSON and PDF, and refuses in one line."""

from pathlib import Path
from typing import Any

import pytest

from changeover.__main__ import main
from changeover.commands.progress_bar import Bar
from tests.commands.conftest import Answer

ASK = ("--planter", "Old Fiddle 24", "--crew", "Ann, Bo", "--at", "7:00", "--seconds", "1")


def stints(answered: dict[str, Any]) -> list[dict[str, Any]]:
    return [one for person in answered["persons"] for one in person["stints"]]


def test_each_place_of_each_task_is_given_out_once(store: str, answer: Answer) -> None:
    answered = answer("timetable", store, *ASK)
    at = [(one["task"], place) for one in stints(answered) for place in one["places"]]
    assert len(at) == len(set(at)) > 40
    assert [person["name"] for person in answered["persons"]] == ["Ann", "Bo"]


def test_length_bound_and_times_agree(store: str, answer: Answer) -> None:
    answered = answer("timetable", store, *ASK)
    length, bound = answered["length"]["value"], answered["bound"]["value"]
    assert bound <= length == max(one["end"]["value"] for one in stints(answered))
    assert answered["gap"] == pytest.approx((length - bound) / length)
    hours, minutes = divmod(420 + length, 60)
    assert (answered["begin"], answered["end"]) == ("7:00", f"{hours}:{minutes:02d}")


def test_one_tool_more_is_no_slower(store: str, answer: Answer) -> None:
    one = answer("timetable", store, *ASK, "--tool", "seed vacuum=1")
    two = answer("timetable", store, *ASK, "--tool", "seed vacuum=2")
    assert two["length"]["value"] <= one["length"]["value"]


def test_a_sheet_is_printed_and_text_is_for_people(
    store: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "who.pdf"
    assert main(["timetable", store, *ASK, "--out", str(path)]) == 0
    out, err = capsys.readouterr()
    assert path.read_bytes().startswith(b"%PDF")
    assert out.startswith("Planter")
    assert f"Written: {path}" in out
    assert err == ""


@pytest.mark.parametrize(
    ("more", "words"),
    [
        (("--at", "25:00"), "no time of day"),
        (("--tool", "vacuum"), "does not count a tool"),
        (("--tool", "seed vacuum=-1"), "cannot be -1"),
        (("--tool", "seed vacuum=0"), "needs 1 of “seed vacuum” at once and there are 0"),
        (("--tool", "seed vacum=3"), "no work here needs a “seed vacum”; its tools are"),
        (("--crew", "Ann,,Ann"), "leaves a name empty"),
        (("--crew", "Ann, Bo, ann"), "names “ann” twice"),
        (("--crew", ""), "leaves a name empty"),
        (("--seconds", "0"), "over 0 to 86400 seconds"),
        (("--planter", "Nobody's"), "Nobody's"),
        (("--planter", "Penny Twelve"), "no work is left"),
    ],
)
def test_what_cannot_be_is_refused_in_one_line(
    store: str, capsys: pytest.CaptureFixture[str], more: tuple[str, ...], words: str
) -> None:
    assert main(["timetable", store, *ASK, *more]) == 2
    err = capsys.readouterr().err
    assert err.count("\n") == 1
    assert words in err


def test_the_bar_is_drawn_on_one_line_and_wiped() -> None:
    import io

    stream = io.StringIO()
    bar = Bar(stream)
    bar.share(0.5, "  best 42")
    bar.share(0.5, "  best 42")
    bar.wipe()
    assert stream.getvalue().count("50%") == 1
    assert stream.getvalue().endswith("\r")
    assert "\n" not in stream.getvalue()
