"""Tables of the history: entries and their changes, only ever added to."""

from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from changeover.store.base import Base, Numbered


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
