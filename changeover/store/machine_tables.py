"""Tables of planters: rows, groups, drives and scales, and what every cell is set to."""

from sqlalchemy import ForeignKey, String, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column, relationship

from changeover.planter.places import Scope
from changeover.planter.setup import Value
from changeover.quantities import Quantity
from changeover.store.base import Base, Counted, Numbered
from changeover.store.sqltypes import ChoiceType, QuantityType, TupleType, ValueType
from changeover.store.values import Side


class PlanterRow(Counted, Base):
    """One planter; ``retired`` takes it out of the lists and keeps its history."""

    __tablename__ = "planter"

    name: Mapped[str] = mapped_column(unique=True)
    retired: Mapped[bool] = mapped_column(default=False)
    rows: Mapped[int]
    row_spacing: Mapped[Quantity] = mapped_column(QuantityType)
    split_rows: Mapped[tuple[int, ...]] = mapped_column(TupleType)
    depth_first: Mapped[Quantity] = mapped_column(QuantityType)
    depth_step: Mapped[Quantity] = mapped_column(QuantityType)
    depth_count: Mapped[int]
    hub_spacing_step: Mapped[Quantity] = mapped_column(QuantityType)
    fan_limit: Mapped[Quantity | None] = mapped_column(QuantityType)
    sensors_per_controller: Mapped[int]
    tank_capacity: Mapped[Quantity | None] = mapped_column(QuantityType)
    wheel_track_rows: Mapped[tuple[int, ...]] = mapped_column(TupleType)
    twin_rows: Mapped[bool]
    groups: Mapped[list["GroupRow"]] = relationship(
        cascade="all, delete-orphan", order_by="GroupRow.id"
    )
    drives: Mapped[list["DriveRow"]] = relationship(
        cascade="all, delete-orphan", order_by="DriveRow.id"
    )
    positions: Mapped[list["PositionRow"]] = relationship(
        cascade="all, delete-orphan", order_by="PositionRow.number"
    )
    offsets: Mapped[list["DepthOffsetRow"]] = relationship(
        cascade="all, delete-orphan", order_by="DepthOffsetRow.row"
    )
    load_readings: Mapped[list["LoadReadingRow"]] = relationship(
        cascade="all, delete-orphan", order_by="LoadReadingRow.id"
    )


class OfPlanter(Numbered):
    """A table whose lines belong to one planter."""

    planter_id: Mapped[int] = mapped_column(ForeignKey("planter.id", ondelete="CASCADE"))


class GroupRow(OfPlanter, Base):
    """One group of rows of one sort."""

    __tablename__ = "row_group"
    __table_args__ = (UniqueConstraint("planter_id", "sort", "name"),)

    sort: Mapped[Scope] = mapped_column(ChoiceType(Scope))
    name: Mapped[str]
    rows: Mapped[tuple[int, ...]] = mapped_column(TupleType)


class DriveRow(OfPlanter, Base):
    """How one drive group is turned: ``kind`` is ground, hydraulic or electric."""

    __tablename__ = "drive"
    __table_args__ = (UniqueConstraint("planter_id", "group_name"),)

    group_name: Mapped[str]
    kind: Mapped[str]
    ratio: Mapped[float]
    driver: Mapped[tuple[int, ...] | None] = mapped_column(TupleType)
    driven: Mapped[tuple[int, ...] | None] = mapped_column(TupleType)
    rolling_circumference: Mapped[Quantity | None] = mapped_column(QuantityType)
    slip: Mapped[float | None]
    least_speed: Mapped[Quantity | None] = mapped_column(QuantityType)
    most_speed: Mapped[Quantity | None] = mapped_column(QuantityType)
    displacement: Mapped[Quantity | None] = mapped_column(QuantityType)


class PositionRow(OfPlanter, Base):
    """One named position of the singulator's or the closing index."""

    __tablename__ = "position"
    __table_args__ = (UniqueConstraint("planter_id", "scale", "number"),)

    scale: Mapped[str]
    number: Mapped[int]
    name: Mapped[str]
    open_share: Mapped[float | None]


class DepthOffsetRow(OfPlanter, Base):
    """How much deeper one row plants than the depth scale says, its own step and its digs."""

    __tablename__ = "depth_offset"
    __table_args__ = (UniqueConstraint("planter_id", "row"),)

    row: Mapped[int]
    offset: Mapped[Quantity] = mapped_column(QuantityType)
    step: Mapped[Quantity | None] = mapped_column(QuantityType)
    digs: Mapped[int | None]
    middle: Mapped[float | None]
    squares: Mapped[float | None]
    spread: Mapped[Quantity | None] = mapped_column(QuantityType)


class LoadReadingRow(OfPlanter, Base):
    """One reading of gauge-wheel load at a setting of the down pressure."""

    __tablename__ = "load_reading"

    place: Mapped[str]
    setting: Mapped[Quantity] = mapped_column(QuantityType)
    load: Mapped[Quantity] = mapped_column(QuantityType)


class CellRow(OfPlanter, Base):
    """One cell of a planter's as-found or target setup."""

    __tablename__ = "cell"
    __table_args__ = (UniqueConstraint("planter_id", "side", "setting", "place"),)

    side: Mapped[Side] = mapped_column(ChoiceType(Side))
    setting: Mapped[str] = mapped_column(String)
    place: Mapped[str]
    value: Mapped[Value] = mapped_column(ValueType)
