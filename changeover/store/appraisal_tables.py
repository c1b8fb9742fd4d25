"""Tables of a trade-in: price lists, the user's own wear limits, appraisals and their photos."""

from collections.abc import Iterable
from datetime import date
from decimal import Decimal
from typing import Any

from sqlalchemy import JSON, Dialect, LargeBinary, String, TypeDecorator, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column
from typing_extensions import override

from changeover.proof.price_book import PriceLine
from changeover.quantities import Quantity
from changeover.store.base import Base, Counted
from changeover.store.sqltypes import QuantityType


class DecimalType(TypeDecorator[Decimal]):
    """An amount or a rate as the digits that were entered, never as a float."""

    impl = String
    cache_ok = True

    @override
    def process_bind_param(self, value: Decimal | None, dialect: Dialect) -> str | None:
        return None if value is None else str(value)

    @override
    def process_result_value(self, value: Any | None, dialect: Dialect) -> Decimal | None:
        return None if value is None else Decimal(value)


class LinesType(TypeDecorator[tuple[PriceLine, ...]]):
    """The lines of a price list."""

    impl = JSON(none_as_null=True)
    cache_ok = True

    @override
    def process_bind_param(self, value: Iterable[PriceLine] | None, dialect: Dialect) -> Any:
        return None if value is None else [_plain(line) for line in value]

    @override
    def process_result_value(
        self, value: Any | None, dialect: Dialect
    ) -> tuple[PriceLine, ...] | None:
        return None if value is None else tuple(_line(one) for one in value)


def _plain(line: PriceLine) -> dict[str, Any]:
    minutes = None if line.minutes is None else str(line.minutes)
    return {**vars(line), "amount": str(line.amount), "minutes": minutes}


def _line(stored: dict[str, Any]) -> PriceLine:
    minutes = stored["minutes"]
    amounts = {"amount": Decimal(stored["amount"])}
    return PriceLine(
        **{**stored, **amounts, "minutes": None if minutes is None else Decimal(minutes)}
    )


class PriceBookRow(Counted, Base):
    """One price list as it was imported."""

    __tablename__ = "price_list"

    name: Mapped[str] = mapped_column(unique=True)
    on: Mapped[date]
    tax: Mapped[Decimal] = mapped_column(DecimalType)
    lines: Mapped[tuple[PriceLine, ...]] = mapped_column(LinesType)


class OwnLimitRow(Counted, Base):
    """One wear limit from the user's own manual."""

    __tablename__ = "wear_limit"
    __table_args__ = (UniqueConstraint("part", "applies"),)

    part: Mapped[str]
    applies: Mapped[str]
    low: Mapped[Quantity | None] = mapped_column(QuantityType)
    high: Mapped[Quantity | None] = mapped_column(QuantityType)
    new: Mapped[Quantity | None] = mapped_column(QuantityType)
    note: Mapped[str]


class AppraisalRow(Counted, Base):
    """One appraisal as typed."""

    __tablename__ = "appraisal"
    __table_args__ = (UniqueConstraint("planter", "name"),)

    planter: Mapped[str]
    name: Mapped[str]
    on: Mapped[date]
    inspection: Mapped[int | None]
    prices: Mapped[str]
    currency: Mapped[str]
    as_found: Mapped[Decimal | None] = mapped_column(DecimalType)
    reconditioned: Mapped[Decimal | None] = mapped_column(DecimalType)
    note: Mapped[str]


class PhotoRow(Counted, Base):
    """One photo of an appraisal."""

    __tablename__ = "photo"
    __table_args__ = (UniqueConstraint("planter", "appraisal", "digest"),)

    planter: Mapped[str]
    appraisal: Mapped[str]
    digest: Mapped[str]
    caption: Mapped[str]
    content: Mapped[bytes] = mapped_column(LargeBinary)
