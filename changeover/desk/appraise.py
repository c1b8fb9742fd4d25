"""Trade-ins: a planter appraised from its wear inspection and a price list, and two compared."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from hashlib import sha256
from pathlib import Path

from changeover.desk.edits import Several
from changeover.desk.inspect_wear import Inspection, Spot, judge, view_of
from changeover.desk.shop_edits import PutAppraisal, PutPhoto, PutPrices
from changeover.files.price_list import read_price_list
from changeover.planter.machine import Planter
from changeover.proof.appraisal import Appraisal, Price, appraise
from changeover.proof.appraisal_pair import SideBySide, side_by_side
from changeover.proof.price_book import PriceBook, repairs_needed
from changeover.proof.wear import WearState, WearVerdict, worst_condition
from changeover.quantities import Refusal
from changeover.store.appraisal_values import KeptAppraisal, Photo, PhotoNote
from changeover.store.opening import Store
from changeover.store.unit_of_work import UnitOfWork

__all__ = ["KeptAppraisal", "Photo", "PhotoNote", "PriceBook"]
MOST_PHOTOS = 24


@dataclass(frozen=True)
class AppraisalView:
    """One appraisal with all that it rests on.

    ``appraised`` is None while ``says`` tells what is missing. ``not_read`` are the rows of the
    planter without any reading.
    """

    kept: KeptAppraisal
    planter: Planter
    inspection: Inspection | None
    verdicts: dict[Spot, WearVerdict]
    book: PriceBook | None
    appraised: Appraisal | None
    says: str
    not_read: tuple[int, ...]
    photos: tuple[PhotoNote, ...]


def appraisals(store: Store, planter: str | None = None) -> tuple[KeptAppraisal, ...]:
    """Return the appraisals of a planter or (None) of all that are not retired, latest first."""
    with store.read() as work:
        there = set(work.planters.names())
        found = [one for one in work.appraisals.all() if planter in (None, one.planter)]
    there_now = [one for one in found if one.planter in there]
    return tuple(sorted(there_now, key=lambda one: (one.on, one.name), reverse=True))


def price_books(store: Store) -> tuple[PriceBook, ...]:
    """Return the price lists, latest first."""
    with store.read() as work:
        return tuple(sorted(work.prices.all(), key=lambda one: (one.on, one.name), reverse=True))


def inspections(store: Store, planter: str) -> tuple[Inspection, ...]:
    """Return the wear inspections of a planter, latest first. Raises Refusal."""
    with store.read() as work:
        return view_of(work, planter).inspections


def appraisal_view(store: Store, planter: str, name: str) -> AppraisalView:
    """Return one appraisal as it stands. Raises Refusal when there is none of that name."""
    with store.read() as work:
        return view(work, work.appraisals.get(planter, name))


def view(work: UnitOfWork, kept: KeptAppraisal, book: PriceBook | None = None) -> AppraisalView:
    """Return an appraisal, saved or not, by its price list or by ``book``. Raises Refusal."""
    planter = work.planters.get(kept.planter)
    wear = view_of(work, kept.planter)
    inspection = _inspection(wear.inspections, kept)
    book = book or (work.prices.get(kept.prices) if kept.prices else None)
    verdicts = judge(inspection, wear.limits) if inspection is not None else {}
    says = _missing(kept, inspection, book)
    read = inspection.rows if inspection is not None else ()
    return AppraisalView(
        kept,
        planter,
        inspection,
        verdicts,
        book,
        _appraised(kept, verdicts, book) if book is not None and inspection is not None else None,
        says,
        tuple(row for row in range(1, planter.rows + 1) if row not in read),
        work.photos.notes(kept.planter, kept.name),
    )


def appraise_now(
    store: Store,
    planter: str,
    prices: Path,
    on: date,
    *,
    as_found: Decimal | None = None,
    reconditioned: Decimal | None = None,
) -> AppraisalView:
    """Return the appraisal of a planter by a price list in a file; nothing in the store changes.

    Raises Refusal for a bad price list, and when the planter has no wear inspection.
    """
    book = read_price_list(prices, on)
    kept = KeptAppraisal(
        planter,
        book.name,
        on,
        currency=book.prices().currency,
        as_found=as_found,
        reconditioned=reconditioned,
    )
    with store.read() as work:
        found = view(work, kept, book)
    if found.appraised is None:
        raise Refusal(found.says)
    return found


def import_prices(store: Store, path: Path, on: date) -> PutPrices:
    """Return the edit that imports a price list in place of the one of its name, if any.

    Raises Refusal, naming file, line and column, for a bad list; then nothing is imported.
    """
    book = read_price_list(path, on)
    with store.read() as work:
        return PutPrices(book, before=work.prices.find((book.name,)), why=f"from {path.name}")


def attach(view: AppraisalView, caption: str, content: bytes) -> PutPhoto:
    """Return the edit that attaches a photo. Raises Refusal for another kind, size or number."""
    kept = view.kept
    if len(view.photos) >= MOST_PHOTOS:
        raise Refusal(f"{kept.name} has {MOST_PHOTOS} photos; take one off first.")
    digest = sha256(content).hexdigest()[:32]
    if any(one.digest == digest for one in view.photos):
        raise Refusal(f"The photo {caption} is attached already.")
    return PutPhoto(Photo(kept.planter, kept.name, digest, caption, content))


def photo(store: Store, kept: KeptAppraisal, digest: str) -> Photo:
    """Return one photo with its content. Raises Refusal when it is not there."""
    with store.read() as work:
        return work.photos.get(kept.planter, kept.name, digest)


def remove(store: Store, kept: KeptAppraisal) -> Several:
    """Return the edit that removes an appraisal with its photos, all in one step."""
    with store.read() as work:
        notes = work.photos.notes(kept.planter, kept.name)
        photos = [work.photos.get(kept.planter, kept.name, one.digest) for one in notes]
    edits = [PutPhoto(None, before=one) for one in photos]
    return Several((*edits, PutAppraisal(None, before=kept)), says="Remove the appraisal")


def two_views(
    store: Store, one: KeptAppraisal, other: KeptAppraisal
) -> tuple[AppraisalView, AppraisalView]:
    """Return two appraisals to set side by side. Raises Refusal while one cannot be reckoned."""
    with store.read() as work:
        first, second = view(work, one), view(work, other)
    beside(first, second)
    return first, second


def beside(one: AppraisalView, other: AppraisalView) -> SideBySide:
    """Return two appraisals side by side. Raises Refusal while one of them cannot be reckoned."""
    if one.appraised is None or other.appraised is None:
        raise Refusal(one.says if one.appraised is None else other.says)
    return side_by_side(one.appraised, other.appraised)


def _inspection(found: Sequence[Inspection], kept: KeptAppraisal) -> Inspection | None:
    """The inspection that was chosen, else the latest that is not later than the appraisal."""
    if kept.inspection is not None:
        return next((one for one in found if one.number == kept.inspection), None)
    return next((one for one in found if one.day <= kept.on), None)


def _missing(kept: KeptAppraisal, inspection: Inspection | None, book: PriceBook | None) -> str:
    if inspection is None:
        return (
            f"{kept.planter} has no wear inspection up to {kept.on.isoformat()}; enter one on the "
            "page Proof, under wear."
        )
    return "" if book is not None else f"{kept.name}: no price list is chosen; import one."


def _appraised(
    kept: KeptAppraisal, verdicts: dict[Spot, WearVerdict], book: PriceBook
) -> Appraisal:
    rows = sorted({row for row, _ in verdicts})
    conditions: dict[int, WearState] = {
        row: worst_condition(one for spot, one in verdicts.items() if spot[0] == row)
        for row in rows
    }
    return appraise(
        kept.planter,
        kept.on,
        conditions,
        repairs_needed([verdicts[spot] for spot in sorted(verdicts)], book),
        book.prices(),
        as_found=_price(kept, kept.as_found),
        reconditioned=_price(kept, kept.reconditioned),
    )


def _price(kept: KeptAppraisal, amount: Decimal | None) -> Price | None:
    return None if amount is None else Price(kept.planter, amount, kept.currency)
