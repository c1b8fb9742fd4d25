"""Tables of what the user has and knows: settings, lots, fields, parts, meters, times, manual.

A column has the name of the field of the value that it holds, so that one mapping serves all.
"""

from datetime import date

from sqlalchemy import UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from changeover.planter.parts import Condition
from changeover.planter.places import Place, Scope
from changeover.planter.settings import Kind, WorkPlace
from changeover.quantities import Quantity
from changeover.seed.fields import Moisture, Texture, Tillage
from changeover.seed.lots import Purity, Treatment
from changeover.store.base import Base, Counted
from changeover.store.sqltypes import (
    ChoiceType,
    PlacedType,
    QuantityType,
    TupleType,
    WordsType,
)


class SettingRow(Counted, Base):
    """One setting; ``position`` is its place in the user's order."""

    __tablename__ = "setting"

    position: Mapped[int]
    key: Mapped[str] = mapped_column(unique=True)
    name: Mapped[str]
    kind: Mapped[Kind] = mapped_column(ChoiceType(Kind))
    scope: Mapped[Scope] = mapped_column(ChoiceType(Scope))
    work_place: Mapped[WorkPlace] = mapped_column(ChoiceType(WorkPlace))
    measure: Mapped[str | None]
    options: Mapped[tuple[str, ...]] = mapped_column(TupleType)
    part_sort: Mapped[str | None]
    hint: Mapped[str]
    hidden: Mapped[bool]
    own: Mapped[bool]
    record_only: Mapped[bool]
    tolerance: Mapped[Quantity | None] = mapped_column(QuantityType)


class LotRow(Counted, Base):
    """One seed lot, as its tag says."""

    __tablename__ = "lot"

    number: Mapped[str] = mapped_column(unique=True)
    crop: Mapped[str]
    name: Mapped[str]
    thousand_seed_mass: Mapped[Quantity | None] = mapped_column(QuantityType)
    sieve: Mapped[tuple[float, float] | None] = mapped_column(TupleType)
    length: Mapped[Quantity | None] = mapped_column(QuantityType)
    width: Mapped[Quantity | None] = mapped_column(QuantityType)
    thickness: Mapped[Quantity | None] = mapped_column(QuantityType)
    germination: Mapped[float | None]
    treatment: Mapped[Treatment] = mapped_column(ChoiceType(Treatment))
    treatment_name: Mapped[str]
    purity: Mapped[Purity] = mapped_column(ChoiceType(Purity))
    genetically_modified: Mapped[bool]
    package_seeds: Mapped[int | None]
    package_mass: Mapped[Quantity | None] = mapped_column(QuantityType)
    packages: Mapped[float | None]
    bulk_density: Mapped[Quantity | None] = mapped_column(QuantityType)
    lubricant: Mapped[Quantity | None] = mapped_column(QuantityType)


class FieldRow(Counted, Base):
    """One field."""

    __tablename__ = "field"

    name: Mapped[str] = mapped_column(unique=True)
    area: Mapped[Quantity] = mapped_column(QuantityType)
    texture: Mapped[Texture] = mapped_column(ChoiceType(Texture))
    where: Mapped[str]
    altitude: Mapped[Quantity | None] = mapped_column(QuantityType)
    run_length: Mapped[Quantity | None] = mapped_column(QuantityType)


class JobColumns:
    """The inputs of a field job; lot and field by name."""

    lot: Mapped[str]
    field: Mapped[str | None]
    speed: Mapped[Quantity] = mapped_column(QuantityType)
    seed_rate: Mapped[Quantity | None] = mapped_column(QuantityType)
    stand: Mapped[Quantity | None] = mapped_column(QuantityType)
    emergence: Mapped[float | None]
    moisture: Mapped[Moisture] = mapped_column(ChoiceType(Moisture))
    tillage: Mapped[Tillage] = mapped_column(ChoiceType(Tillage))
    soil_temperature: Mapped[Quantity | None] = mapped_column(QuantityType)
    row_spacing: Mapped[Quantity | None] = mapped_column(QuantityType)
    first_day: Mapped[date | None]
    last_day: Mapped[date | None]
    area: Mapped[Quantity | None] = mapped_column(QuantityType)
    overlap: Mapped[float | None]
    reserve: Mapped[float | None]
    seed_at_both_ends: Mapped[bool]
    other_lots: Mapped[tuple[tuple[Place, str], ...]] = mapped_column(PlacedType)
    meter_error: Mapped[float | None]


class PartRow(Counted, Base):
    """One kind of part."""

    __tablename__ = "part"

    code: Mapped[str] = mapped_column(unique=True)
    name: Mapped[str]
    sort: Mapped[str]
    suits: Mapped[frozenset[str]] = mapped_column(WordsType)
    cells: Mapped[int | None]
    hole: Mapped[Quantity | None] = mapped_column(QuantityType)
    cell_circle: Mapped[Quantity | None] = mapped_column(QuantityType)
    seed_from: Mapped[Quantity | None] = mapped_column(QuantityType)
    seed_to: Mapped[Quantity | None] = mapped_column(QuantityType)
    note: Mapped[str]


class ShelfRow(Counted, Base):
    """How many of a part lie on the shelf in one condition."""

    __tablename__ = "shelf"
    __table_args__ = (UniqueConstraint("part", "condition"),)

    part: Mapped[str]
    condition: Mapped[Condition] = mapped_column(ChoiceType(Condition))
    count: Mapped[int]
    bin: Mapped[str]


class MeterRow(Counted, Base):
    """One seed meter and where it is mounted."""

    __tablename__ = "meter"

    serial: Mapped[str] = mapped_column(unique=True)
    planter: Mapped[str | None]
    row: Mapped[int | None]
    hub_zero: Mapped[Quantity | None] = mapped_column(QuantityType)
    hours: Mapped[float]
    note: Mapped[str]
