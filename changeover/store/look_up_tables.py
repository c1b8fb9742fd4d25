"""Tables of planned jobs and of the user's own figures: minutes and settings."""

from sqlalchemy.orm import Mapped, mapped_column

from changeover.planter.setup import Value
from changeover.quantities import Quantity
from changeover.store.base import Base, Counted
from changeover.store.sqltypes import QuantityType, ValueType
from changeover.store.stock_tables import JobColumns


class JobRow(JobColumns, Counted, Base):
    """One field job of the season."""

    __tablename__ = "job"

    name: Mapped[str] = mapped_column(unique=True)
    planter: Mapped[str | None]
    lateness_cost: Mapped[float | None]
    done: Mapped[bool]


class TimeRow(Counted, Base):
    """The user's own minutes for a task."""

    __tablename__ = "standard_time"

    task: Mapped[str] = mapped_column(unique=True)
    fixed: Mapped[Quantity] = mapped_column(QuantityType)
    each: Mapped[Quantity] = mapped_column(QuantityType)


class ManualRow(Counted, Base):
    """One value from the user's own manual."""

    __tablename__ = "manual_value"

    crop: Mapped[str]
    setting: Mapped[str]
    planter: Mapped[str | None]
    part: Mapped[str | None]
    value: Mapped[Value] = mapped_column(ValueType)
    note: Mapped[str]
