"""The seed rate of every sprocket pair of a ground drive, beside the pair that is proposed."""

from dataclasses import dataclass

from changeover.desk.board import Board
from changeover.planter.drive import GroundDrive
from changeover.planter.places import Place
from changeover.planter.setup import Cell, Setup, working_spacing
from changeover.quantities import MEASURES
from changeover.seed.sprockets import rate_table


@dataclass(frozen=True)
class RateTable:
    """Rates by pair in ``unit``: a line for each driver, a column for each driven sprocket."""

    driver: tuple[int, ...]
    driven: tuple[int, ...]
    rates: tuple[tuple[float, ...], ...]
    unit: str


def rates_on(board: Board, drive_group: Place) -> RateTable | None:
    """Return the rates with the cells and row spacing that are wanted, in the units of the board.

    None for a drive without sprockets, or where no cells are known.
    """
    drive = board.planter.drives.get(drive_group.name)
    wanted = _wanted(board)
    cells = wanted.get(Cell("cells", drive_group))
    if not isinstance(drive, GroundDrive) or not isinstance(cells, int):
        return None
    spacing = working_spacing(board.planter, wanted)
    unit = MEASURES["seed_rate"].unit(board.units)
    rates = rate_table(drive, cells, spacing).to(unit).magnitude
    return RateTable(
        tuple(sorted(drive.driver)),
        tuple(sorted(drive.driven)),
        tuple(tuple(float(rate) for rate in line) for line in rates),
        unit,
    )


def _wanted(board: Board) -> Setup:
    """Return what is wanted, else proposed, else as found."""
    proposed = board.proposal.values() if board.proposal is not None else {}
    return Setup({**board.as_found.values, **proposed, **board.target.values})
