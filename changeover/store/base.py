"""The base of every table, with names for keys and constraints that migrations can rely on."""

from typing import Any

from sqlalchemy import MetaData
from sqlalchemy.orm import DeclarativeBase, Mapped, declared_attr, mapped_column


class Base(DeclarativeBase):
    """The base of every table."""

    metadata = MetaData(
        naming_convention={
            "ix": "ix_%(column_0_N_label)s",
            "uq": "uq_%(table_name)s_%(column_0_N_name)s",
            "ck": "ck_%(table_name)s_%(constraint_name)s",
            "fk": "fk_%(table_name)s_%(column_0_N_name)s_%(referred_table_name)s",
            "pk": "pk_%(table_name)s",
        }
    )


class Numbered:
    """A table whose lines have a number of their own."""

    id: Mapped[int] = mapped_column(primary_key=True)


class Counted(Numbered):
    """A table that people edit together: each change counts its version up by one."""

    version: Mapped[int] = mapped_column()

    @declared_attr.directive
    def __mapper_args__(cls) -> dict[str, Any]:  # noqa: N805
        return {"version_id_col": cls.version}
