"""Refusing to take away, or to give another code to, a part that a planter or the shelf holds."""

from changeover.planter.settings import Kind
from changeover.quantities import Refusal
from changeover.store.unit_of_work import UnitOfWork
from changeover.store.values import Side

_SAYS = {Side.AS_FOUND: "is mounted on", Side.TARGET: "is wanted on"}


def refuse_part_in_use(work: UnitOfWork, code: str) -> None:
    """Raise Refusal while a part is mounted or wanted on a planter, counted or in the manual.

    Saved setups and history do not count: they say what was.
    """
    keys = {setting.key for setting in work.settings.all() if setting.kind is Kind.PART}
    for name in work.planters.names():
        _refuse_on_planter(work, name, code, keys)
    held = sum(count.count for count in work.shelf.all() if count.part == code)
    if held:
        raise Refusal(f"Part {code}: the shelf holds {held}; set the count to 0 first.")
    for value in work.manual.all():
        if code == value.part or (value.setting in keys and code == value.value):
            raise Refusal(
                f"Part {code} is named in your manual's values for {value.crop}; its code must "
                "stay until they change."
            )


def _refuse_on_planter(work: UnitOfWork, name: str, code: str, keys: set[str]) -> None:
    for side in Side:
        for cell, value in work.cells.read(name, side).values.items():
            if cell.setting in keys and value == code:
                raise Refusal(
                    f"Part {code} {_SAYS[side]} {name} at {cell.place.label}; its code must stay "
                    "until then."
                )
    switch = work.switches.open(name)
    for cell, value in switch.before.values.items() if switch is not None else ():
        if cell.setting in keys and value == code:
            raise Refusal(
                f"Part {code} was mounted on {name} before its open switch; its code must stay "
                "until that is signed off."
            )
