"""The crop table: every figure has unit, source and trust, and a bad file is refused by name."""

import pytest

from changeover.quantities import Q, Refusal, Units
from changeover.seed.crops import KINDS, read_crops
from changeover.seed.fields import Moisture, Texture, Tillage
from changeover.seed.reasons import Trust
from tests.seed.made_up import crop_table

FIGURE = """
key = "oats"
name = "Oats"
[[figure]]
what = "depth"
{values}
source = "{source}"
trust = "{trust}"
"""


def oats(
    values: str = 'typical = 1.0\nunit = "in"', source: str = "x", trust: str = "published"
) -> dict[str, str]:
    return {"oats.toml": FIGURE.format(values=values, source=source, trust=trust)}


def test_the_crops_asked_for_are_there() -> None:
    wanted = {"corn", "popcorn", "sweet_corn", "soybean", "sorghum", "sunflower", "sugar_beet"}
    wanted |= {"cotton", "field_pea", "canola", "dry_bean_kidney", "dry_bean_pinto"}
    wanted |= {"dry_bean_great_northern", "dry_bean_pink", "dry_bean_navy"}
    assert wanted <= set(crop_table())


def test_every_figure_says_who() -> None:
    for crop in crop_table().values():
        for figure in crop.figures:
            assert figure.source, f"{crop.key}: {figure.what}"
            assert figure.trust in Trust
            assert figure.text(Units.US)
            assert figure.text(Units.METRIC)


def test_figures_marked_as_remembered_name_no_print() -> None:
    for crop in crop_table().values():
        for figure in crop.figures:
            assert (figure.trust is Trust.MEMORY) == (figure.source == "from memory"), crop.key


def test_every_range_rises() -> None:
    for crop in crop_table().values():
        for figure in crop.figures:
            ends = [one for one in (figure.low, figure.typical, figure.high) if one is not None]
            assert ends == sorted(ends), f"{crop.key}: {figure.what}"


def test_every_crop_has_depth_temperature_and_seed_count() -> None:
    for crop in crop_table().values():
        assert crop.best("depth"), crop.key
        assert crop.best("least_soil_temperature"), crop.key
        assert crop.best("seeds_per_mass") or crop.best("thousand_seed_mass"), crop.key


def test_a_class_shares_the_figures_of_its_kind() -> None:
    pinto = crop_table()["dry_bean_pinto"]
    assert pinto.keys == {"dry_bean_pinto", "dry_bean"}
    assert pinto.best("depth") == crop_table()["dry_bean_navy"].best("depth")
    assert pinto.best("seeds_per_mass") != crop_table()["dry_bean_navy"].best("seeds_per_mass")


def test_print_comes_before_memory() -> None:
    trusts = [figure.trust for figure in crop_table()["sorghum"].of("depth")]
    assert trusts[0] is Trust.PUBLISHED
    assert trusts[-1] is Trust.MEMORY


def test_vacuum_comes_from_the_table_of_optima() -> None:
    levels = [figure.middle.to("kPa").magnitude for figure in crop_table()["soybean"].of("vacuum")]
    assert sorted(levels) == [3.0, 6.0]


def test_the_middle_is_typical_or_half_way() -> None:
    crop = read_crops(oats('low = 1.0\nhigh = 2.0\nunit = "in"'))["oats"]
    assert crop.of("depth")[0].middle == Q(1.5, "in")
    assert crop.of("depth")[0].text(Units.US) == "1.00 to 2.00 in"


def test_one_end_alone_is_at_least_or_at_most() -> None:
    low = read_crops(oats('low = 1.0\nunit = "in"'))["oats"].of("depth")[0]
    assert low.text(Units.US) == "at least 1.00 in"
    high = read_crops(oats('high = 1.0\nunit = "in"'))["oats"].of("depth")[0]
    assert high.text(Units.US) == "at most 1.00 in"
    assert high.middle == Q(1.0, "in")


def test_a_figure_may_hold_for_one_soil_only() -> None:
    text = oats()["oats.toml"] + 'when = { moisture = ["dry"], texture = ["sand", "clay"] }'
    when = read_crops({"oats.toml": text})["oats"].of("depth")[0].when
    assert when.narrowness == 2
    assert when.fits(Moisture.DRY, Texture.CLAY, Tillage.TILLED)
    assert not when.fits(Moisture.WET, Texture.CLAY, Tillage.TILLED)
    assert not when.fits(Moisture.DRY, Texture.LOAM, Tillage.TILLED)


@pytest.mark.parametrize(
    ("files", "says"),
    [
        ({"oats.toml": "key ="}, "oats.toml is not a readable text table"),
        (oats(values='unit = "in"'), "give at least one of low, typical and high"),
        (oats(values="typical = 1.0"), "is not a figure with a unit"),
        (oats(values='typical = 1.0\nunit = "furlongs"'), "is not a figure with a unit"),
        (oats(source=""), "give a source and a trust"),
        (oats(trust="hearsay"), "give a source and a trust"),
        ({"oats.toml": 'key = "oats"'}, "a crop needs a key and a name"),
        (
            {"oats.toml": oats()["oats.toml"].replace("depth", "taste")},
            "this sort of figure is not known",
        ),
        (
            {"oats.toml": oats()["oats.toml"] + 'when = { moisture = ["damp"] }'},
            "use the words of the field page",
        ),
        (
            {"a.toml": oats()["oats.toml"], "b.toml": oats()["oats.toml"]},
            "b.toml: the crop “oats” is there twice",
        ),
    ],
)
def test_a_bad_file_is_refused_by_name(files: dict[str, str], says: str) -> None:
    with pytest.raises(Refusal, match=says.replace("(", r"\(")):
        read_crops(files)


def test_every_sort_of_figure_has_a_measure() -> None:
    assert all(KINDS.values())
