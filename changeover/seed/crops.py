"""The crop table: each figure with its value, unit, source and trust, read from text files."""

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from changeover.quantities import MEASURES, Q, Quantity, Refusal, Units, show
from changeover.seed.fields import Moisture, Texture, Tillage
from changeover.seed.reasons import Trust
from changeover.seed.rules import NO_RULES, Rules, read_rules

Table = Mapping[str, Any]

# Where the files lie under resources/, as patterns for whoever reads them.
CROP_FILES = ("crops/*.toml", "rules/*.toml", "vacuum.toml")

# What a figure is about, and the measure in which it is shown.
KINDS: Mapping[str, str] = {
    "seeds_per_mass": "seeds_per_mass",
    "thousand_seed_mass": "thousand_seed_mass",
    "bulk_density": "bulk_density",
    "package_seeds": "count",
    "package_mass": "mass",
    "depth": "depth",
    "least_soil_temperature": "temperature",
    "seed_rate": "seed_rate",
    "stand": "seed_rate",
    "emergence": "share",
    "field_emergence": "share",
    "length": "seed_size",
    "width": "seed_size",
    "thickness": "seed_size",
    "raw_seeds_per_mass": "seeds_per_mass",
    "raw_length": "seed_size",
    "raw_width": "seed_size",
    "raw_thickness": "seed_size",
    "vacuum": "pressure",
    "hole": "seed_size",
    "closing_force": "force",
    "speed": "speed",
}
_TRUST_ORDER = tuple(Trust)


@dataclass(frozen=True)
class When:
    """The soil for which a figure holds; an empty set holds for any."""

    moisture: frozenset[Moisture] = frozenset()
    texture: frozenset[Texture] = frozenset()
    tillage: frozenset[Tillage] = frozenset()

    def fits(self, moisture: Moisture, texture: Texture, tillage: Tillage) -> bool:
        return (
            (not self.moisture or moisture in self.moisture)
            and (not self.texture or texture in self.texture)
            and (not self.tillage or tillage in self.tillage)
        )

    @property
    def narrowness(self) -> int:
        """How many things it asks for, from 0 to 3."""
        return bool(self.moisture) + bool(self.texture) + bool(self.tillage)


ANY_SOIL = When()


@dataclass(frozen=True)
class CropFigure:
    """One figure of a crop: a typical value, a least and a greatest one, any of them None."""

    what: str
    low: Quantity | None
    typical: Quantity | None
    high: Quantity | None
    source: str
    trust: Trust
    note: str = ""
    when: When = ANY_SOIL

    @cached_property
    def middle(self) -> Quantity:
        """The typical value, else the middle of the range, else the one end that is known."""
        if self.typical is not None:
            return self.typical
        if self.low is not None and self.high is not None:
            half: Quantity = self.low + (self.high - self.low) / 2
            return half
        end = self.low if self.low is not None else self.high
        if end is None:
            raise Refusal(f"The crop figure {self.what} has no value; give it one.")
        return end

    def text(self, units: Units) -> str:
        """Return the figure in words, such as ``1.00 to 2.00 in, typically 1.25 in``."""
        measure = KINDS[self.what]
        if measure not in MEASURES:
            return f"{self.middle:~P}"
        ends = [one for one in (self.low, self.high) if one is not None]
        parts = []
        if len(ends) == 2:
            parts = [f"{show(ends[0], measure, units, sign=False)} to "]
            parts[0] += show(ends[1], measure, units)
        elif ends:
            word = "at least" if self.low is not None else "at most"
            parts = [f"{word} {show(ends[0], measure, units)}"]
        if self.typical is not None:
            shown = show(self.typical, measure, units)
            parts.append(f"typically {shown}" if ends else shown)
        return ", ".join(parts)


@dataclass(frozen=True, eq=False)
class Crop:
    """A crop: its key, its name, the kind it belongs to, its family and its figures.

    A crop is one and the same only with itself, so that what follows from it can be kept.
    ``kind`` is the key that its classes share, ``dry_bean`` for pinto; else the key itself.
    ``rules`` are the rule tables that hold for every crop.
    """

    key: str
    name: str
    family: str = ""
    kind: str = ""
    figures: tuple[CropFigure, ...] = ()
    rules: Rules = NO_RULES

    @property
    def keys(self) -> frozenset[str]:
        """The keys under which parts and manual values may name it."""
        return frozenset({self.key, self.kind or self.key})

    def of(self, what: str) -> tuple[CropFigure, ...]:
        """Return its figures of one sort, the most trusted first."""
        return self._sorts.get(what, ())

    @cached_property
    def _sorts(self) -> dict[str, tuple[CropFigure, ...]]:
        ordered = sorted(self.figures, key=lambda figure: _TRUST_ORDER.index(figure.trust))
        return {what: tuple(figure for figure in ordered if figure.what == what) for what in KINDS}

    def best(self, what: str) -> CropFigure | None:
        """Return its most trusted figure of one sort that holds for any soil, or None."""
        return next((one for one in self.of(what) if one.when == ANY_SOIL), None)


def read_crops(text_files: Mapping[str, str]) -> dict[str, Crop]:
    """Read the crop table from the text of its files, keyed by file name.

    Takes every file of ``CROP_FILES`` at once: files of crops (with ``key``), of rules (with
    ``rules``) and of published optima of vacuum (with ``optimum``). Raises Refusal naming the
    file when one cannot be read, or a figure lacks its unit, source or trust.
    """
    tables = {name: _parse(name, text) for name, text in sorted(text_files.items())}
    rules = read_rules({name: table for name, table in tables.items() if "rules" in table})
    optima = [(name, entry) for name, table in tables.items() for entry in table.get("optimum", ())]
    crops: dict[str, Crop] = {}
    for name, table in tables.items():
        if "key" in table:
            for crop in _crops_of(name, table, rules, optima):
                if crop.key in crops:
                    raise Refusal(f"{name}: the crop “{crop.key}” is there twice; remove one.")
                crops[crop.key] = crop
    return crops


def _parse(name: str, text: str) -> Table:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise Refusal(f"{name} is not a readable text table ({error}); mend or restore it.") from (
            error
        )


def _crops_of(
    name: str, table: Table, rules: Rules, optima: Iterable[tuple[str, Table]]
) -> Iterable[Crop]:
    """Give the crops of one file: its classes where it has any, else the one crop."""
    shared = [_figure(name, entry) for entry in table.get("figure", ())]
    kind = str(table["key"])
    for entry in table.get("class", (table,)):
        key, label = str(entry.get("key", "")), str(entry.get("name", ""))
        if not key or not label:
            raise Refusal(f"{name}: a crop needs a key and a name; add them.")
        own = [_figure(name, one) for one in entry.get("figure", ())] if entry is not table else []
        vacuum = [
            _figure(where, {**one, "what": "vacuum", "typical": one.get("value")})
            for where, one in optima
            if one.get("crop") in (key, kind)
        ]
        figures = (*own, *shared, *vacuum)
        yield Crop(key, label, str(table.get("family", "")), kind, figures, rules)


def _figure(name: str, entry: Table) -> CropFigure:
    what = str(entry.get("what", ""))
    where = f"{name}, figure “{what}”"
    if what not in KINDS:
        raise Refusal(f"{where}: this sort of figure is not known; use one of {_names(KINDS)}.")
    source, trust = str(entry.get("source", "")), str(entry.get("trust", ""))
    if not source or trust not in _TRUST_ORDER:
        raise Refusal(f"{where}: give a source and a trust ({_names(_TRUST_ORDER)}).")
    low, typical, high = (_size(where, entry, end) for end in ("low", "typical", "high"))
    if low is None and typical is None and high is None:
        raise Refusal(f"{where}: give at least one of low, typical and high.")
    when = _when(where, entry.get("when", {}))
    return CropFigure(
        what, low, typical, high, source, Trust(trust), str(entry.get("note", "")), when
    )


def _size(where: str, entry: Table, end: str) -> Quantity | None:
    value = entry.get(end)
    if value is None:
        return None
    unit = entry.get("unit")
    try:
        return Q(float(value), str(unit))
    except Exception as error:  # pint raises many kinds for a unit it cannot read
        raise Refusal(f"{where}: “{value} {unit}” is not a figure with a unit.") from error


def _when(where: str, entry: Table) -> When:
    try:
        return When(
            frozenset(Moisture(one) for one in entry.get("moisture", ())),
            frozenset(Texture(one) for one in entry.get("texture", ())),
            frozenset(Tillage(one) for one in entry.get("tillage", ())),
        )
    except ValueError as error:
        raise Refusal(f"{where}: {error}; use the words of the field page.") from error


def _names(words: Iterable[str]) -> str:
    return ", ".join(words)
