"""Parts that are too few for two planters at once, so that jobs with them must take turns."""

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence

from changeover.desk.look_up import Known
from changeover.planter.settings import Kind
from changeover.planter.setup import Setup
from changeover.switch.kit import usable


def scarce_parts(
    fleet: Sequence[Known], setups: Mapping[tuple[str, str], Setup]
) -> dict[str, frozenset[str]]:
    """Return for each job the parts it needs of which only one planter can have a set at a time.

    ``setups`` maps planter and job to what the planter is set to for it. A part is scarce when
    those on the shelf and on all planters are fewer than the two smallest sets of two planters.
    """
    needs: dict[str, dict[str, int]] = defaultdict(dict)
    users: dict[str, set[str]] = defaultdict(set)
    for (planter, job), setup in setups.items():
        known = next(one for one in fleet if one.planter.name == planter)
        for part, count in parts_in(known, setup).items():
            needs[part][planter] = max(count, needs[part].get(planter, 0))
            users[job].add(part)
    held = _held(fleet)
    scarce = {
        part
        for part, sets in needs.items()
        if len(sets) > 1 and sum(sorted(sets.values())[:2]) > held[part]
    }
    return {job: frozenset(parts & scarce) for job, parts in users.items()}


def parts_in(known: Known, setup: Setup) -> Counter[str]:
    """Return how many of each part a setup has."""
    kinds = {setting.key for setting in known.settings if setting.kind is Kind.PART}
    return Counter(str(v) for cell, v in setup.values.items() if cell.setting in kinds)


def _held(fleet: Sequence[Known]) -> Counter[str]:
    held: Counter[str] = Counter()
    for known in fleet:
        held += parts_in(known, known.as_found)
    for known in fleet[:1]:
        for part in known.parts:
            held[part.code] += usable(part.code, known.shelf)
    return held
