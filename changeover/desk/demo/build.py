"""Builds the demo store from its text files: ``python -m changeover.desk.demo.build demo.sqlite``.

Everything goes through the one door as a person would do it, at the hours the texts say, so
that the demo's history is a real one and every build has the same content.
"""

import sys
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from changeover.desk.demo import texts
from changeover.desk.demo.crew import crew_edits
from changeover.desk.demo.season import EVENTS
from changeover.desk.door import apply
from changeover.desk.edits import (
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
from changeover.planter.entry import read_value
from changeover.planter.settings import standard
from changeover.quantities import Refusal, read_quantity
from changeover.seed.manual import ManualValue
from changeover.store.compacting import compact
from changeover.store.opening import Store, open_store
from changeover.switch.tasks import StandardTime

FIRST_DAY = datetime(2025, 4, 15, 9, 0, tzinfo=UTC)
OWNER = "Ottilie"
OPENING = "the shop as it was entered"


class SlowClock:
    """A clock that stands still until it is set."""

    def __init__(self, now: datetime) -> None:
        self.now = now

    def __call__(self) -> datetime:
        return self.now


def build_demo(path: Path) -> Path:
    """Build the demo store in a new file. Raises Refusal when the file is there already."""
    if path.exists():
        raise Refusal(f"{path.name} is there already; remove it first.")
    clock = SlowClock(FIRST_DAY)
    store = open_store(path, create=True, clock=clock)
    try:
        _enter_shop(store, texts.demo_table("shop"))
        _enter_planters(store, texts.demo_table("planters"))
        _enter_manual(store, texts.demo_table("shop"))
        setups = texts.demo_table("setups")
        for event in texts.demo_table("seasons")["event"]:
            clock.now = event["at"].replace(tzinfo=UTC)
            EVENTS[event["do"]](store, event, setups)
    finally:
        store.close()
    compact(path)
    return path


def _enter_shop(store: Store, shop: texts.Table) -> None:
    with store.work(OWNER, OPENING) as work:
        work.mark_demo(shop["says"])
        settings = work.settings.all()
    parts, shelf = texts.parts_and_shelf(shop)
    edits: list[Any] = [PutSettings(_settings(settings, shop), before=settings)]
    edits += [PutPart(part) for part in parts]
    edits += [SetShelf(count) for count in shelf]
    edits += [PutLot(lot) for lot in texts.lots(shop)]
    edits += [PutField(field) for field in texts.fields_of(shop)]
    edits += [PutJob(job) for job in texts.jobs(shop)]
    edits += [PutTime(_time(table)) for table in shop["time"]]
    edits += crew_edits(texts.demo_table("crew"))
    for edit in edits:
        apply(store, replace(edit, why=OPENING), OWNER)


def _settings(settings: tuple[Any, ...], shop: texts.Table) -> tuple[Any, ...]:
    """Put the demo's own settings after the closing force, before what is entered in the cab."""
    after = next(n for n, one in enumerate(settings) if one.key == "closing") + 1
    return (*settings[:after], *texts.own_settings(shop), *settings[after:])


def _time(table: texts.Table) -> StandardTime:
    fixed, each = (read_quantity(table[key], "time", what=key) for key in ("fixed", "each"))
    return StandardTime(table["task"], fixed, each)


def _enter_planters(store: Store, table: texts.Table) -> None:
    for one in table["planter"]:
        apply(store, PutPlanter(texts.planter(one), why=OPENING), OWNER)
        apply(store, PutMeters(texts.meters(one), why=OPENING), OWNER)


def _enter_manual(store: Store, shop: texts.Table) -> None:
    for table in shop["manual"]:
        with store.read() as work:
            planter = work.planters.get(table["planter"])
        setting = standard(table["setting"])
        value = read_value(setting, planter, planter.places(setting.scope)[0], table["value"])
        if value is None:
            raise Refusal(f"Manual value for {setting.name}: no value; enter one.")
        manual = ManualValue(table["crop"], setting.key, value, table["note"], planter=planter.name)
        apply(store, PutManual(manual, why=OPENING), OWNER)


if __name__ == "__main__":
    target = Path(sys.argv[1])
    target.unlink(missing_ok=True)
    sys.stdout.write(f"built {build_demo(target)}\n")
