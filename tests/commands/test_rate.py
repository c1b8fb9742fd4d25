"""``changeover rate`` answers in the units asked for and refuses in one line."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.__main__ import main
from changeover.commands.rate import reckon
from changeover.quantities import Q, Units

CORN = ("rate", "--rate", "32000/acre", "--row-spacing", "30 in")
RUNNING = ("--speed", "5 mph", "--cells", "30")


def answer(capsys: pytest.CaptureFixture[str], *arguments: str) -> dict[str, dict[str, object]]:
    assert main([*arguments, "--json"]) == 0
    written = capsys.readouterr()
    assert written.err == ""
    answered: dict[str, dict[str, object]] = json.loads(written.out)
    return answered


def test_us_figures(capsys: pytest.CaptureFixture[str]) -> None:
    figures = answer(capsys, *CORN, *RUNNING)
    assert figures["spacing"] == {"value": pytest.approx(6.534), "unit": "in"}
    assert figures["seeds_per_length"] == {"value": pytest.approx(1.83655, 1e-5), "unit": "seed/ft"}
    assert figures["row_length_thousandth"] == {"value": pytest.approx(17.424), "unit": "ft"}
    assert figures["seeds_per_second"] == {"value": pytest.approx(13.468, 1e-4), "unit": "seed/s"}
    assert figures["disc_speed"] == {"value": pytest.approx(26.936, 1e-4), "unit": "rpm"}


def test_metric_figures_of_the_same_job(capsys: pytest.CaptureFixture[str]) -> None:
    figures = answer(capsys, *CORN, *RUNNING, "--units", "metric")
    assert figures["spacing"] == {"value": pytest.approx(6.534 * 2.54), "unit": "cm"}
    assert figures["row_length_thousandth"] == {"value": pytest.approx(1000 / 76.2), "unit": "m"}
    assert figures["disc_speed"]["value"] == pytest.approx(26.936, 1e-4)


def test_without_speed_nothing_turns(capsys: pytest.CaptureFixture[str]) -> None:
    figures = answer(capsys, *CORN)
    assert {"seeds_per_second", "disc_speed", "cells"}.isdisjoint(figures)
    assert {"spacing", "seeds_per_length", "row_length_thousandth"} <= set(figures)


def test_text_names_each_figure(capsys: pytest.CaptureFixture[str]) -> None:
    assert main([*CORN, *RUNNING]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert any(line.startswith("Spacing in the row") and "6.53 in" in line for line in lines)
    assert len(lines) == 10


@given(st.floats(5_000, 200_000), st.floats(15, 40))
def test_seeds_per_length_times_spacing_is_one(rate: float, across: float) -> None:
    figures = reckon({"rate": Q(rate, "seed/acre"), "row_spacing": Q(across, "in")}, Units.US)
    product = figures["seeds_per_length"] * figures["spacing"]
    assert product.to("count").magnitude == pytest.approx(1)


@pytest.mark.parametrize(
    "arguments",
    [
        ("rate",),
        ("rate", "--rate", "32000/acre"),
        (*CORN, "--units", "imperial"),
        (*CORN, "--cells", "30"),
        (*CORN, "--speed", "fast"),
        (*CORN, "--speed", "5 mph", "--cells", "29.5"),
        (*CORN, "--speed", "5 mph", "--cells", "0"),
        (*CORN, "--spee", "5 mph"),
        (*CORN, "left over"),
        ("rate", "--rate", "many", "--row-spacing", "30 in"),
        ("rate", "--rate", "-32000/acre", "--row-spacing", "30 in"),
        ("rate", "--rate", "0", "--row-spacing", "30 in"),
        ("rate", "--rate", "1e300", "--row-spacing", "30 in"),
        ("rate", "--rate", "3 bags/acre", "--row-spacing", "30 in"),
        ("rate", "--rate", "32000/acre", "--row-spacing", "30 lb"),
        ("rate", "--rate", "32000/acre", "--row-spacing", "0 in"),
        ("rate", "--rate", "32000/acre\nnext line", "--row-spacing", "30 in"),
        ("nonsense",),
    ],
)
def test_a_bad_argument_is_one_line_and_status_two(
    capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...]
) -> None:
    with pytest.raises(SystemExit) as ended:
        raise SystemExit(main(arguments))
    written = capsys.readouterr()
    assert ended.value.code == 2
    assert written.out == ""
    assert written.err.startswith("changeover")
    assert written.err.endswith(".\n")
    assert written.err.count("\n") == 1


@pytest.mark.parametrize("rate", ["-32000/acre", "-.5/acre", "32.000/acre", "9000000 seeds/acre"])
def test_a_negative_or_absurd_rate_is_refused_in_seeds(
    rate: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["rate", "--rate", rate, "--row-spacing", "30 in"]) == 2
    said = capsys.readouterr().err
    assert "Seed rate" in said
    assert said.endswith(" seeds/ac.\n")
