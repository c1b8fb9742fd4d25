"""What a person types becomes a value, or one sentence."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.drive import GroundDrive
from changeover.planter.entry import check_value, options_of, read_value, same_value, show_value
from changeover.planter.groups import equal_groups
from changeover.planter.machine import Planter
from changeover.planter.places import PLANTER, Place, Scope
from changeover.planter.settings import STANDARD, Kind, Setting, WorkPlace, standard
from changeover.planter.setup import Value
from changeover.quantities import NARROW_SPACE, Q, Refusal, Units

ROW = Place.of_row(3)
FAN = Place(Scope.FAN, "fan 1")
DRIVE = Place(Scope.DRIVE, "drive 1")
ONE = Planter(
    "One",
    12,
    Q(30, "in"),
    groups=equal_groups(Scope.FAN, 1, 12) + equal_groups(Scope.DRIVE, 1, 12),
    drives={"drive 1": GroundDrive((15, 20), (24,), Q(90, "in"), 0.5)},
    fan_limit=Q(25, "inH2O"),
)


def read(key: str, text: str, place: Place = ROW, units: Units = Units.US) -> Value | None:
    return read_value(standard(key), ONE, place, text, units)


@pytest.mark.parametrize(
    ("key", "text", "value"),
    [
        ("depth", "1 3/4", 6),
        ("depth", "1.75 in", 6),
        ("depth", "n6", 6),
        ("depth", "notch 6", 6),
        ("singulator", "OPEN", 4),
        ("closing", "float", 1),
        ("disc", "C30", "C30"),
        ("cells", "30", 30),
        ("row_lock", "Locked UP", "locked up"),
        ("disc", "  ", None),
    ],
)
def test_a_typed_text_becomes_a_value(key: str, text: str, value: object) -> None:
    assert read(key, text) == value


def test_a_depth_is_read_and_shown_through_the_rows_own_line() -> None:
    scale = ONE.depth.with_row(3, Q(0.5, "in"), Q(0.2, "in"))
    machine, depth = replace(ONE, depth=scale), standard("depth")
    assert read_value(depth, machine, ROW, "1.8 in") == 5
    assert show_value(depth, machine, ROW, 5, Units.US, sign=True) == "1.80 in"
    assert show_value(depth, machine, Place.of_row(4), 5, Units.US, sign=True) == "1.50 in"


def test_a_figure_without_a_unit_takes_the_one_on_the_screen() -> None:
    assert read("vacuum", "3", FAN, Units.METRIC) == Q(3, "kPa")
    assert read("depth", "44", units=Units.METRIC) == read("depth", "1.75")


@pytest.mark.parametrize(
    ("key", "text", "place", "sentence"),
    [
        ("vacuum", "26", FAN, "above the fan limit of 25.0 inH₂O"),
        ("vacuum", "-1", FAN, "outside 0 to 80 inH₂O;"),
        ("depth", "notch x", ROW, "“notch x” is no notch"),
        ("hub_spacing", "9 in", ROW, "outside -0.197 to 0.984 in;"),
        ("depth", "9 in", ROW, "cannot plant 9.00 in"),
        ("depth", "n99", ROW, "there are 1 to 13"),
        ("singulator", "2/3", ROW, "choose 1/4, 1/2, 3/4 or open"),
        ("cells", "many", ROW, "not a whole number"),
        ("cells", "0", ROW, "1 to 400"),
        ("row_lock", "sideways", ROW, "choose down or locked up"),
        ("sprockets", "99/9", DRIVE, "choose 15/24 or 20/24"),
        ("seed_rate", "-5/acre", DRIVE, "outside 1"),
    ],
)
def test_what_cannot_be_is_refused_with_the_place(
    key: str, text: str, place: Place, sentence: str
) -> None:
    with pytest.raises(Refusal, match=sentence) as refused:
        read(key, text, place)
    assert str(refused.value).startswith(("Row 3", standard(key).name))


@given(notch=st.integers(1, 13), units=st.sampled_from(list(Units)))
def test_a_shown_depth_reads_back_as_the_same_notch(notch: int, units: Units) -> None:
    depth = standard("depth")
    shown = show_value(depth, ONE, ROW, notch, units, sign=True)
    assert read_value(depth, ONE, ROW, shown, units) == notch


def test_every_kind_of_value_is_shown() -> None:
    shown = [
        show_value(standard(key), ONE, ROW, value, Units.US)
        for key, value in [
            ("closing", 1),
            ("vacuum", Q(12, "inH2O")),
            ("disc", "S56"),
            ("seed", None),
        ]
    ]
    assert shown == ["float", "12.0", "S56", ""]


def test_a_users_own_index_has_its_own_positions() -> None:
    cleaner = Setting(
        "cleaner",
        "Row cleaner",
        Kind.INDEX,
        Scope.ROW,
        WorkPlace.ROW_UNIT,
        options=("up", "1", "2"),
        own=True,
    )
    assert options_of(cleaner, ONE, ROW) == ("up", "1", "2")
    assert read_value(cleaner, ONE, ROW, "2") == 3
    with pytest.raises(Refusal, match="there are 1 to 3"):
        check_value(cleaner, ONE, ROW, 4)


@given(value=st.floats(0.1, 79))
def test_a_value_is_the_same_after_a_change_of_units(value: float) -> None:
    vacuum = standard("vacuum")
    assert same_value(vacuum, Q(value, "inH2O"), Q(value, "inH2O").to("kPa"))
    assert not same_value(vacuum, Q(value, "inH2O"), Q(value + 0.1, "inH2O"))
    assert not same_value(vacuum, None, Q(value, "inH2O"))


@pytest.mark.parametrize(
    "bad",
    [
        {"name": ""},
        {"kind": Kind.QUANTITY},
        {"kind": Kind.CHOICE},
        {"kind": Kind.INDEX},
        {"kind": Kind.PART},
    ],
)
def test_an_own_setting_needs_what_its_kind_asks_for(bad: dict) -> None:
    whole = {"key": "x", "name": "X", "kind": Kind.COUNT, "scope": Scope.ROW, "own": True}
    with pytest.raises(Refusal):
        Setting(**{**whole, "work_place": WorkPlace.ROW_UNIT, **bad})


@pytest.mark.parametrize(
    ("key", "place", "value"),
    [("vacuum", FAN, "ten"), ("vacuum", FAN, 7), ("vacuum", FAN, Q(5, "lb")), ("depth", ROW, "5"),
     ("disc", ROW, Q(5, "in"))],
)  # fmt: skip
def test_a_value_of_another_kind_is_refused(key: str, place: Place, value: Value) -> None:
    with pytest.raises(Refusal, match="is not a"):
        check_value(standard(key), ONE, place, value)


def test_a_pasted_page_is_no_code_of_a_part() -> None:
    with pytest.raises(Refusal, match="Disc, row 3 has a name of 5000 characters"):
        read("disc", "a" * 5000)


def test_standard_keys_and_names_are_their_own() -> None:
    assert len({setting.key for setting in STANDARD}) == len(STANDARD)
    assert standard("vacuum").scope is Scope.FAN
    assert PLANTER.label == "planter"


@given(st.floats(-4.9, 24.9))
def test_a_difference_that_no_screen_can_show_is_none(shift: float) -> None:
    hub = standard("hub_spacing")
    one = Q(shift, "mm")
    assert same_value(hub, one, Q(shift + 0.012, "mm").to("in"))
    assert not same_value(hub, one, Q(shift + 0.1, "mm"))
    shown = read_value(hub, ONE, ROW, show_value(hub, ONE, ROW, one, Units.US), Units.US)
    assert same_value(hub, one, shown)


@pytest.mark.parametrize("text", ["5 seeds/ha", "2", "99 /acre", "6e6"])
def test_a_seed_rate_beyond_what_is_sown_is_refused(text: str) -> None:
    with pytest.raises(
        Refusal, match=f"outside 100 to 5{NARROW_SPACE}000{NARROW_SPACE}000 seeds/ac"
    ):
        read("seed_rate", text, Place(Scope.DRIVE, "drive 1"))


@pytest.mark.parametrize(
    ("key", "text", "place", "sentence"),
    [
        ("vacuum", "7", FAN, "above the fan limit of 6.23 kPa;"),
        ("vacuum", "-1", FAN, "outside 0 to 19.93 kPa;"),
        ("hub_spacing", "99", ROW, "outside -5 to 25 mm;"),
        ("depth", "300", ROW, "cannot plant 300 mm deep: its 13 notches reach 13 to 89 mm"),
    ],
)
def test_a_refusal_has_its_figures_in_the_units_on_the_screen(
    key: str, text: str, place: Place, sentence: str
) -> None:
    with pytest.raises(Refusal, match=sentence):
        read(key, text, place, Units.METRIC)
