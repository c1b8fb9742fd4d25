"""What a person has: no doubles, no empty names, nothing taken away that is still in use."""

from dataclasses import replace

import pytest

from changeover.desk.edits import PutField, PutJob, PutLot, PutMeters, PutPlanter, SetShelf
from changeover.desk.fields import field, fields, jobs, remove_field, remove_job
from changeover.desk.lots import lot, lots, remove_lot
from changeover.desk.meters import meters, move_meter
from changeover.desk.records import history
from changeover.desk.shelf import parts, set_count, shelf
from changeover.planter.groups import equal_groups
from changeover.planter.parts import Condition, ShelfCount
from changeover.planter.places import Scope
from changeover.quantities import Q, Refusal
from changeover.seed.fields import Field
from changeover.seed.lots import SeedLot

BAR = "Old Fiddle 24"


@pytest.mark.parametrize(
    ("edit", "match"),
    [
        (PutLot(SeedLot("M-41", "corn")), "“M-41” is there already"),
        (PutField(Field("Otter Flat", Q(1.0, "acre"))), "“Otter Flat” is there already"),
        (SetShelf(ShelfCount("none", Condition.GOOD, 3)), "no part “none”"),
    ],
)
def test_doubles_and_unknown_parts_are_refused(do, edit, match) -> None:
    with pytest.raises(Refusal, match=match):
        do(edit)


@pytest.mark.parametrize("name", ["", "   "])
def test_empty_names_are_refused(name) -> None:
    with pytest.raises(Refusal, match="has no name"):
        Field(name, Q(1.0, "acre"))


def test_a_lot_in_a_tank_or_chosen_next_stays(demo, do) -> None:
    for number, where in (("M-41", "is in"), ("Y-208", "is (in|chosen next on)")):
        with pytest.raises(Refusal, match=f"Lot {number} {where} Old Fiddle 24"):
            do(remove_lot(demo, number))


def test_a_lot_nobody_uses_can_go_and_come_back(demo, do) -> None:
    gone = do(remove_lot(demo, "B-22")) if not _in_jobs(demo, "B-22") else None
    assert gone is None or "B-22" not in [one.number for one in lots(demo)]
    added = do(PutLot(SeedLot("Z-1", "corn")))
    assert lot(demo, "Z-1").crop == "corn"
    do(added.inverse)
    assert "Z-1" not in [one.number for one in lots(demo)]


def _in_jobs(store, number: str) -> bool:
    return any(job.lot == number for job in jobs(store))


def test_a_field_in_a_job_stays_until_the_job_goes(demo, do) -> None:
    with pytest.raises(Refusal, match="Field Crow Strip is in the job pinto Crow Strip"):
        do(remove_field(demo, "Crow Strip"))
    do(remove_job(demo, "pinto Crow Strip"))
    do(remove_field(demo, "Crow Strip"))
    assert "Crow Strip" not in [one.name for one in fields(demo)]


def test_a_job_names_a_lot_and_a_field_of_the_store(demo, do) -> None:
    job = jobs(demo)[0]
    with pytest.raises(Refusal, match="no field “Atlantis”"):
        do(PutJob(replace(job, field="Atlantis"), before=job))


def test_a_field_keeps_its_area_in_the_unit_entered(demo, do) -> None:
    do(PutField(Field("New", Q(12.5, "hectare"))))
    assert str(field(demo, "New").area.units) == "hectare"


def test_counting_the_shelf_keeps_the_bin(demo, do) -> None:
    do(set_count(demo, "C30", Condition.GOOD, 7))
    found = next(one for one in shelf(demo) if (one.part, one.condition) == ("C30", "good"))
    assert (found.count, found.bin) == (7, "A1")
    assert "C30" in [part.code for part in parts(demo)]


def test_two_meters_change_places(demo, do) -> None:
    first, second = meters(demo, BAR)[:2]
    do(move_meter(demo, first.serial, BAR, 2))
    assert [one.serial for one in meters(demo, BAR)[:2]] == [second.serial, first.serial]


def test_a_meter_can_go_to_the_bench_and_to_another_planter(demo, do) -> None:
    serial = meters(demo, BAR)[0].serial
    do(move_meter(demo, serial, None, None))
    assert serial not in [one.serial for one in meters(demo, BAR)]
    do(move_meter(demo, serial, "Penny Twelve", 5))
    assert meters(demo, "Penny Twelve")[4].serial == serial


def test_two_meters_on_one_row_are_refused(demo, do) -> None:
    first = meters(demo, BAR)[0]
    with pytest.raises(Refusal, match="Row 2 of Old Fiddle 24 has meter"):
        do(PutMeters((replace(first, row=2),), before=(first,)))


def test_a_row_that_a_planter_does_not_have_is_refused(demo) -> None:
    with pytest.raises(Refusal, match="has no row 25"):
        move_meter(demo, meters(demo, BAR)[0].serial, BAR, 25)


def test_a_group_with_something_set_cannot_be_taken_away(demo, do) -> None:
    with demo.read() as work:
        planter = work.planters.get(BAR)
    kept = tuple(group for group in planter.groups if group.sort is not Scope.FAN)
    fewer = replace(planter, groups=(*kept, *equal_groups(Scope.FAN, 1, 24)))
    with pytest.raises(Refusal, match="Fan 2 would go, but Vacuum is still entered there"):
        do(PutPlanter(fewer, before=planter))


def test_what_names_a_planter_follows_its_new_name_and_so_does_its_history(demo, do) -> None:
    lines = len(history(demo, BAR, 100_000))
    with demo.read() as work:
        planter = work.planters.get(BAR)
    do(PutPlanter(replace(planter, name="New Fiddle"), before=planter))
    assert len(meters(demo, "New Fiddle")) == 24
    assert BAR not in [job.planter for job in jobs(demo)]
    assert len(history(demo, "New Fiddle", 100_000)) > lines
