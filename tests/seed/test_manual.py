"""Manual values and proved setups: which one is followed, and which never is."""

from datetime import date

import pytest

from changeover.quantities import Q, Refusal
from changeover.seed.manual import ManualValue, ProvedSetup, manual_value, proved_setup, same_size

SOY = frozenset({"soybean"})
ALL = ManualValue("soybean", "vacuum", Q(12, "inH2O"))
HERE = ManualValue("soybean", "vacuum", Q(13, "inH2O"), planter="Made-up")
DISC = ManualValue("soybean", "vacuum", Q(14, "inH2O"), part="S56")
BOTH = ManualValue("soybean", "vacuum", Q(15, "inH2O"), planter="Made-up", part="S56")


@pytest.mark.parametrize(
    ("values", "wanted"),
    [
        ((ALL, HERE), HERE),
        ((HERE, DISC, ALL), DISC),
        ((BOTH, DISC, HERE, ALL), BOTH),
        ((), None),
        ((ManualValue("corn", "vacuum", 1),), None),
        ((ManualValue("soybean", "depth", 1),), None),
        ((ManualValue("soybean", "vacuum", 1, planter="Other"),), None),
        ((ManualValue("soybean", "vacuum", 1, part="C30"),), None),
    ],
)
def test_the_closest_manual_value_is_found(
    values: tuple[ManualValue, ...], wanted: ManualValue | None
) -> None:
    assert manual_value(values, SOY, "vacuum", "Made-up", "S56") is wanted


def test_of_two_as_close_the_later_wins() -> None:
    again = ManualValue("soybean", "vacuum", Q(11, "inH2O"))
    assert manual_value((ALL, again), SOY, "vacuum", "Made-up", None) is again


def test_a_value_for_the_kind_holds_for_its_classes() -> None:
    value = ManualValue("dry_bean", "vacuum", Q(12, "inH2O"))
    keys = frozenset({"dry_bean_pinto", "dry_bean"})
    assert manual_value((value,), keys, "vacuum", "Made-up", None) is value


def test_a_manual_value_needs_crop_and_setting() -> None:
    with pytest.raises(Refusal, match="needs a crop and a setting"):
        ManualValue(" ", "vacuum", 1)


def record(name: str, **changes: object) -> ProvedSetup:
    given = {"name": name, "crop": "soybean", "disc": "S56", "planter": "Made-up"}
    given |= {"values": {"vacuum": Q(14, "inH2O"), "singulator": 4}, "day": date(2025, 5, 1)}
    return ProvedSetup(**{**given, **changes})  # type: ignore[arg-type]


def found(
    records: list[ProvedSetup], setting: str = "vacuum", size: float | None = None
) -> str | None:
    diameter = None if size is None else Q(size, "mm")
    one = proved_setup(records, "soybean", setting, "Made-up", "S56", diameter)
    return one.name if one else None


def test_the_newest_record_is_followed() -> None:
    assert found([record("new", day=date(2026, 5, 1)), record("old")]) == "new"


def test_this_planter_comes_before_a_newer_record_of_another() -> None:
    other = record("other", planter="Other", day=date(2026, 5, 1))
    assert found([record("here"), other]) == "here"


def test_a_position_is_not_carried_over_from_another_planter() -> None:
    other = record("other", planter="Other")
    assert found([other], "singulator") is None
    assert found([other], "vacuum") == "other"


@pytest.mark.parametrize("changes", [{"crop": "corn"}, {"disc": "C30"}, {"values": {}}])
def test_another_crop_disc_or_setting_is_not_followed(changes: dict[str, object]) -> None:
    assert found([record("other", **changes)]) is None


def test_seed_of_another_size_is_not_followed() -> None:
    measured = record("measured", seed_diameter=Q(6.5, "mm"))
    assert found([measured], size=6.6) == "measured"
    assert found([measured], size=7.5) is None
    assert found([measured]) is None


def test_one_size_is_within_a_sixty_fourth_of_an_inch() -> None:
    assert same_size(Q(6.0, "mm"), Q(6.39, "mm"))
    assert not same_size(Q(6.0, "mm"), Q(6.41, "mm"))
    assert same_size(None, None)
    assert not same_size(None, Q(6.0, "mm"))
