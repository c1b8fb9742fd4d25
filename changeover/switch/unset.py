"""Settings that nothing was chosen for: no proposal, nothing from the manual, nothing typed."""

from changeover.planter.machine import Planter
from changeover.planter.places import Place
from changeover.planter.settings import ALWAYS_THERE, Setting
from changeover.planter.setup import Cell, Setup
from changeover.switch.difference import locked_rows, work_settings
from changeover.switch.wording import listed, places_text


def without_target(
    planter: Planter, settings: tuple[Setting, ...], target: Setup
) -> tuple[tuple[Setting, tuple[Place, ...]], ...]:
    """Return the settings that every switch has and that the target leaves open, and where.

    Rows that the target locks up need none.
    """
    locked = locked_rows(planter, target)
    found = []
    for setting in work_settings(planter, settings):
        if setting.key in ALWAYS_THERE:
            places = tuple(
                place
                for place in planter.places(setting.scope)
                if place.row not in locked and target.get(Cell(setting.key, place)) is None
            )
            if places:
                found.append((setting, places))
    return tuple(found)


def unset_words(planter: Planter, settings: tuple[Setting, ...], target: Setup) -> tuple[str, ...]:
    """Say in one sentence which settings have no target; nothing where all have one."""
    missing = without_target(planter, settings, target)
    if not missing:
        return ()
    by_places: dict[tuple[Place, ...], list[str]] = {}
    for setting, places in missing:
        by_places.setdefault(places, []).append(setting.name.lower())
    where = [
        listed(names)
        if len(places) == len(planter.places(places[0].scope))
        else f"{listed(names)} at {places_text(places)}"
        for places, names in by_places.items()
    ]
    sentence = (
        f"No target is set for {', '.join(where)}: what is there stays. Enter it from your "
        "machine's manual, or keep it knowingly."
    )
    return (sentence,)
