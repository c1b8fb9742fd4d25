"""What tuning says, in short lines: best level, gain, next level to try, and the verdict."""

from dataclasses import dataclass

from changeover.quantities import MEASURES, Q, Quantity, Units, show
from changeover.seed.tuning_advice import Advice


@dataclass(frozen=True)
class TuningWords:
    """The headline, the whole verdict, and lines below it; ``target`` is the level to take."""

    head: str
    verdict: str
    lines: tuple[str, ...] = ()
    target: Quantity | None = None


def tuning_words(advice: Advice, units: Units) -> TuningWords:
    """Return what there is to say of an advice."""
    lines = (_error(advice), _gain(advice), _next(advice, units))
    return TuningWords(
        _head(advice, units),
        advice.says.partition(": ")[2][:1].upper() + advice.says.partition(": ")[2][1:],
        tuple(line for line in lines if line),
        target_level(advice, units),
    )


def target_level(advice: Advice, units: Units) -> Quantity | None:
    """Return the best level, rounded as it is shown, for it is set by a gauge; None if unknown."""
    if advice.best is None:
        return None
    shown = MEASURES["pressure"]
    unit = shown.unit(units)
    return Q(round(float(advice.best.to(unit).magnitude), shown.digits(units)), unit)


def _head(advice: Advice, units: Units) -> str:
    if advice.best is None or advice.low is None or advice.high is None:
        return f"Not decided: {advice.verdict.value}"
    low = show(advice.low, "pressure", units, sign=False)
    high = show(advice.high, "pressure", units, sign=False)
    return f"Best {show(advice.best, 'pressure', units)} ({low} to {high})"


def _error(advice: Advice) -> str:
    if advice.error is None or advice.error_low is None or advice.error_high is None:
        return ""
    ends = f"{100 * advice.error_low:.1f} to {100 * advice.error_high:.1f}"
    return f"Skips and doubles there: {100 * advice.error:.1f} % of the cells ({ends})"


def _gain(advice: Advice) -> str:
    if advice.gain is None or advice.gain_low is None or advice.gain_high is None:
        return ""
    ends = f"{100 * advice.gain_low:.1f} to {100 * advice.gain_high:.1f}"
    return f"Gain over the present level: {100 * advice.gain:.1f} % of the cells ({ends})"


def _next(advice: Advice, units: Units) -> str:
    if advice.next_level is None:
        return ""
    return f"Next level to try: {show(advice.next_level, 'pressure', units)}"
