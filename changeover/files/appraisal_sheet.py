"""What is printed of one appraisal: plain texts, ready for the page."""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True)
class SheetRepair:
    """One thing to do on a row: what, why, and its count, price and labour as texts."""

    what: str
    why: str
    count: str
    price: str
    labour: str


@dataclass(frozen=True)
class SheetRow:
    """One row: its mark and word, what it needs, and what that costs."""

    name: str
    mark: str
    condition: str
    repairs: tuple[SheetRepair, ...]
    total: str


@dataclass(frozen=True)
class SheetPhoto:
    """One photo, JPEG or PNG, with its words."""

    caption: str
    content: bytes


@dataclass(frozen=True)
class AppraisalSheet:
    """One appraisal as it goes on paper.

    ``machine`` says what is appraised; ``values`` and ``totals`` are lines of a name and an
    amount; ``unpriced`` names what no price was given for; ``basis`` says on what it rests, one
    sentence a line;
    ``beside`` is a table of this planter and a second one, its heads first.
    """

    planter: str
    appraised_on: date
    machine: tuple[tuple[str, str], ...]
    values: tuple[tuple[str, str], ...]
    totals: tuple[tuple[str, str], ...]
    rows: tuple[SheetRow, ...]
    unpriced: tuple[str, ...]
    basis: tuple[str, ...]
    note: str = ""
    photos: tuple[SheetPhoto, ...] = ()
    beside: tuple[tuple[str, str, str], ...] = ()
