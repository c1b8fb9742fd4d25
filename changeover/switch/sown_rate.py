"""The seed rate that a drive group truly sows at its target: by its sprockets, else as entered."""

from changeover.planter.drive import GroundDrive
from changeover.planter.places import Place
from changeover.planter.setup import Cell, Value, working_rows, working_spacing
from changeover.quantities import Quantity, is_quantity
from changeover.seed.sprockets import pair_rate
from changeover.switch.plan import Plan


def sown_rate(plan: Plan, place: Place) -> Quantity | None:
    """Return the seeds per area of a drive group in the target, None where it is not known.

    A ground drive sows what its pair of sprockets and the cells of its discs give, whatever was
    wished for; without them, and for a motor, it is the rate entered.
    """
    drive = plan.planter.drives.get(place.name)
    pair = _pair(plan.target.get(Cell("sprockets", place)))
    cells = _cells(plan, place)
    if isinstance(drive, GroundDrive) and pair is not None and cells:
        spacing = working_spacing(plan.planter, plan.target)
        return pair_rate(drive, *pair, cells, spacing)
    wish = plan.target.get(Cell("seed_rate", place))
    return wish if is_quantity(wish) else None


def _pair(value: Value | None) -> tuple[int, int] | None:
    driver, stroke, driven = str(value or "").partition("/")
    whole = bool(stroke) and driver.isdecimal() and driven.isdecimal()
    return (int(driver), int(driven)) if whole else None


def _cells(plan: Plan, place: Place) -> int | None:
    """Return the cells of the discs that a drive group is to turn; None when they differ."""
    down = set(working_rows(plan.planter, plan.target))
    rows = (row for row in plan.planter.rows_of(place) if row in down)
    codes = {plan.target.get(Cell("disc", Place.of_row(row))) for row in rows}
    counts = {part.cells for code in codes if (part := plan.parts.get(str(code))) is not None}
    if len(counts) == 1 and (count := counts.pop()):
        return count
    entered = plan.target.get(Cell("cells", place))
    return entered if isinstance(entered, int) and not counts else None
