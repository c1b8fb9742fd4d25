"""Brush: the one on the shelf or the meter that its owner marked for the crop."""

from changeover.planter.parts import Part
from changeover.seed.case import Case
from changeover.seed.reasons import Input, Trust
from changeover.seed.shelf_counts import shortage, to_hand, to_inspect
from changeover.seed.trust_order import Answer, no_ground, reasoned

RULE = "brush by its owner’s mark"


def answer_brush(case: Case, sort: str) -> Answer:
    """Return the brush for a case by its owner's marks alone, and a caution when there are too few.

    Of several that suit, those to hand come before those that only wait to be inspected; then
    the one made for this crop alone, then the one of which most are to hand. Without any mark
    there is no ground.
    """
    suited = [part for part in case.parts if part.sort == sort and _suits(part, case)]
    there = [part for part in suited if _count(part, case) + _waiting(part, case) > 0]
    if not there:
        why = f"No {sort} to hand is marked for {case.name}."
        return no_ground(RULE, why)
    best = min(there, key=lambda part: _order(part, case))
    wanted = len(case.rows)
    how = "; ".join(_told(part, case) for part in there)
    short = shortage(f"{sort} {best.code}", wanted, _count(best, case), _waiting(best, case))
    cautions = () if short is None else (short,)
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


def _order(part: Part, case: Case) -> tuple[bool, int, int, int, str]:
    count, waiting = _count(part, case), _waiting(part, case)
    return count == 0, len(part.suits), -count, -waiting, part.code


def _told(part: Part, case: Case) -> str:
    waiting = _waiting(part, case)
    more = f", {waiting} to inspect" if waiting else ""
    return f"{part.code}: {_count(part, case)} usable{more}"


def _waiting(part: Part, case: Case) -> int:
    return to_inspect(case.shelf, part.code)


def _suits(part: Part, case: Case) -> bool:
    return bool(part.suits & case.crop.keys)


def _count(part: Part, case: Case) -> int:
    return to_hand(case, "brush", part.code)
