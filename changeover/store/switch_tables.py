"""Tables of switches, saved setups, history, and what the store says about itself."""

from sqlalchemy import ForeignKey, Index, UniqueConstraint, text
from sqlalchemy.orm import Mapped, mapped_column

from changeover.planter.places import Place
from changeover.planter.settings import WorkPlace
from changeover.planter.setup import Value
from changeover.quantities import Quantity
from changeover.store.base import Base, Numbered
from changeover.store.machine_tables import OfPlanter
from changeover.store.sqltypes import (
    ChoiceType,
    PlacesType,
    QuantityType,
    TupleType,
    ValueType,
)
from changeover.store.stock_tables import JobColumns
from changeover.switch.tasks import MachineState


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


class OwnTaskRow(Numbered, Base):
    """One task that a person added to a switch."""

    __tablename__ = "own_task"
    __table_args__ = (UniqueConstraint("switch_id", "name"),)

    switch_id: Mapped[int] = mapped_column(ForeignKey("switch.id", ondelete="CASCADE"))
    name: Mapped[str]
    title: Mapped[str]
    work_place: Mapped[WorkPlace] = mapped_column(ChoiceType(WorkPlace))
    places: Mapped[tuple[Place, ...]] = mapped_column(PlacesType)
    minutes_fixed: Mapped[Quantity] = mapped_column(QuantityType)
    minutes_each: Mapped[Quantity] = mapped_column(QuantityType)
    state: Mapped[MachineState] = mapped_column(ChoiceType(MachineState))
    tools: Mapped[tuple[str, ...]] = mapped_column(TupleType)
    persons: Mapped[int]
    after: Mapped[tuple[str, ...]] = mapped_column(TupleType)
    before: Mapped[tuple[str, ...]] = mapped_column(TupleType)


class SplitRow(Numbered, Base):
    """Places of a family of tasks of a switch that are done apart from the rest."""

    __tablename__ = "task_split"
    __table_args__ = (UniqueConstraint("switch_id", "family", "name"),)

    switch_id: Mapped[int] = mapped_column(ForeignKey("switch.id", ondelete="CASCADE"))
    family: Mapped[str]
    name: Mapped[str]
    places: Mapped[tuple[Place, ...]] = mapped_column(PlacesType)


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


class EntryRow(Numbered, Base):
    """One entry of the history: one transaction, by whom, when and why."""

    __tablename__ = "entry"

    when: Mapped[str]
    who: Mapped[str]
    why: Mapped[str]


class ChangeRow(Numbered, Base):
    """One change of an entry; never altered and never deleted."""

    __tablename__ = "change"

    entry_id: Mapped[int] = mapped_column(ForeignKey("entry.id"), index=True)
    planter: Mapped[str] = mapped_column(index=True)
    what: Mapped[str]
    setting: Mapped[str]
    place: Mapped[str]
    old: Mapped[str]
    new: Mapped[str]


class AboutRow(Base):
    """What the store says about itself, such as that it is the demo."""

    __tablename__ = "about"

    key: Mapped[str] = mapped_column(primary_key=True)
    value: Mapped[str]
