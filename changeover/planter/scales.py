"""The positions that a planter offers: depth notches, singulator index, closing positions."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from changeover.quantities import Quantity, Refusal


@dataclass(frozen=True)
class DepthScale:
    """Depth notches, numbered from 1; a row may plant deeper or shallower than the scale says.

    ``first`` is the depth at notch 1, ``step`` the depth between notches (a quarter inch is
    common practice, no source; the planter states its own), ``offsets`` the depth added at a
    row by its own calibration.
    """

    first: Quantity
    step: Quantity
    count: int
    offsets: Mapping[int, Quantity] = field(default_factory=lambda: MappingProxyType({}))

    def __post_init__(self) -> None:
        if not 1 <= self.count <= 60:
            raise Refusal(f"{self.count} depth notches is not possible; enter 1 to 60.")
        if self.step.to("in").magnitude <= 0:
            raise Refusal("The step between depth notches must be above zero.")
        if not 0 <= self.first.to("in").magnitude <= 10:
            raise Refusal("The depth at the first notch must be from 0 to 10 in.")

    def depth(self, notch: int, row: int) -> Quantity:
        """Return the depth that a row plants at a notch."""
        nominal: Quantity = self.first + (notch - 1) * self.step
        return nominal + self.offsets[row] if row in self.offsets else nominal

    def notch(self, depth: Quantity, row: int) -> int:
        """Return the notch nearest to a depth at a row.

        Raises Refusal when the depth lies more than half a step outside the scale.
        """
        from_first = (depth - self.depth(1, row)) / self.step
        nearest = round(float(from_first.to("count").magnitude) + 1 + 1e-9)
        if not 1 <= nearest <= self.count:
            low, high = self.depth(1, row), self.depth(self.count, row)
            raise Refusal(
                f"Row {row} cannot plant {depth.to('in').magnitude:.2f} in deep: its {self.count} "
                f"notches reach {low.to('in').magnitude:.2f} to {high.to('in').magnitude:.2f} in."
            )
        return nearest


@dataclass(frozen=True)
class Position:
    """One position of an index; ``open_share`` is the share of the disc cell left open, 0 to 1."""

    name: str
    open_share: float | None = None

    def __post_init__(self) -> None:
        if not self.name.strip():
            raise Refusal("A position has no name; give it one.")
        if self.open_share is not None and not 0 <= self.open_share <= 1:
            raise Refusal(f"Position “{self.name}”: the share left open must be from 0 to 1.")


@dataclass(frozen=True)
class Index:
    """The named positions of a singulator, a closing spring or a user's own setting, from 1."""

    positions: tuple[Position, ...]

    def __post_init__(self) -> None:
        names = [position.name for position in self.positions]
        if not names:
            raise Refusal("An index needs at least one position; name it.")
        if len(set(names)) < len(names):
            raise Refusal("Two positions of one index share a name; rename one.")

    @staticmethod
    def of(*names: str) -> "Index":
        return Index(tuple(Position(name) for name in names))

    def __len__(self) -> int:
        return len(self.positions)

    def name(self, number: int) -> str:
        """Return the name of a position, which are numbered from 1."""
        return self.positions[number - 1].name

    def number(self, name: str) -> int | None:
        """Return the number of the position with a name, case aside; None when there is none."""
        folded = name.strip().casefold()
        for number, position in enumerate(self.positions, start=1):
            if position.name.casefold() == folded:
                return number
        return None

    def nearest_share(self, open_share: float) -> int | None:
        """Return the position with the open share nearest to the wanted one, or None."""
        known = [
            (abs(position.open_share - open_share), number)
            for number, position in enumerate(self.positions, start=1)
            if position.open_share is not None
        ]
        return min(known)[1] if known else None
