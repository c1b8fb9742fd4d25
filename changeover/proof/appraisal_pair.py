"""Two appraised planters side by side."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from changeover.proof.appraisal import Appraisal
from changeover.proof.wear import WearState


@dataclass(frozen=True)
class SideBySide:
    """What differs between two planters: rows by condition, and totals by currency.

    Each entry holds the first planter's figure and the second's; ``dearer`` names by currency
    the planter whose work costs more, None where they are equal. ``fair`` is False while either
    appraisal lacks a price.
    """

    planters: tuple[str, str]
    rows: Mapping[WearState, tuple[int, int]]
    totals: Mapping[str, tuple[Decimal, Decimal]]
    dearer: Mapping[str, str | None]
    fair: bool


def side_by_side(first: Appraisal, second: Appraisal) -> SideBySide:
    """Return two appraisals compared; amounts include tax as each price list states it."""
    names = (first.planter, second.planter)
    counts = [Counter(row.condition for row in one.rows if row.row) for one in (first, second)]
    sums = [{a.currency: a.total for a in one.totals} for one in (first, second)]
    codes = sorted({*sums[0], *sums[1]})
    totals = {
        code: (sums[0].get(code, Decimal(0)), sums[1].get(code, Decimal(0))) for code in codes
    }
    return SideBySide(
        names,
        {state: (counts[0][state], counts[1][state]) for state in WearState},
        totals,
        {code: _dearer(names, pair) for code, pair in totals.items()},
        first.complete and second.complete,
    )


def _dearer(names: tuple[str, str], pair: tuple[Decimal, Decimal]) -> str | None:
    if pair[0] == pair[1]:
        return None
    return names[0] if pair[0] > pair[1] else names[1]
