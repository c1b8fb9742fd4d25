"""Standard minutes of each element of work, and the user's own that win over them."""

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from changeover.quantities import Q, Quantity, Refusal
from changeover.switch.tasks import StandardTime


@dataclass(frozen=True)
class Element:
    """One element of work: minutes once and for each place, and where the figures come from."""

    name: str
    fixed: float
    each: float
    source: str


def read_minutes(text: str) -> dict[str, Element]:
    """Read the table of standard minutes (TOML text).

    Raises Refusal when an element's minutes are missing or below zero.
    """
    table = tomllib.loads(text)
    practice = str(table.pop("practice"))
    return {name: _element(name, entry, practice) for name, entry in table.items()}


def _element(name: str, entry: Mapping[str, object], practice: str) -> Element:
    fixed, each = entry.get("fixed"), entry.get("each")
    if not isinstance(fixed, int | float) or not isinstance(each, int | float):
        raise Refusal(f"Standard minutes of “{name}”: give fixed and each as numbers.")
    if fixed < 0 or each < 0:
        raise Refusal(f"Standard minutes of “{name}” cannot be below zero; enter 0 or more.")
    return Element(name, float(fixed), float(each), str(entry.get("source", practice)))


@dataclass(frozen=True)
class Minutes:
    """The minutes that a plan reckons with: the table, overlaid with the user's own."""

    table: Mapping[str, Element]
    own: Mapping[str, StandardTime] = field(default_factory=lambda: MappingProxyType({}))

    @staticmethod
    def of(table: Mapping[str, Element], times: Iterable[StandardTime]) -> "Minutes":
        return Minutes(table, {time.task: time for time in times})

    def of_task(self, key: str, elements: Iterable[str]) -> tuple[Quantity, Quantity]:
        """Return the fixed minutes and those for each place of a task made of elements.

        The user's own time for the key, or for the family before its stroke, stands for the
        whole; otherwise the elements add up, each with the user's own where there is one.
        Raises Refusal when an element is not in the table.
        """
        own = self.own.get(key) or self.own.get(key.partition("/")[0])
        if own is not None:
            return own.fixed, own.each
        pairs = [self._of_element(name) for name in elements]
        return Q(sum(p[0] for p in pairs), "min"), Q(sum(p[1] for p in pairs), "min")

    def _of_element(self, name: str) -> tuple[float, float]:
        if (own := self.own.get(name)) is not None:
            fixed, each = own.fixed.to("min").magnitude, own.each.to("min").magnitude
            return float(fixed), float(each)
        try:
            element = self.table[name]
        except KeyError as error:
            raise Refusal(f"There are no standard minutes for “{name}”; add them.") from error
        return element.fixed, element.each
