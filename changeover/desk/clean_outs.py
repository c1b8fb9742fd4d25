"""The clean-outs of one switch: for each tank or hopper, from which lot to which, and how far."""

from dataclasses import dataclass

from changeover.desk.plan_switch import WorkView
from changeover.desk.tables import switch_rules
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell, Setup
from changeover.seed.lots import SeedLot
from changeover.switch.clean_out import CleanOut, clean_out


@dataclass(frozen=True)
class TankClean:
    """Tanks (or row hoppers) with one clean-out: the lots by number, empty where not known."""

    tanks: tuple[Place, ...]
    old: str
    new: str
    clean: CleanOut


def clean_outs(view: WorkView) -> tuple[TankClean, ...]:
    """Return the clean-outs of a switch, those alike together, in the order of the tanks."""
    board = view.board
    pairs: dict[tuple[str, str], list[Place]] = {}
    for tank in board.planter.places(Scope.TANK):
        pairs.setdefault((_number(view.start, tank), _number(board.target, tank)), []).append(tank)
    return tuple(
        TankClean(
            tuple(tanks), old, new, clean_out(_lot(view, old), _lot(view, new), switch_rules())
        )
        for (old, new), tanks in pairs.items()
    )


def _number(setup: Setup, tank: Place) -> str:
    return str(setup.get(Cell("seed", tank)) or "")


def _lot(view: WorkView, number: str) -> SeedLot | None:
    return view.lots.get(number)
