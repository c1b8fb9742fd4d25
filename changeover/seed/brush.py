"""Brush: the one on the shelf or the meter that its owner marked for the crop."""

from changeover.planter.parts import Part
from changeover.seed.case import Case
from changeover.seed.reasons import Input, Trust
from changeover.seed.shelf_counts import to_hand
from changeover.seed.trust_order import Answer, no_ground, reasoned

RULE = "brush by its owner’s mark"


def answer_brush(case: Case, sort: str) -> Answer:
    """Return the brush for a case by its owner's marks alone, and a caution when there are too few.

    Of several that suit, the one made for this crop alone comes first, then the one of which
    most are to hand. Without any mark there is no ground.
    """
    suited = [part for part in case.parts if part.sort == sort and _suits(part, case)]
    ready = [part for part in suited if _count(part, case) > 0]
    if not ready:
        why = f"No {sort} to hand is marked for {case.name}."
        return no_ground(RULE, why)
    best = min(ready, key=lambda part: (len(part.suits), -_count(part, case), part.code))
    count, wanted = _count(best, case), len(case.rows)
    how = "; ".join(f"{part.code}: {_count(part, case)} usable" for part in ready)
    cautions: tuple[str, ...] = ()
    if count < wanted:
        cautions = (f"Only {count} usable {sort} {best.code} for {wanted} rows.",)
    reason = reasoned(
        RULE,
        f"{best.name} is marked for {case.name} on your shelf.",
        "your shelf",
        Trust.RECORD,
        how=how,
        inputs=(Input("crop", case.crop.name), Input("rows", str(wanted))),
        cautions=cautions,
        says={Trust.PUBLISHED: "no neutral figure found; the brush is your manual’s"},
    )
    return Answer(best.code, reason, warnings=cautions)


def _suits(part: Part, case: Case) -> bool:
    return bool(part.suits & case.crop.keys)


def _count(part: Part, case: Case) -> int:
    return to_hand(case, "brush", part.code)
