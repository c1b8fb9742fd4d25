"""Tables of switches, saved setups, and what the store says about itself."""

from sqlalchemy import ForeignKey, Index, UniqueConstraint, text
from sqlalchemy.orm import Mapped, mapped_column

from changeover.planter.setup import Value
from changeover.quantities import Quantity
from changeover.store.base import Base, Numbered
from changeover.store.machine_tables import OfPlanter
from changeover.store.sqltypes import (
    QuantityType,
    ValueType,
)
from changeover.store.stock_tables import JobColumns


class SwitchRow(JobColumns, OfPlanter, Base):
    """One switch of a planter; ``state`` is open, closed or abandoned."""

    __tablename__ = "switch"

    started: Mapped[str]
    state: Mapped[str]
    ended: Mapped[str | None]


class BeforeRow(Numbered, Base):
    """One cell of the as-found setup at the moment a switch began."""

    __tablename__ = "before_cell"
    __table_args__ = (UniqueConstraint("switch_id", "setting", "place"),)

    switch_id: Mapped[int] = mapped_column(ForeignKey("switch.id", ondelete="CASCADE"))
    setting: Mapped[str]
    place: Mapped[str]
    value: Mapped[Value] = mapped_column(ValueType)


class TickRow(Numbered, Base):
    """One task of a switch ticked off at one place."""

    __tablename__ = "tick"
    __table_args__ = (UniqueConstraint("switch_id", "task", "place"),)

    switch_id: Mapped[int] = mapped_column(ForeignKey("switch.id", ondelete="CASCADE"))
    task: Mapped[str]
    place: Mapped[str]
    who: Mapped[str]
    when: Mapped[str]


class SetupRow(OfPlanter, Base):
    """One saved setup; ``signed`` says that a switch was signed off with it."""

    __tablename__ = "setup"
    __table_args__ = (
        Index(
            "uq_setup_planter_id_name",
            "planter_id",
            "name",
            unique=True,
            sqlite_where=text("NOT withdrawn"),
            # The migration says the same for PostgreSQL; here it would load that dialect at start.
        ),
    )

    name: Mapped[str]
    saved: Mapped[str]
    who: Mapped[str]
    lot: Mapped[str | None]
    crop: Mapped[str | None]
    field: Mapped[str | None]
    note: Mapped[str]
    proved: Mapped[str]
    signed: Mapped[bool]
    withdrawn: Mapped[bool]
    seed_diameter: Mapped[Quantity | None] = mapped_column(QuantityType)


class SetupCellRow(Numbered, Base):
    """One cell of a saved setup."""

    __tablename__ = "setup_cell"
    __table_args__ = (UniqueConstraint("setup_id", "setting", "place"),)

    setup_id: Mapped[int] = mapped_column(ForeignKey("setup.id", ondelete="CASCADE"))
    setting: Mapped[str]
    place: Mapped[str]
    value: Mapped[Value] = mapped_column(ValueType)


class AboutRow(Base):
    """What the store says about itself, such as that it is the demo."""

    __tablename__ = "about"

    key: Mapped[str] = mapped_column(primary_key=True)
    value: Mapped[str]
