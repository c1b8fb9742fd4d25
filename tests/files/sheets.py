"""Sheets for the tests of files: one of a real switch, one with hostile text."""

from dataclasses import replace
from datetime import date

from changeover.files.filling import fill_sheet
from changeover.files.sheet import WorklistSheet
from changeover.planter.parts import Condition, Part, ShelfCount
from changeover.planter.places import Place
from changeover.quantities import Units
from changeover.switch.kit import kit
from changeover.switch.progress import progress
from changeover.switch.tasks import Tick
from tests.switch.switch_case import BEAN, LONG_ACRE, SETTINGS, bean, corn, plan

PARTS = (Part("S56", "soybean disc", "disc", cells=56), Part("low", "low brush", "brush"))
SHELF = (
    ShelfCount("S56", Condition.GOOD, 24, "bin 3"),
    ShelfCount("low", Condition.NEW, 23),
    ShelfCount("low", Condition.INSPECT, 7),
)


def switch_sheet(units: Units = Units.US) -> WorklistSheet:
    """Return the sheet of corn to soybean on 24 rows, one row's closing done."""
    before, target = corn(LONG_ACRE), bean(LONG_ACRE)
    work = plan(LONG_ACRE, before, target, BEAN, units=units)
    one = {c: v for c, v in target.values.items() if c.place == Place.of_row(1)}
    made = [Tick("safe_stopped", place, "Ana", "") for place in work.task("safe_stopped").places]
    return fill_sheet(
        planter=LONG_ACRE,
        settings=SETTINGS,
        worklist=work,
        done=progress(work, made, before.with_values(one), SETTINGS),
        kit=kit(work, PARTS, SHELF),
        parts=PARTS,
        before=before,
        target=target,
        now="corn, Hill Nine",
        next_lot="soybean lot S-114",
        field="West Bottom",
        made_on=date(2026, 11, 25),
        units=units,
    )


def hostile_sheet(text: str) -> WorklistSheet:
    """Return a sheet in which a text stands wherever people can type one."""
    sheet = switch_sheet()
    tasks = tuple(replace(task, title=text, steps=(text,)) for task in sheet.tasks[:3])
    kit_lines = tuple(replace(line, part=text, name=text, bins=text) for line in sheet.kit)
    settings = tuple(replace(s, setting=text, before=text, after=text) for s in sheet.settings[:3])
    return replace(
        sheet,
        planter=text,
        field=text,
        now=text,
        next=text,
        tasks=tasks,
        kit=kit_lines,
        settings=settings,
    )
