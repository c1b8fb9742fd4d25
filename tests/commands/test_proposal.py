"""``changeover proposal`` gives each setting with its reason, for lots by number or name."""

from collections.abc import Callable
from typing import Any

import pytest

from changeover.__main__ import main
from changeover.commands.job_arguments import lot_number
from changeover.quantities import Q, Refusal
from changeover.seed.lots import SeedLot

Answer = Callable[..., dict[str, Any]]

JOB = ("--planter", "Penny Twelve", "--lot", "Y-208", "--field", "Otter Flat")


def of(answered: dict[str, Any], setting: str) -> list[dict[str, Any]]:
    return [one for one in answered["settings"] if one["setting"] == setting]


def test_no_value_without_a_reason(store: str, answer: Answer) -> None:
    answered = answer("proposal", store, *JOB)
    assert len(of(answered, "depth")) == 12
    for one in [*answered["settings"], *answered["figures"]]:
        reason = one["reason"]
        assert all(reason[key] for key in ("rule", "why", "source", "trust")), one


def test_each_of_the_seven_is_there(store: str, answer: Answer) -> None:
    answered = answer("proposal", store, *JOB)
    seven = ("disc", "brush", "singulator", "hub_spacing", "vacuum", "depth", "closing")
    assert all(of(answered, key) for key in seven)
    (vacuum,) = of(answered, "vacuum")
    assert vacuum["value"]["unit"] == "inH2O"
    assert vacuum["text"] == f"{vacuum['value']['value']:.1f} inH₂O"


def test_a_lot_by_name_in_metric(store: str, answer: Answer) -> None:
    by_name = ("--planter", "Penny Twelve", "--lot", "plain tale 2", "--units", "metric")
    answered = answer("proposal", store, *by_name)
    assert (answered["lot"], answered["field"]) == ("Y-208", None)
    assert of(answered, "vacuum")[0]["value"]["unit"] == "kPa"


def test_the_rate_that_is_given_is_taken(store: str, answer: Answer) -> None:
    answered = answer("proposal", store, *JOB, "--rate", "120 000/acre")
    rates = [one["value"]["value"] for one in of(answered, "seed_rate")]
    assert rates == [pytest.approx(120_000)]


def test_rows_with_their_own_hoppers_may_take_another_lot(store: str, answer: Answer) -> None:
    answered = answer("proposal", store, *JOB, "--other-lot", "rows 1-6=M-44")
    for key in ("seed", "disc", "singulator"):
        values = [one["value"] for one in of(answered, key)]
        assert len({str(value) for value in values}) == 2, key
        assert len({str(value) for value in values[:6]}) == 1
        assert len({str(value) for value in values[6:]}) == 1


def test_text_for_people(store: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["proposal", store, *JOB]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert any(line.startswith("Disc, rows 1–12: ") for line in lines)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"--planter": "Nobody"}, "planter “Nobody”"),
        ({"--lot": "Z-1"}, "lot “Z-1”"),
        ({"--field": "Nowhere"}, "field “Nowhere”"),
        ({"--speed": "5 lb"}, "“lb” is not a unit of speed"),
        ({"--rate": "1/acre", "--stand": "1/acre"}, "give one of them"),
    ],
)
def test_what_is_not_there_is_said_in_one_line(
    store: str, capsys: pytest.CaptureFixture[str], change: dict[str, str], says: str
) -> None:
    given = dict(zip(JOB[::2], JOB[1::2], strict=True)) | change
    assert main(["proposal", store, *(word for pair in given.items() for word in pair)]) == 2
    written = capsys.readouterr()
    assert written.out == ""
    assert says in written.err
    assert written.err.count("\n") == 1


def test_two_lots_of_one_name_need_a_number() -> None:
    lots = [SeedLot(n, "corn", name="Twin", thousand_seed_mass=Q(300, "g")) for n in ("A", "B")]
    with pytest.raises(Refusal, match="A, B"):
        lot_number("Twin", lots)
    assert lot_number("B", lots) == "B"


def test_the_soil_of_the_day_and_the_need_can_be_given(store: str, answer: Answer) -> None:
    soil = ("--tillage", "no-till", "--moisture", "dry", "--soil-temperature", "60 degF")
    plain, firm = answer("proposal", store, *JOB), answer("proposal", store, *JOB, *soil)
    assert of(firm, "closing")[0]["text"] != of(plain, "closing")[0]["text"]
    more = answer("proposal", store, *JOB, "--overlap", "10 %")
    needed = [
        next(one["value"]["value"] for one in told["figures"] if one["key"] == "seeds_needed")
        for told in (plain, more)
    ]
    assert needed[1] == pytest.approx(1.1 * needed[0])


def test_every_rung_of_the_trust_order_is_told(store: str, answer: Answer, capsys) -> None:
    (vacuum,) = of(answer("proposal", store, *JOB), "vacuum")
    assert len(vacuum["reason"]["evidence"]) == 5
    assert main(["proposal", store, *JOB, "--why"]) == 0
    assert "  → " in capsys.readouterr().out


@pytest.mark.parametrize(
    ("wrong", "words"),
    [
        (("--moisture", "soaked"), "not one of dry, moist, wet"),
        (("--overlap", "120 %"), "overlap must be 0 to 100 %"),
        (("--soil-temperature", "900 degF"), "check the unit"),
        (("--meter-error", "70 %"), "meter error must be -50 to 50 %"),
        (("--other-lot", "tank 9=Y-208"), "the tanks are"),
        (("--other-lot", "row 1=NONE"), "no lot"),
        (("--other-lot", "rows 1-90=Y-208"), "has rows 1 to"),
        (("--other-lot", "rows 1-2=Y-208", "--other-lot", "row 2=Y-208"), "two lots"),
    ],
)
def test_what_cannot_be_is_refused_in_a_line(store: str, capsys, wrong, words: str) -> None:
    assert main(["proposal", store, *JOB, *wrong]) == 2
    assert words in capsys.readouterr().err
