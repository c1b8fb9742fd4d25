"""``changeover season`` plans all jobs, never worse than the simple orders, and refuses by name."""

import pytest

from changeover.__main__ import main
from tests.commands.conftest import Answer

ASK = ("--from", "2026-05-04", "--seconds", "3")


def test_every_job_is_planned_once_from_the_first_day_on(store: str, answer: Answer) -> None:
    answered = answer("season", store, *ASK)
    jobs = answered["plan"]["jobs"]
    assert len({one["job"] for one in jobs}) == len(jobs) >= 4
    assert all(one["first_day"] <= one["last_day"] for one in jobs)
    assert all(one["first_day"] >= "2026-05-04" for one in jobs)


def test_the_plan_is_no_worse_than_the_simple_orders_nor_better_than_its_bound(
    store: str, answer: Answer
) -> None:
    answered = answer("season", store, *ASK)

    def cost(key: str) -> tuple[float, int]:
        order = answered[key]
        return order["late_cost"], order["switch"]["value"] + order["move"]["value"]

    assert cost("plan") <= min(cost("as_entered"), cost("nearest_due"))
    assert answered["late_bound"] <= cost("plan")[0]
    assert answered["between_bound"]["value"] <= cost("plan")[1]


def test_each_switch_says_what_it_costs(store: str, answer: Answer) -> None:
    answered = answer("season", store, *ASK, "--units", "metric")
    switched = {one["job"] for one in answered["plan"]["jobs"] if one["switch"]["value"]}
    assert {one["before"] for one in answered["switches"]} == switched
    assert all(one["area"]["unit"] == "hectare" for one in answered["switches"])


def test_text_for_people(store: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["season", store, *ASK]) == 0
    out = capsys.readouterr().out
    assert out.startswith("Best found")
    assert "Proved" in out
    assert "could be planted meanwhile" in out


@pytest.mark.parametrize(
    ("more", "words"),
    [
        (("--from", "soon"), "not a day"),
        (("--from", "2026-12-01"), "ended on"),
        (("--seconds", "-1"), "over 0 to 86400 seconds"),
    ],
)
def test_what_cannot_be_is_refused_in_one_line(
    store: str, capsys: pytest.CaptureFixture[str], more: tuple[str, ...], words: str
) -> None:
    assert main(["season", store, *ASK, *more]) == 2
    err = capsys.readouterr().err
    assert err.count("\n") == 1
    assert words in err
