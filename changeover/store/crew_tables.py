"""Tables of the crew, its shared tools, and what a season is planned by."""

from datetime import date
from typing import Any

from sqlalchemy import JSON, Dialect, TypeDecorator, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column
from typing_extensions import override

from changeover.store.base import Base, Counted
from changeover.store.sqltypes import WordsType
from changeover.switch.crew import Hours


class HoursType(TypeDecorator[Hours]):
    """Stretches of a day, each from a minute to a minute after midnight."""

    impl = JSON(none_as_null=True)
    cache_ok = True

    @override
    def process_bind_param(self, value: Hours | None, dialect: Dialect) -> Any:
        return None if value is None else [list(span) for span in value]

    @override
    def process_result_value(self, value: Any | None, dialect: Dialect) -> Hours | None:
        return None if value is None else tuple((begin, end) for begin, end in value)


class CrewRow(Counted, Base):
    """One person of the crew."""

    __tablename__ = "crew_member"

    name: Mapped[str] = mapped_column(unique=True)
    skills: Mapped[frozenset[str]] = mapped_column(WordsType)
    hours: Mapped[Hours] = mapped_column(HoursType)
    here: Mapped[bool]


class ToolRow(Counted, Base):
    """One shared tool and how many there are."""

    __tablename__ = "shared_tool"

    name: Mapped[str] = mapped_column(unique=True)
    count: Mapped[int]


class SeasonRow(Counted, Base):
    """What a season is reckoned with."""

    __tablename__ = "season_rules"

    name: Mapped[str] = mapped_column(unique=True)
    begins: Mapped[date | None]
    hours: Mapped[float]
    suitable: Mapped[float]
    efficiency: Mapped[float]
    move_minutes: Mapped[int]
    near_minutes: Mapped[int]


class FixingRow(Counted, Base):
    """One job of the season that a person has fixed."""

    __tablename__ = "job_fixing"

    job: Mapped[str] = mapped_column(unique=True)
    planter: Mapped[str]
    day: Mapped[date | None]


class DeliveryRow(Counted, Base):
    """The days that one part takes to be delivered."""

    __tablename__ = "delivery"

    part: Mapped[str] = mapped_column(unique=True)
    days: Mapped[int]


class FlushRow(Counted, Base):
    """One flush of a planter until a purity limit was met."""

    __tablename__ = "flush"
    __table_args__ = (UniqueConstraint("planter", "lot", "when"),)

    planter: Mapped[str]
    lot: Mapped[str]
    residual: Mapped[float]
    limit: Mapped[float]
    seeds: Mapped[float]
    row_feet: Mapped[float]
    acres: Mapped[float]
    measured: Mapped[bool]
    who: Mapped[str]
    when: Mapped[str]
    pool: Mapped[float | None]
