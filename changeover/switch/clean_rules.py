"""How far each place is cleaned at each level of clean-out, read from the table of rules."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from changeover.quantities import Refusal
from changeover.seed.reasons import Trust


class CleanPlace(StrEnum):
    """The places that are cleaned, in the order of work: top to bottom, each once."""

    TANK = "tank"
    HOSE = "hose"
    HOPPER = "hopper"
    METER = "meter"
    TUBE = "tube"
    SENSOR = "sensor"
    DRIP_POINT = "drip_point"
    FLOOR = "floor"


class How(StrEnum):
    """How far a place is cleaned, in the order of work."""

    EMPTY = "empty"
    BRUSH = "brush"
    VACUUM = "vacuum"
    BLOW = "blow"
    WASH = "wash"
    INSPECT = "inspect"


class CleanLevel(StrEnum):
    """The levels of clean-out that a pair of lots can ask for, least first."""

    NO_NEXT_LOT = "no_next_lot"
    SAME_LOT = "same_lot"
    OTHER_VARIETY = "other_variety"
    DIFFERENT_CROP = "different_crop"
    NOT_KNOWN = "not_known"
    TREATED_TO_UNTREATED = "treated_to_untreated"
    IDENTITY_PRESERVED = "identity_preserved"
    SEED_PRODUCTION = "seed_production"
    ORGANIC = "organic"


@dataclass(frozen=True)
class LevelRule:
    """What one level asks: ``places`` maps each place to how far it is cleaned."""

    level: CleanLevel
    name: str
    why: str
    source: str
    trust: Trust
    places: Mapping[CleanPlace, frozenset[How]]


@dataclass(frozen=True)
class CleanRules:
    """All levels, and the step in words for each place and how far."""

    levels: Mapping[CleanLevel, LevelRule]
    steps: Mapping[tuple[CleanPlace, How], str]


def read_clean_rules(text: str) -> CleanRules:
    """Read the clean-out rules (TOML text).

    Raises Refusal when a level names a place or a way of cleaning that has no step in words.
    """
    table = tomllib.loads(text)
    steps = {
        (CleanPlace(place), How(how)): str(words)
        for place, entry in table["steps"].items()
        for how, words in entry.items()
    }
    levels = {CleanLevel(key): _level(CleanLevel(key), e) for key, e in table["level"].items()}
    for rule in levels.values():
        _check_steps(rule, steps)
    return CleanRules(levels, steps)


def _level(level: CleanLevel, entry: Mapping[str, object]) -> LevelRule:
    places = entry.get("places")
    if not isinstance(places, dict) or not entry.get("source"):
        raise Refusal(f"The clean-out level “{level}” lacks its places or its source; give both.")
    far = {CleanPlace(p): frozenset(How(how) for how in hows) for p, hows in places.items()}
    trust = Trust(str(entry.get("trust", Trust.PRACTICE)))
    return LevelRule(level, str(entry["name"]), str(entry["why"]), str(entry["source"]), trust, far)


def _check_steps(rule: LevelRule, steps: Mapping[tuple[CleanPlace, How], str]) -> None:
    for place, hows in rule.places.items():
        for how in hows:
            if (place, how) not in steps:
                raise Refusal(f"Clean-out: “{how}” at the {place} has no step in words; add it.")
