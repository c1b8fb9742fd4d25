"""Rule tables that hold for every crop: singulator, closing, depth steps and points for a disc."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

from changeover.quantities import Refusal
from changeover.seed.reasons import Trust


@dataclass(frozen=True)
class Rule:
    """One line of a rule table: for which things it holds, what it gives, and says who.

    ``holds`` maps the name of a thing (family, shape, moisture ...) to the words it may have;
    ``gives`` is a share, a step or points, bare numbers all.
    """

    table: str
    holds: Mapping[str, frozenset[str]]
    gives: float
    why: str
    source: str
    trust: Trust

    def fits(self, things: Mapping[str, str]) -> bool:
        """Say whether it holds for things such as ``{"moisture": "dry"}``."""
        return all(things.get(name) in words for name, words in self.holds.items())


@dataclass(frozen=True)
class Rules:
    """Every rule by the name of its table, in the order in which they are written."""

    tables: Mapping[str, tuple[Rule, ...]] = field(default_factory=lambda: MappingProxyType({}))

    def first(self, table: str, things: Mapping[str, str]) -> Rule | None:
        """Return the first rule of a table that holds, or None."""
        return next((rule for rule in self.tables.get(table, ()) if rule.fits(things)), None)

    def all(self, table: str, things: Mapping[str, str]) -> tuple[Rule, ...]:
        """Return every rule of a table that holds, in order."""
        return tuple(rule for rule in self.tables.get(table, ()) if rule.fits(things))


NO_RULES = Rules()

_NOT_CONDITIONS = frozenset({"gives", "why", "source", "trust"})


def read_rules(tables: Mapping[str, Mapping[str, Any]]) -> Rules:
    """Read the rule tables, keyed by file name; ``rules`` in a file names its table.

    Raises Refusal naming the file when a rule lacks what it gives, why, source or trust.
    """
    read = {
        str(table["rules"]): tuple(
            _rule(name, str(table["rules"]), entry) for entry in table.get("rule", ())
        )
        for name, table in tables.items()
    }
    return Rules(MappingProxyType(read))


def _rule(name: str, table: str, entry: Mapping[str, Any]) -> Rule:
    try:
        holds = {
            key: frozenset(words) for key, words in entry.items() if key not in _NOT_CONDITIONS
        }
        gives, trust = float(entry["gives"]), Trust(entry["trust"])
        why, source = str(entry["why"]), str(entry["source"])
    except (KeyError, TypeError, ValueError) as error:
        raise Refusal(
            f"{name}: a rule needs gives, why, source and trust ({error} is amiss); mend it."
        ) from error
    return Rule(table, MappingProxyType(holds), gives, why, source, trust)
