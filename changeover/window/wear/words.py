"""The words about wear: limits with their source, rates, acres left and counts of conditions."""

from collections import Counter
from collections.abc import Iterable

from changeover.desk.inspect_wear import Inspection
from changeover.proof.wear import WearLimit, WearRate, WearState, WearVerdict
from changeover.quantities import MEASURES, Quantity, Units, grouped, show, unit_sign

ORDER = (WearState.REPLACE, WearState.WATCH, WearState.GOOD, WearState.NO_LIMIT)


def day_words(inspection: Inspection) -> str:
    """Say the day of an inspection: ``3 May 2026``."""
    day = inspection.day
    return f"{day.day} {day:%B %Y}"


def past_words(inspection: Inspection, units: Units) -> str:
    """Say what goes with an inspection taken before: area done, variants, note."""
    worked = inspection.worked
    done = [f"{show(worked, 'area', units)} done by then"] if worked is not None else []
    return "; ".join(filter(None, [*done, *inspection.applies.values(), inspection.note]))


def bounds_words(limit: WearLimit, units: Units) -> str:
    """Say the bounds of a limit: ``least 14.50 in, new 15.00 in``; a look has none."""
    named = (("least", limit.low), ("most", limit.high), ("new", limit.new))
    said = [f"{name} {length(one, units)}" for name, one in named if one is not None]
    return ", ".join(said) or "one looks: good or replace"


def length(quantity: Quantity, units: Units) -> str:
    """Write a length of a part in the units shown."""
    return show(quantity, "diameter", units)


def source_words(limit: WearLimit) -> str:
    """Say where a limit comes from and how far it is to be trusted."""
    text, trust = limit.source.text, str(limit.source.trust)
    return text if trust in text else f"{text} ({trust})"


def rate_words(rate: WearRate | None, units: Units) -> str:
    """Say how fast a part wears and how long it will last, as far as two readings tell."""
    if rate is None:
        return ""
    if rate.reaches_limit is None and rate.area_left is None:
        return "No wear since it was read last."
    parts = []
    if rate.area_left is not None:
        parts.append(f"about {area_words(rate.area_left, units)} left at this rate")
    if rate.reaches_limit is not None:
        parts.append(f"at its limit about {rate.reaches_limit.isoformat()}")
    return "; ".join(parts).capitalize() + "."


def area_words(area: Quantity, units: Units) -> str:
    """Write an area that is foretold to two figures, which is all that two readings allow."""
    unit = MEASURES["area"].unit(units)
    size = float(area.to(unit).magnitude)
    return f"{grouped(float(f'{size:.2g}'), 0)} {unit_sign(unit)}"


def counts_words(verdicts: Iterable[WearVerdict]) -> str:
    """Count conditions in words: ``✕ 3 replace, ! 5 watch, ✓ 40 good``."""
    counts = Counter(one.condition for one in verdicts)
    said = [f"{state.mark} {counts[state]} {state}" for state in ORDER if counts[state]]
    return ", ".join(said) or "nothing read yet"
