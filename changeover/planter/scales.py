"""The positions that a planter offers: depth notches, singulator index, closing positions."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from math import inf, isfinite
from types import MappingProxyType
from typing import TypeVar

from changeover.quantities import (
    Q,
    Quantity,
    Refusal,
    Units,
    check_kind,
    figure_in,
    figure_of,
    how_many,
    in_own_units,
    show,
)

NO_QUANTITIES: Mapping[int, Quantity] = MappingProxyType({})
WIDEST_STEP = Q(2.0, "in")  # from memory: no planter goes deeper than this at one notch


@dataclass(frozen=True)
class DugLine:
    """What the digs behind a row's own depth leave open, so that its interval can be told.

    ``digs`` counts them, ``middle`` is the mean of their notches, ``squares`` the sum of squares
    of their notches about it (0 where all were dug at one notch); ``spread`` is the standard
    deviation of a single dig about the row's line, a length, None where there were too few.
    """

    digs: int
    middle: float
    squares: float = 0.0
    spread: Quantity | None = None

    def __post_init__(self) -> None:
        if self.digs < 1 or not (isfinite(self.middle) and 0 <= self.squares < inf):
            raise Refusal("The digs behind a row's depth cannot be; dig that row again.")
        check_kind(self.spread, "depth", "The spread of a row's digs")
        if self.spread is not None and not 0 <= self.spread.magnitude < inf:
            raise Refusal("The spread of a row's digs must be 0 or more; dig that row again.")


@dataclass(frozen=True)
class DepthScale:
    """Depth notches, numbered from 1; a row may plant deeper or shallower than the scale says.

    ``first`` is the depth at notch 1, ``step`` the depth between notches (a quarter inch is
    common practice, no source; the planter states its own). A row's own calibration is its entry
    in ``offsets``, the depth added at notch 1, and in ``steps``, the depth between its notches
    where that was measured too; ``digs`` says what they rest on, and is left out where a person
    entered them. A row in ``steps`` or ``digs`` stands in ``offsets`` as well.
    """

    first: Quantity
    step: Quantity
    count: int
    offsets: Mapping[int, Quantity] = field(default_factory=lambda: NO_QUANTITIES)
    steps: Mapping[int, Quantity] = field(default_factory=lambda: NO_QUANTITIES)
    digs: Mapping[int, DugLine] = field(default_factory=lambda: MappingProxyType({}))

    def __post_init__(self) -> None:
        if not 1 <= self.count <= 60:
            raise Refusal(f"{self.count} depth notches is not possible; enter 1 to 60.")
        if figure_in("in", self.step, "depth", "The step between depth notches") <= 0:
            raise Refusal("The step between depth notches must be above zero.")
        if not 0 <= figure_in("in", self.first, "depth", "The depth at the first notch") <= 10:
            raise Refusal("The depth at the first notch must be from 0 to 10 in (254 mm).")
        for row, offset in self.offsets.items():
            check_kind(offset, "depth", f"Row {row}, deeper at notch 1")
        for row in (*self.steps, *self.digs):
            if row not in self.offsets:
                raise Refusal(
                    f"Row {row} has a depth step of its own, but not how much deeper it plants at "
                    "notch 1; enter that too, 0 in where it does not."
                )
        for row, step in self.steps.items():
            self._check_step(row, step)

    def _check_step(self, row: int, step: Quantity) -> None:
        if (
            not 0
            < figure_in("in", step, "depth", f"Row {row}, depth step")
            <= WIDEST_STEP.magnitude
        ):
            raise Refusal(
                f"Row {row}: a depth step of {in_own_units(step)} is not possible; enter more than "
                f"0 and at most {in_own_units(WIDEST_STEP)} (51 mm) a notch."
            )
        last = self.depth(self.count, row)
        if last.to("in").magnitude <= 0:
            raise Refusal(
                f"Row {row} would not reach the soil at notch {self.count}, its last; check how "
                "much deeper it plants at notch 1."
            )

    def step_of(self, row: int) -> Quantity:
        """Return the depth between the notches of a row: its own where measured, or the scale's."""
        return self.steps.get(row, self.step)

    def depth(self, notch: int, row: int) -> Quantity:
        """Return the depth that a row plants at a notch."""
        first, step = self._line(row)
        return Q(first + (notch - 1) * step, self.first.units)

    def place(self, depth: Quantity, row: int) -> float:
        """Return where a depth lies on a row's notches, between two of them or beyond."""
        first, step = self._line(row)
        return (figure_of(depth, self.first.units) - first) / step + 1

    def _line(self, row: int) -> tuple[float, float]:
        """Return a row's depth at notch 1 and its step, in the unit of the scale's first notch."""
        if row not in self._lines:
            unit = self.first.units
            own = figure_of(self.offsets[row], unit) if row in self.offsets else 0.0
            first = float(self.first.magnitude) + own
            self._lines[row] = first, figure_of(self.step_of(row), unit)
        return self._lines[row]

    @cached_property
    def _lines(self) -> dict[int, tuple[float, float]]:
        return {}

    def notch(self, depth: Quantity, row: int, units: Units = Units.US) -> int:
        """Return the notch nearest to a depth at a row, the deeper of two that are as near.

        Raises Refusal when the depth lies more than half a step outside the scale, its figures
        in ``units``.
        """
        nearest = round(self.place(depth, row) + 1e-9)
        if not 1 <= nearest <= self.count:
            low = show(self.depth(1, row), "depth", units, sign=False)
            high = show(self.depth(self.count, row), "depth", units)
            raise Refusal(
                f"Row {row} cannot plant {show(depth, 'depth', units)} deep: its {self.count} "
                f"notches reach {low} to {high}."
            )
        return nearest

    def with_row(
        self,
        row: int,
        offset: Quantity | None,
        step: Quantity | None = None,
        digs: DugLine | None = None,
    ) -> "DepthScale":
        """Return the scale with a row's own calibration in place of the one it had.

        Without a ``step`` the row keeps the scale's; with no ``offset`` either it has no
        calibration any more. Raises Refusal for what cannot be.
        """
        return replace(
            self,
            offsets=_put(self.offsets, row, offset),
            steps=_put(self.steps, row, step),
            digs=_put(self.digs, row, digs),
        )

    @property
    def nominal(self) -> "DepthScale":
        """The scale as the planter states it, without the calibration of any row."""
        return DepthScale(self.first, self.step, self.count)

    @property
    def in_brief(self) -> str:
        """The scale in words for the history."""
        rows = "".join(f"; {self._row_words(row)}" for row in sorted(self.offsets))
        first, step = in_own_units(self.first), in_own_units(self.step)
        return f"{self.count} notches, {first} at the first, {step} a notch{rows}"

    def _row_words(self, row: int) -> str:
        offset = self.offsets[row]
        way = "deeper" if offset.magnitude >= 0 else "shallower"
        size: Quantity = offset if offset.magnitude >= 0 else -1 * offset
        words = f"row {row} {in_own_units(size)} {way}"
        if row in self.steps:
            words += f", {in_own_units(self.steps[row])} a notch"
        dug = self.digs[row].digs if row in self.digs else 0
        return f"{words}, by {how_many(dug, 'dig')}" if dug else words


def step_text(step: Quantity, units: Units) -> str:
    """Return the depth between notches without idle noughts, ``0.25 in`` or ``6.35 mm``."""
    figure, _, sign = show(step, "depth_step", units).partition(" ")
    return f"{figure.rstrip('0').rstrip('.') if '.' in figure else figure} {sign}"


Own = TypeVar("Own")


def _put(had: Mapping[int, Own], row: int, own: Own | None) -> Mapping[int, Own]:
    rest = {key: value for key, value in had.items() if key != row}
    return MappingProxyType(rest if own is None else {**rest, row: own})


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
