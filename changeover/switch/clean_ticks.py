"""Which cleaning a tick stands for: of which lot's seed, how far, and until that lot is back.

The key of a task that cleans reads ``clean_tank.H-9/different_crop+treated_to_untreated``: the
work, the lots whose seed is cleaned out, the levels asked. A tick under it counts for any later
plan that cleans out the same seed no further than those levels did.
"""

from collections.abc import Iterable, Mapping

from changeover.planter.places import Place
from changeover.switch.clean_rules import CleanLevel, CleanPlace, CleanRules, How
from changeover.switch.tasks import Task, Tick

FILL = "fill"
NOT_KNOWN = "not known"
CLEANING = frozenset(
    {"clean_tank", "clean_hose", "clean_tube", "meter", "clean_floor", "inspect_clean"}
)
_SIGNS = str.maketrans({"/": "∕", "~": "∼", "|": "¦"})  # signs that part the words of a key


def lot_word(number: str) -> str:
    """Return a lot's number as one word of a key."""
    return number.translate(_SIGNS) or NOT_KNOWN


def clean_key(work: str, lots: Iterable[str], levels: Iterable[CleanLevel], rest: str = "") -> str:
    """Return the key of a task that cleans the seed of lots out."""
    words = "|".join(sorted({lot_word(lot) for lot in lots}))
    asked = set(levels)
    mark = "+".join(level for level in CleanLevel if level in asked)
    return f"{work}.{words}/{mark}" + (f"/{rest}" if rest else "")


def cleaning(places: Mapping[CleanPlace, Iterable[How]], *at: CleanPlace) -> frozenset[str]:
    """Return how far places are cleaned as words: ``meter: vacuum``. ``at`` none: all of them."""
    return frozenset(f"{place}: {how}" for place in at or places for how in places.get(place, ()))


def words_of_levels(rules: CleanRules) -> dict[str, frozenset[str]]:
    """Return what each level of clean-out cleans, as words, by the level's name."""
    return {level.value: cleaning(rule.places) for level, rule in rules.levels.items()}


class Cleaned:
    """What ticks say has been cleaned; ``levels`` are those of ``words_of_levels``."""

    def __init__(self, ticks: Iterable[Tick], levels: Mapping[str, frozenset[str]]) -> None:
        every = tuple(ticks)
        filled = _filled(every)
        self._far: dict[tuple[str, Place], frozenset[str]] = {}
        for tick in every:
            family, mark = _parted(tick.task)
            work, _, lots = family.partition(".")
            since = max((filled.get(lot, "") for lot in lots.split("|")), default="")
            if work in CLEANING and tick.when >= since:
                done = frozenset[str]().union(
                    *(levels.get(level, frozenset()) for level in mark.split("+"))
                )
                at = (family, tick.place)
                self._far[at] = self._far.get(at, frozenset()) | done

    def has(self, task: Task, place: Place) -> bool:
        """Say whether a place was cleaned as far as a task asks, since that seed came in."""
        return task.cleans <= self._far.get((task.family, place), frozenset())

    def any_at(self, task: Task, tick: Tick) -> bool:
        """Say whether a tick is of the very seed that a task cleans out, however far."""
        family, _ = _parted(tick.task)
        return family == task.family and (family, tick.place) in self._far


def _filled(ticks: Iterable[Tick]) -> dict[str, str]:
    """Return the time at which each lot was last filled in."""
    found: dict[str, str] = {}
    for tick in ticks:
        family, lot = _parted(tick.task)
        if family == FILL:
            found[lot_word(lot)] = max(found.get(lot_word(lot), ""), tick.when)
    return found


def _parted(key: str) -> tuple[str, str]:
    family, _, rest = key.partition("/")
    return family, rest.partition("~")[0].partition("/")[0]
