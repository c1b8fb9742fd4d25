"""The words of a task: rows in runs, and from → to with its exceptions in one clear line."""

from collections.abc import Iterable, Mapping
from itertools import pairwise

from changeover.planter.entry import index_of, show_value
from changeover.planter.machine import Planter
from changeover.planter.places import PLANTER, Place
from changeover.planter.settings import Kind, Setting
from changeover.planter.setup import Value
from changeover.quantities import Units, is_quantity, show
from changeover.switch.tasks import Change

NOT_KNOWN = "not known"
MOST_IN_TITLE = 3
Move = tuple[str, str]


def runs(rows: Iterable[int]) -> tuple[tuple[int, int], ...]:
    """Return row numbers as runs of neighbours, each as its first and last."""
    found: list[tuple[int, int]] = []
    for row in sorted(set(rows)):
        if found and row == found[-1][1] + 1:
            found[-1] = (found[-1][0], row)
        else:
            found.append((row, row))
    return tuple(found)


def listed(words: Iterable[str]) -> str:
    """Join words as a person says them: ``1, 2 and 3``."""
    every = tuple(words)
    return ", ".join(every[:-1]) + f" and {every[-1]}" if len(every) > 1 else "".join(every)


def rows_text(rows: Iterable[int]) -> str:
    """Say which rows: ``row 14``, ``rows 1–12 and 14``, ``every other row 1–31``."""
    numbers = sorted(set(rows))
    if len(numbers) > 3 and {b - a for a, b in pairwise(numbers)} == {2}:
        return f"every other row {numbers[0]}–{numbers[-1]}"
    parts = [
        str(a) if a == b else f"{a}, {b}" if b == a + 1 else f"{a}–{b}" for a, b in runs(numbers)
    ]
    return f"{'row' if len(numbers) == 1 else 'rows'} {listed(parts)}"


def places_text(places: Iterable[Place]) -> str:
    """Say which places: rows in runs, groups by name with their common word said once."""
    every = tuple(places)
    rows = [place.row for place in every if place.row is not None]
    words = [rows_text(rows)] if rows else []
    names = [place.label for place in every if place.row is None]
    return listed([*words, *_shortened(names)])


def _shortened(names: list[str]) -> list[str]:
    """Turn ``fan 1``, ``fan 2`` into ``fan 1``, ``2``."""
    if len(names) < 2:
        return names
    heads = {name.rpartition(" ")[0] for name in names}
    if len(heads) != 1 or not (head := heads.pop()):
        return names
    return [names[0], *(name.removeprefix(f"{head} ") for name in names[1:])]


def name_of(setting: Setting) -> str:
    """Return what a setting is called in a task; a depth is set by its notch."""
    return f"{setting.name} notch" if setting.key == "depth" else setting.name


class Words:
    """Shows the values of a planter's settings in the units on the screen, each text made once."""

    def __init__(self, planter: Planter, units: Units) -> None:
        self.planter = planter
        self.units = units
        self._texts: dict[tuple[str, int | str], str] = {}
        self._moves: dict[int, dict[Move, list[Place]]] = {}
        self._held: list[object] = []

    def value(self, setting: Setting, place: Place, value: Value | None) -> str:
        """Return a value without its unit sign; depth as its notch."""
        if value is None:
            return NOT_KNOWN
        quantity = is_quantity(value)
        if not quantity and setting.kind is not Kind.INDEX:
            return str(value)
        seen = (setting.key, id(value) if quantity else int(value))
        if seen not in self._texts:
            self._held.append(value)  # so that its id is not given to another
            self._texts[seen] = self._shown(setting, place, value)
        return self._texts[seen]

    def _shown(self, setting: Setting, place: Place, value: Value) -> str:
        if setting.kind is Kind.INDEX and index_of(setting, self.planter) is None:
            return str(value)
        return show_value(setting, self.planter, place, value, self.units)

    def depth(self, notch: int, row: int, *, sign: bool = True) -> str:
        """Return how deep a row plants at a notch, through its own offset."""
        scale = self.planter.depth
        own = row if row in scale.offsets else 0
        seen = (f"depth {own} {sign}", notch)
        if seen not in self._texts:
            self._texts[seen] = show(scale.depth(notch, row), "depth", self.units, sign=sign)
        return self._texts[seen]

    def sign(self, setting: Setting, value: Value) -> str:
        """Return the unit sign to set after a value, with the space before it."""
        if not is_quantity(value):
            return ""
        whole = show_value(setting, self.planter, PLANTER, value, self.units, sign=True)
        return whole.removeprefix(show_value(setting, self.planter, PLANTER, value, self.units))

    def moves(self, setting: Setting, changes: tuple[Change, ...]) -> dict[Move, list[Place]]:
        """Group the places of a setting's changes by from → to, the most common first."""
        if id(changes) not in self._moves:
            self._held.append(changes)
            self._moves[id(changes)] = self._grouped(setting, changes)
        return self._moves[id(changes)]

    def _grouped(self, setting: Setting, changes: Iterable[Change]) -> dict[Move, list[Place]]:
        found: dict[Move, list[Place]] = {}
        for change in changes:
            place = change.cell.place
            before = self.value(setting, place, change.before)
            found.setdefault((before, self.value(setting, place, change.after)), []).append(place)
        return dict(sorted(found.items(), key=lambda entry: -len(entry[1])))

    def phrase(
        self, setting: Setting, changes: tuple[Change, ...], *, brackets: bool = False
    ) -> str:
        """Say a setting's changes in one line: ``8 → 5; rows 11 and 14: 9 → 5``.

        ``brackets`` sets the exceptions in brackets, for a line that goes on after them.
        """
        moves = self.moves(setting, changes)
        sign = self.sign(setting, changes[0].after)
        if len(moves) <= MOST_IN_TITLE:
            return _with_exceptions(moves, sign, brackets=brackets)
        ends = {after for _, after in moves}
        return f"to {ends.pop()}{sign}" if len(ends) == 1 else "by the list"

    def lines(self, setting: Setting, changes: tuple[Change, ...]) -> tuple[str, ...]:
        """Say every from → to of a setting with its places; without them where it is one."""
        sign, moves = self.sign(setting, changes[0].after), self.moves(setting, changes)
        name = name_of(setting)
        if len(moves) == 1:
            ((before, after),) = moves
            return (f"{name}: {before} → {after}{sign}",)
        return tuple(
            f"{name}, {places_text(places)}: {before} → {after}{sign}"
            for (before, after), places in moves.items()
        )


def _with_exceptions(moves: Mapping[Move, list[Place]], sign: str, *, brackets: bool) -> str:
    (first, *others) = moves.items()
    usual = f"{first[0][0]} → {first[0][1]}{sign}"
    if not others:
        return usual
    texts = "; ".join(f"{places_text(places)}: {a} → {b}{sign}" for (a, b), places in others)
    return f"{usual} ({texts})" if brackets else f"{usual}; {texts}"
