"""Editing what the user has: planters, settings, lots, fields, jobs, parts, shelf, meters."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from changeover.desk import edit_plans
from changeover.desk.changed import Changed
from changeover.desk.edits import (
    Put,
    PutField,
    PutJob,
    PutLot,
    PutManual,
    PutMeters,
    PutPart,
    PutPlanter,
    PutSettings,
    PutTime,
    SetShelf,
)
from changeover.desk.effects import Effect
from changeover.desk.parts_in_use import refuse_part_in_use
from changeover.desk.shop_edits import PutAppraisal, PutPhoto, PutPrices, PutWearLimit
from changeover.planter.machine import Planter
from changeover.quantities import Refusal
from changeover.seed.lots import SeedLot
from changeover.store.shelf_of_values import Values
from changeover.store.unit_of_work import UnitOfWork
from changeover.store.values import NextJob, Side

_Write = Callable[[UnitOfWork, Any], None]


def carry(work: UnitOfWork, edit: Put[Any]) -> Effect:
    """Put a value in the store; the inverse puts the old one back. Raises Refusal, Conflict."""
    changed, write = _WRITE[type(edit)]
    write(work, edit)
    inverse: Any = replace(edit, value=edit.before, before=edit.value)
    return Effect(changed, inverse)


def _planter(work: UnitOfWork, edit: PutPlanter) -> None:
    work.planters.put(edit.value, edit.before)
    if edit.value is not None and edit.before is not None:
        _refuse_orphans(work, edit.value)
        if edit.value.name != edit.before.name:
            _rename_everywhere(work, edit.before.name, edit.value.name)


def _refuse_orphans(work: UnitOfWork, planter: Planter) -> None:
    """Refuse to take away a row or a group that still has something set."""
    settings = {setting.key: setting for setting in work.settings.all()}
    for side in Side:
        for cell in work.cells.read(planter.name, side).cells():
            setting = settings.get(cell.setting)
            if setting is not None and cell.place not in planter.places(setting.scope):
                raise Refusal(
                    f"{cell.place.label.capitalize()} would go, but {setting.name} is still "
                    f"entered there ({side.value}); empty it first."
                )


def _rename_everywhere(work: UnitOfWork, old: str, new: str) -> None:
    """Let what names a planter follow its new name."""
    for kept in (work.meters, work.jobs, work.manual, work.appraisals, work.photos):
        _rename_in(kept, old, new)
    edit_plans.rename_planter(work, old, new)


def _rename_in(kept: Values[Any], old: str, new: str) -> None:
    for value in kept.all():
        if value.planter == old:
            kept.put(replace(value, planter=new), value)


def _settings(work: UnitOfWork, edit: PutSettings) -> None:
    work.settings.put(edit.value or (), edit.before or ())


def _lot(work: UnitOfWork, edit: PutLot) -> None:
    if edit.before is not None and (edit.value is None or edit.value.number != edit.before.number):
        _refuse_lot_in_use(work, edit.before)
    work.lots.put(edit.value, edit.before)


def _refuse_lot_in_use(work: UnitOfWork, lot: SeedLot) -> None:
    for name in work.planters.names():
        switch = work.switches.open(name)
        chosen = switch is not None and lot.number in _lots_of(switch.job)
        sides = [work.cells.read(name, side) for side in Side]
        held = any(
            cell.setting == "seed" and value == lot.number
            for setup in sides
            for cell, value in setup.values.items()
        )
        if chosen or held:
            where = "is chosen next on" if chosen else "is in"
            raise Refusal(f"Lot {lot.number} {where} {name}; its number must stay until then.")


def _lots_of(job: NextJob) -> tuple[str, ...]:
    return (job.lot, *(number for _, number in job.other_lots))


def _field(work: UnitOfWork, edit: PutField) -> None:
    if edit.before is not None and (edit.value is None or edit.value.name != edit.before.name):
        _refuse_field_in_use(work, edit.before.name)
    work.fields.put(edit.value, edit.before)


def _refuse_field_in_use(work: UnitOfWork, field: str) -> None:
    for name in work.planters.names():
        switch = work.switches.open(name)
        if switch is not None and switch.job.field == field:
            raise Refusal(f"Field {field} comes next on {name}; choose another there first.")
    for job in work.jobs.all():
        if job.field == field:
            raise Refusal(f"Field {field} is in the job {job.name}; change the job first.")


def _job(work: UnitOfWork, edit: PutJob) -> None:
    if edit.value is not None:
        work.lots.get(edit.value.lot)
        if edit.value.field is not None:
            work.fields.get(edit.value.field)
    work.jobs.put(edit.value, edit.before)


def _part(work: UnitOfWork, edit: PutPart) -> None:
    if edit.before is not None and (edit.value is None or edit.value.code != edit.before.code):
        refuse_part_in_use(work, edit.before.code)
    work.parts.put(edit.value, edit.before)


def _shelf(work: UnitOfWork, edit: SetShelf) -> None:
    if edit.value is not None:
        work.parts.get(edit.value.part)
    work.shelf.put(edit.value, edit.before)


def _meters(work: UnitOfWork, edit: PutMeters) -> None:
    new = {meter.serial: meter for meter in edit.value or ()}
    old = {meter.serial: meter for meter in edit.before or ()}
    for serial in {**old, **new}:
        work.meters.put(new.get(serial), old.get(serial))
    _refuse_two_on_one_row(work)


def _refuse_two_on_one_row(work: UnitOfWork) -> None:
    there: dict[tuple[str, int], str] = {}
    for meter in work.meters.all():
        if meter.planter is None or meter.row is None:
            continue
        other = there.setdefault((meter.planter, meter.row), meter.serial)
        if other != meter.serial:
            raise Refusal(
                f"Row {meter.row} of {meter.planter} has meter {other} already; take it off first."
            )


def _appraisal(work: UnitOfWork, edit: PutAppraisal) -> None:
    new, old = edit.value, edit.before
    if new is not None:
        work.planters.get(new.planter)
        if new.prices:
            work.prices.get(new.prices)
    named = new is not None and old is not None and new.name == old.name
    if old is not None and not named and work.photos.notes(old.planter, old.name):
        raise Refusal(f"The appraisal {old.name} has photos; take them off first.")
    work.appraisals.put(new, old)


def _photo(work: UnitOfWork, edit: PutPhoto) -> None:
    if edit.value is not None:
        work.appraisals.get(edit.value.planter, edit.value.appraisal)
    work.photos.put(edit.value, edit.before)


def _prices(work: UnitOfWork, edit: PutPrices) -> None:
    old, new = edit.before, edit.value
    if old is not None and (new is None or new.name != old.name):
        for one in work.appraisals.all():
            if one.prices == old.name:
                raise Refusal(
                    f"The price list {old.name} is used in the appraisal {one.name} of "
                    f"{one.planter}; choose another list there first."
                )
    work.prices.put(new, old)


_WRITE: Mapping[type, tuple[frozenset[Changed], _Write]] = {
    PutPlanter: (
        frozenset({Changed.PLANTERS, Changed.METERS, Changed.JOBS, Changed.MANUAL}),
        _planter,
    ),
    PutSettings: (frozenset({Changed.SETTINGS}), _settings),
    PutLot: (frozenset({Changed.LOTS}), _lot),
    PutField: (frozenset({Changed.FIELDS}), _field),
    PutJob: (frozenset({Changed.JOBS}), _job),
    PutPart: (frozenset({Changed.PARTS}), _part),
    SetShelf: (frozenset({Changed.SHELF}), _shelf),
    PutManual: (frozenset({Changed.MANUAL}), lambda work, e: work.manual.put(e.value, e.before)),
    PutTime: (frozenset({Changed.TIMES}), lambda work, e: work.times.put(e.value, e.before)),
    PutMeters: (frozenset({Changed.METERS}), _meters),
    PutPrices: (frozenset({Changed.PRICES}), _prices),
    PutWearLimit: (
        frozenset({Changed.WEAR_LIMITS}),
        lambda work, e: work.wear_limits.put(e.value, e.before),
    ),
    PutAppraisal: (frozenset({Changed.APPRAISALS}), _appraisal),
    PutPhoto: (frozenset({Changed.APPRAISALS}), _photo),
    **edit_plans.WRITE,
}
