"""Singulator: the share of the cell left open by crop and seed shape, moved by bench evidence."""

from changeover.planter.parts import Part
from changeover.planter.scales import Index
from changeover.quantities import Refusal
from changeover.seed.case import Case
from changeover.seed.reasons import Input, Trust
from changeover.seed.rules import Rule
from changeover.seed.trust_order import Answer, no_ground, reasoned

RULE = "singulator by crop and seed shape"
# A bench run that tells skips from doubles by less than this is no ground to move (from memory).
LEAST_GAP = 0.005
BENCH = "Confirm by a bench run: doubles high, cover more; skips high, cover less."


def share_wanted(case: Case) -> Rule | None:
    """Return the rule for the share of the cell to leave open, None when none holds."""
    things = {"family": case.crop.family}
    if case.size is not None and case.size.shape is not None:
        things["shape"] = case.size.shape.value
    return case.crop.rules.first("singulator", things)


def answer_singulator(case: Case, disc: Part | None) -> Answer:
    """Return the index position for a case by rule alone, the nearest to the share wanted."""
    index, shape = case.planter.singulator, case.size.shape if case.size else None
    rule = share_wanted(case)
    if rule is None:
        return no_ground(RULE, f"No rule is known for {case.name}.")
    position = index.nearest_share(rule.gives)
    if position is None:
        return no_ground(RULE, "The planter’s index does not say what share each position leaves.")
    name = index.name(position)
    how = f"share wanted {rule.gives:g} → nearest position “{name}”, {position} of {len(index)}"
    there = index.positions[position - 1].open_share
    cautions: tuple[str, ...] = (BENCH,)
    if there is not None and abs(there - rule.gives) > 1e-9:
        cautions += (f"The index has no position that leaves {rule.gives:.0%}; it is the nearest.",)
    inputs = (
        Input("crop", case.crop.name),
        Input("seed shape", shape.value if shape else "not known"),
        Input("disc", disc.code if disc else "not known"),
    )
    why = f"{rule.why} Position “{name}”."
    reason = reasoned(
        RULE, why, rule.source, rule.trust, how=how, inputs=inputs, cautions=cautions, says=_print()
    )
    return Answer(position, reason)


def _print() -> dict[Trust, str]:
    return {
        Trust.PUBLISHED: "no position; rounder seed gives more singles (Karayel, Barut & Özmerzi "
        "2004, Biosystems Engineering 87(4):437-444)"
    }


def moved_by_bench(index: Index, position: int, skips: float, doubles: float) -> int:
    """Return the position to try next, given the shares of skips and doubles at ``position``.

    Doubles above skips ask for more cover, skips above doubles for less: one step, never beyond
    the index, and none when they are within half a percent. Positions are numbered from 1; their
    open shares decide which way is more cover. Raises Refusal for shares outside 0 to 1, a
    position that does not exist, or an index without shares. Direction: common practice.
    """
    if not 0 <= skips <= 1 or not 0 <= doubles <= 1 or skips + doubles > 1:
        raise Refusal("Bench run: skips and doubles are shares from 0 to 1, together at most 1.")
    if not 1 <= position <= len(index):
        raise Refusal(f"Singulator: position {position} does not exist; give 1 to {len(index)}.")
    shares = [one.open_share for one in index.positions]
    known = [share for share in shares if share is not None]
    here = shares[position - 1]
    if len(known) < len(shares) or here is None:
        raise Refusal("Singulator: enter what share of the cell each position leaves open.")
    if abs(skips - doubles) < LEAST_GAP:
        return position
    beyond = [share for share in known if (share < here if doubles > skips else share > here)]
    if not beyond:
        return position
    return shares.index(max(beyond) if doubles > skips else min(beyond)) + 1
