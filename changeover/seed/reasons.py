"""Why a value is proposed: rule, inputs, source and trust."""

from dataclasses import dataclass, field
from enum import StrEnum

from changeover.planter.setup import Cell, Value
from changeover.quantities import Quantity


class Trust(StrEnum):
    """Where a figure comes from; earlier ones win."""

    MANUAL = "your manual"
    RECORD = "your record"
    PUBLISHED = "published"
    PRACTICE = "common practice"
    MEMORY = "from memory"


@dataclass(frozen=True)
class Evidence:
    """One rung of the trust order: what it says for this setting, and whether it was used."""

    trust: Trust
    says: str
    used: bool = False


@dataclass(frozen=True)
class Input:
    """One input that a rule used, as a name and the text a person reads."""

    name: str
    text: str


@dataclass(frozen=True)
class Reason:
    """Says who: ``why`` in one or two sentences, ``how`` the formula or steps, and the source."""

    rule: str
    why: str
    source: str
    trust: Trust
    how: str = ""
    inputs: tuple[Input, ...] = ()
    cautions: tuple[str, ...] = ()
    evidence: tuple[Evidence, ...] = ()


@dataclass(frozen=True)
class Proposed:
    """The proposal for one cell; ``value`` is None when there is no ground for one.

    ``low`` and ``high`` bound an honest band, None where there is none.
    """

    cell: Cell
    value: Value | None
    reason: Reason
    low: Quantity | None = None
    high: Quantity | None = None


@dataclass(frozen=True)
class Figure:
    """A figure that belongs to the whole proposal, such as the spacing in the row."""

    key: str
    name: str
    quantity: Quantity
    measure: str
    reason: Reason


@dataclass(frozen=True)
class Proposal:
    """All that the look-up has to say about one planter, lot and field.

    ``cells`` holds one entry for every cell of every setting that applies; ``figures`` the
    derived ones (spacing in the row, disc speed, seeds and packages needed ...); ``warnings``
    whole sentences about things the planter cannot do or should not.
    """

    cells: dict[Cell, Proposed] = field(default_factory=dict)
    figures: tuple[Figure, ...] = ()
    warnings: tuple[str, ...] = ()

    def values(self) -> dict[Cell, Value]:
        """Return the proposed values alone, for taking over as the target."""
        return {cell: one.value for cell, one in self.cells.items() if one.value is not None}
