"""Which parts of the shop mend a finding of a wear inspection."""

from collections.abc import Iterable

from changeover.planter.parts import Part
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.proof.findings import Finding, Weight
from changeover.store.unit_of_work import UnitOfWork
from changeover.store.values import Side
from changeover.switch.tasks import PartCount

SORTS = {"disc flatness": "disc", "vacuum seal": "seal", "opener disc diameter": "opener disc"}


def parts_for(work: UnitOfWork, planter: str, finding: Finding) -> tuple[PartCount, ...]:
    """Return the parts that the work on a finding needs, by what the shop knows.

    First the lines of the price lists for this part of the inspection whose code is a part of the
    shop; else the very part that the row is set to; else the only part of that sort. Nothing for
    what is only to be watched, and nothing where the shop does not know.
    """
    if finding.weight is Weight.WATCH:
        return ()
    parts = work.parts.all()
    return _listed(work, finding.part, parts) or _fitted(work, planter, finding, parts)


def _listed(work: UnitOfWork, part: str, parts: Iterable[Part]) -> tuple[PartCount, ...]:
    known = {one.code for one in parts}
    books = sorted(work.prices.all(), key=lambda book: book.on, reverse=True)
    for book in books:
        found = [line for line in book.of_part(part) if line.code in known and line.each]
        if found:
            return tuple(PartCount(line.code, line.each) for line in found)
    return ()


def _fitted(
    work: UnitOfWork, planter: str, finding: Finding, parts: Iterable[Part]
) -> tuple[PartCount, ...]:
    sort = SORTS.get(finding.part, finding.part)
    of_sort = {one.code for one in parts if one.sort == sort}
    if finding.row is not None:
        as_found = work.cells.read(planter, Side.AS_FOUND)
        keys = [one.key for one in work.settings.all() if one.part_sort == sort]
        fitted = [as_found.get(Cell(key, Place.of_row(finding.row))) for key in keys]
        codes = [one for one in fitted if isinstance(one, str) and one in of_sort]
        if codes:
            return (PartCount(codes[0], 1),)
    return (PartCount(next(iter(of_sort)), 1),) if len(of_sort) == 1 else ()
