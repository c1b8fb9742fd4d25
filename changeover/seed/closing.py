"""Closing force: the position from tilth and moisture, within the planter's own index."""

from changeover.planter.scales import Index
from changeover.quantities import show
from changeover.seed.case import Case
from changeover.seed.depth import Soil, soil_of
from changeover.seed.reasons import Input, Trust
from changeover.seed.rules import Rule, Rules
from changeover.seed.trust_order import Answer, no_ground, reasoned

RULE = "closing force by tilth and moisture"


def closing_share(
    rules: Rules, soil: Soil, *, wheel_track: bool = False
) -> tuple[float, tuple[Rule, ...]] | None:
    """Return the closing force as a share of the index, 0 the lightest, and the rules that held.

    The shares of the rules are added up and held between 0 and 1. None when no rule holds.
    Common practice, no source: the lightest position floats for soft or sandy ground, the
    strongest is for hard or untilled ground.
    """
    held = rules.all("closing", {**_things(soil), "wheel_track": "yes" if wheel_track else "no"})
    if not held:
        return None
    return max(0.0, min(1.0, sum(rule.gives for rule in held))), held


def closing_position(index: Index, share: float) -> int:
    """Return the position nearest to a share of the index, numbered from the lightest.

    Five positions are common practice, no source.
    """
    return 1 + round(share * (len(index) - 1) + 1e-9)


def answer_closing(case: Case, *, wheel_track: bool = False) -> Answer:
    """Return the closing position by rule alone, of a row in a ``wheel_track`` or another."""
    soil, index = soil_of(case), case.planter.closing
    found = closing_share(case.crop.rules, soil, wheel_track=wheel_track)
    if found is None:
        return no_ground(RULE, "No rule holds for this soil.")
    share, held = found
    position = closing_position(index, share)
    why = " ".join(rule.why for rule in held)
    parts = " ".join(f"{rule.gives:+g}" for rule in held)
    how = (
        f"shares of the index {parts}, held between 0 and 1 → position {position} of "
        f"{len(index)}, “{index.name(position)}”"
    )
    force = case.crop.best("closing_force")
    says = {Trust.PUBLISHED: _printed(case)} if force else {}
    cautions: tuple[str, ...] = (
        "Look into the furrow after a few rods: it must be closed and the seed not pressed bare.",
    )
    if wheel_track:
        cautions += ("This row runs behind a tire: dig here too when you set the depth.",)
    reason = reasoned(
        RULE,
        f"{why} Position “{index.name(position)}”.",
        held[0].source,
        held[0].trust,
        how=how,
        inputs=(
            Input("soil", soil.words),
            *((Input("wheel track", "yes"),) if wheel_track else ()),
        ),
        cautions=cautions,
        says=says,
    )
    return Answer(position, reason)


def _printed(case: Case) -> str:
    force = case.crop.best("closing_force")
    if force is None or force.low is None or force.high is None:
        return ""
    low, high = (show(end, "force", case.units) for end in (force.low, force.high))
    return f"{low} to {high}, {force.note} ({force.source}); a position’s force is your manual’s"


def _things(soil: Soil) -> dict[str, str]:
    return {
        "moisture": soil.moisture.value,
        "texture": soil.texture.value,
        "tillage": soil.tillage.value,
    }
