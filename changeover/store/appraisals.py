"""Keeping trade-ins: the sorts of value, and lists of photos without their content."""

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from changeover.proof.own_limits import OwnLimit
from changeover.proof.price_book import PriceBook
from changeover.store.appraisal_tables import AppraisalRow, OwnLimitRow, PhotoRow, PriceBookRow
from changeover.store.appraisal_values import KeptAppraisal, Photo, PhotoNote
from changeover.store.journal import Journal
from changeover.store.shelf_of_values import Sort, Values

PRICES = Sort(PriceBook, PriceBookRow, "price list", ("name",))
WEAR_LIMIT = Sort(OwnLimit, OwnLimitRow, "wear limit", ("part", "applies"))
APPRAISAL = Sort(KeptAppraisal, AppraisalRow, "appraisal", ("planter", "name"))
PHOTO = Sort(Photo, PhotoRow, "photo", ("planter", "appraisal", "digest"))


class Photos(Values[Photo]):
    """The photos of the appraisals in a store."""

    def __init__(self, session: Session, journal: Journal | None) -> None:
        super().__init__(session, journal, PHOTO)

    def notes(self, planter: str, appraisal: str) -> tuple[PhotoNote, ...]:
        """Return what is to be said of an appraisal's photos, in the order attached."""
        query = (
            select(PhotoRow.digest, PhotoRow.caption, func.length(PhotoRow.content))
            .where(PhotoRow.planter == planter, PhotoRow.appraisal == appraisal)
            .order_by(PhotoRow.id)
        )
        return tuple(PhotoNote(*line) for line in self._session.execute(query))
