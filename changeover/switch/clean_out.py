"""Clean-out by pair of lots: which places are cleaned, how far, in which order, and why."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from changeover.seed.lots import Purity, SeedLot, Treatment
from changeover.seed.reasons import Trust
from changeover.switch.clean_rules import CleanLevel, CleanPlace, How, LevelRule
from changeover.switch.rules import SwitchRules

SEED_CLASSES = (Purity.CERTIFIED, Purity.REGISTERED, Purity.FOUNDATION)
LOGGED = (CleanLevel.IDENTITY_PRESERVED, CleanLevel.SEED_PRODUCTION, CleanLevel.ORGANIC)


@dataclass(frozen=True)
class CleanOut:
    """What the pair of lots asks: ``places`` maps each place, top first, to how far.

    ``level`` is the strictest of ``levels``, all that hold. ``steps`` are the words for a person.
    ``cautions`` are sentences, ``caution_keys`` the keys they stand under. ``into`` says what
    the container for the seed recovered is labelled with. ``logged`` says that a certifier or
    contract asks for a log of it.
    """

    level: CleanLevel
    name: str
    why: str
    source: str
    trust: Trust = Trust.PRACTICE
    levels: tuple[CleanLevel, ...] = ()
    places: Mapping[CleanPlace, tuple[How, ...]] = field(
        default_factory=lambda: MappingProxyType({})
    )
    steps: Mapping[CleanPlace, tuple[str, ...]] = field(
        default_factory=lambda: MappingProxyType({})
    )
    into: str = ""
    caution_keys: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    logged: bool = False

    @property
    def needed(self) -> bool:
        return bool(self.places)


NOT_YET = CleanOut(
    CleanLevel.NO_NEXT_LOT, "no next lot", "No next lot is chosen, so nothing is cleaned.", ""
)


def clean_levels(old: SeedLot | None, new: SeedLot) -> tuple[CleanLevel, ...]:
    """Return every level of clean-out that a pair of lots asks for, least first.

    ``old`` is None when it is not known what was in the planter.
    """
    if old is not None and old.number == new.number:
        return (CleanLevel.SAME_LOT,)
    found = {_base_level(old, new)}
    if old is not None and old.treatment is Treatment.TREATED and new.treatment is Treatment.NONE:
        found.add(CleanLevel.TREATED_TO_UNTREATED)
    if new.purity is Purity.IDENTITY_PRESERVED:
        found.add(CleanLevel.IDENTITY_PRESERVED)
    if new.purity in SEED_CLASSES:
        found.add(CleanLevel.SEED_PRODUCTION)
    if new.purity is Purity.ORGANIC and (old is None or old.purity is not Purity.ORGANIC):
        found.add(CleanLevel.ORGANIC)
        if old is None or old.genetically_modified:
            found.add(CleanLevel.IDENTITY_PRESERVED)
    return tuple(level for level in CleanLevel if level in found)


def _base_level(old: SeedLot | None, new: SeedLot) -> CleanLevel:
    if old is None:
        return CleanLevel.NOT_KNOWN
    return CleanLevel.OTHER_VARIETY if old.crop == new.crop else CleanLevel.DIFFERENT_CROP


def clean_out(old: SeedLot | None, new: SeedLot | None, rules: SwitchRules) -> CleanOut:
    """Return the clean-out from one lot to the next.

    Each place is cleaned as far as the strictest level that holds asks, once, from the top
    down. ``old`` None: not known what was in the planter. ``new`` None: nothing to clean yet.
    """
    if new is None:
        return NOT_YET
    held = [rules.clean_out.levels[level] for level in clean_levels(old, new)]
    strictest = held[-1]
    places = _far(held)
    steps = {
        place: tuple(rules.clean_out.steps[place, how] for how in hows)
        for place, hows in places.items()
    }
    keys = _caution_keys(old, places)
    return CleanOut(
        level=strictest.level,
        name=" and ".join(rule.name for rule in held[::-1]),
        why=" ".join(rule.why for rule in held[::-1]),
        source="; ".join(dict.fromkeys(rule.source for rule in held[::-1])),
        trust=strictest.trust,
        levels=tuple(rule.level for rule in held),
        places=places,
        steps=steps,
        into=catch_label(old) if places else "",
        caution_keys=keys,
        cautions=rules.cautions.texts(keys),
        logged=any(rule.level in LOGGED for rule in held),
    )


def _far(held: list[LevelRule]) -> dict[CleanPlace, tuple[How, ...]]:
    """Join the levels: every place that any names, as far as all of them together ask."""
    joined = {
        place: frozenset[How]().union(*(rule.places.get(place, frozenset()) for rule in held))
        for place in CleanPlace
    }
    return {
        place: tuple(how for how in How if how in hows) for place, hows in joined.items() if hows
    }


def _caution_keys(
    old: SeedLot | None, places: Mapping[CleanPlace, tuple[How, ...]]
) -> tuple[str, ...]:
    if not places:
        return ()
    treated = old is None or old.treatment is Treatment.TREATED
    keys = ["treated", "treated_left"] if treated else []
    blown = any(How.BLOW in hows for hows in places.values())
    return (*keys, "dust") if treated or blown else tuple(keys)


def catch_label(old: SeedLot | None) -> str:
    """Return what to write on the container that takes the seed recovered from a lot."""
    if old is None:
        return "seed not known: not for planting, feed or grain"
    treated = old.treatment is Treatment.TREATED
    kind = f", {old.treatment_name or 'treated'}" if treated else ""
    name = f", {old.name}" if old.name else ""
    return f"lot {old.number}{name}{kind}"
