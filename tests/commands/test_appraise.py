"""``changeover appraise`` reckons a trade-in from the store's inspection and a price list."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from changeover.__main__ import main
from changeover.desk.opening import open_store
from tests.desk.trade_in import MAGPIE, PENNY, inspect, price_file

Answer = Callable[..., dict[str, Any]]


@pytest.fixture
def worn(store: str) -> str:
    opened = open_store(store)
    inspect(opened, PENNY, 3, 7, 11, extra=True)
    inspect(opened, MAGPIE, 2)
    opened.close()
    return store


def appraise(worn: str, tmp_path: Path, *more: str) -> tuple[str, ...]:
    prices = str(price_file(tmp_path))
    return ("appraise", worn, "--planter", PENNY, "--prices", prices, "--on", "2026-03-10", *more)


def test_sums_rows_and_what_has_no_price(worn: str, tmp_path: Path, answer: Answer) -> None:
    found = answer(*appraise(worn, tmp_path))
    assert found["inspected"] == "2026-03-01"
    assert found["totals"] == [
        {
            "currency": "USD",
            "parts": "401.20",
            "labour": "142.50",
            "tax": "38.06",
            "total": "581.76",
        }
    ]
    assert found["unpriced"] == ["labour for wiper", "wiper"]
    assert not found["complete"]
    assert [one["condition"] for one in found["rows"][:3]] == ["good", "good", "replace"]


def test_prices_are_stated_as_they_were_given(worn: str, tmp_path: Path, answer: Answer) -> None:
    prices = answer(*appraise(worn, tmp_path))["prices"]
    assert prices == {
        "name": "shop",
        "on": "2026-03-10",
        "currencies": ["USD"],
        "tax": "7.00",
        "labour": "90",
    }


def test_the_report_is_written_on_both_papers(worn: str, tmp_path: Path, answer: Answer) -> None:
    out = tmp_path / "new"
    values = ("--as-found", "40000", "--reconditioned", "45000", "--out", str(out))
    found = answer(*appraise(worn, tmp_path, *values))
    assert [Path(one).name[-7:] for one in found["files"]] == ["-a4.pdf", "ter.pdf"]
    assert all(Path(one).stat().st_size > 1000 for one in found["files"])
    assert found["as_found"] == {"amount": "40000", "currency": "USD"}


def test_two_planters_side_by_side(worn: str, tmp_path: Path, answer: Answer) -> None:
    beside = answer(*appraise(worn, tmp_path, "--beside", MAGPIE))["beside"]
    assert beside["planters"] == [PENNY, MAGPIE]
    assert beside["rows"]["replace"] == [4, 1]
    assert beside["totals"] == {"USD": ["581.76", "171.41"]}
    assert not beside["fair"]


def test_text_for_people(worn: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([*appraise(worn, tmp_path, "--beside", MAGPIE)]) == 0
    text = capsys.readouterr().out
    for words in ("2 × D-15", "Sum with tax", "No price for wiper", "Tax: 7 %", "171.41 USD"):
        assert words in text


@pytest.mark.parametrize(
    ("more", "sentence"),
    [
        (("--as-found", "lots"), "--as-found “lots” is not an amount"),
        (("--on", "March"), "is not a day"),
        (("--planter", "Nobody"), "Nobody"),
        (("--prices", "none.csv"), "none.csv"),
    ],
)
def test_what_cannot_be_is_said_in_one_line(
    worn: str,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    more: tuple[str, ...],
    sentence: str,
) -> None:
    assert main([*appraise(worn, tmp_path), *more]) == 2
    error = capsys.readouterr().err
    assert sentence in error
    assert error.count("\n") == 1


def test_without_an_inspection_nothing_is_reckoned(
    store: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([*appraise(store, tmp_path)]) == 2
    assert "has no wear inspection" in capsys.readouterr().err
