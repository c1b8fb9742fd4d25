"""Tables of the tasks that people add to a switch or split off."""

from sqlalchemy import ForeignKey, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from changeover.planter.places import Place
from changeover.planter.settings import WorkPlace
from changeover.quantities import Quantity
from changeover.store.base import Base, Numbered
from changeover.store.sqltypes import ChoiceType, PlacesType, QuantityType, TupleType
from changeover.switch.tasks import MachineState


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
