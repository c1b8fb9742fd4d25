"""The short words for what a planter is set to now and what it plants next."""

from datetime import datetime

from changeover.planter.setup import Setup
from changeover.seed.lots import SeedLot
from changeover.store.unit_of_work import UnitOfWork
from changeover.store.values import NextJob


def crop_words(key: str) -> str:
    """Return a crop's key as words: ``Dry bean pinto`` for ``dry_bean_pinto``."""
    return key.replace("_", " ").capitalize()


def day_words(when: str) -> str:
    """Return the day of an ISO 8601 text as ``3 May``."""
    day = datetime.fromisoformat(when)
    return f"{day.day} {day:%B}"


def label_now(work: UnitOfWork, planter: str, as_found: Setup) -> str:
    """Return what a planter is set to: its last signed-off setup, else the lots in its tanks."""
    last = work.setups.last_signed(planter)
    if last is not None and last.crop:
        where = f", {last.field}" if last.field else ""
        return f"{crop_words(last.crop)}{where} · set {day_words(last.saved)}"
    lots = sorted({str(v) for cell, v in as_found.values.items() if cell.setting == "seed"})
    if lots:
        return f"Lot {', '.join(lots)}"
    return "As found" if as_found.values else "Nothing entered yet"


def label_next(chosen: NextJob | None, lot: SeedLot | None) -> str:
    """Return what comes next, such as ``Soybean lot S-114 → West Bottom``; empty when nothing."""
    if chosen is None or lot is None:
        return ""
    field = f" → {chosen.field}" if chosen.field else ""
    return f"{crop_words(lot.crop)} lot {lot.number}{field}"
