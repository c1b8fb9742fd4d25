"""Cells for the cab and sprockets for a ground drive, with the rate that the pair gives."""

from changeover.planter.drive import GroundDrive, MotorDrive
from changeover.planter.parts import Part
from changeover.planter.places import Place
from changeover.quantities import Quantity, show
from changeover.seed.case import Case
from changeover.seed.drive import motor_warnings
from changeover.seed.reasons import Input, Trust
from changeover.seed.sprockets import SprocketPair, nearest_pairs
from changeover.seed.trust_order import Answer, no_ground, reasoned

# A pair further off than this is said so aloud (from memory).
FAR_OFF = 0.05
LISTED = 5


def answer_cells(disc: Part | None) -> Answer:
    """Return the cells to enter in the cab: those of the disc chosen."""
    rule = "cells of the disc"
    if disc is None:
        return no_ground(rule, "It follows from the disc, and none is proposed.")
    if disc.cells is None:
        return no_ground(rule, f"Enter on the shelf how many cells disc {disc.code} has.")
    why = f"Disc {disc.code} has {disc.cells} cells; the cab must be told."
    return Answer(
        disc.cells,
        reasoned(rule, why, "your shelf", Trust.RECORD, inputs=(Input("disc", disc.code),)),
    )


def answer_sprockets(
    case: Case, place: Place, seed_rate: Quantity | None, cells: int | None
) -> tuple[Answer, SprocketPair | None]:
    """Return the pair nearest to the rate for one drive group, and what it gives.

    A drive group with a motor, or without rate or cells, has no ground for a pair.
    """
    rule, drive = "nearest sprocket pair", case.planter.drives.get(place.name)
    if not isinstance(drive, GroundDrive):
        why = f"{place.label[:1].upper()}{place.label[1:]} has no sprockets to change."
        return Answer(None, reasoned(rule, why, "your planter", Trust.RECORD)), None
    if seed_rate is None or cells is None:
        return no_ground(rule, "It takes a seed rate and the cells of the disc."), None
    pairs = nearest_pairs(drive, seed_rate, cells, case.row_spacing)
    best, units = pairs[0], case.units
    wanted, given = (show(one, "seed_rate", units) for one in (seed_rate, best.rate))
    listed = [
        f"{pair.name}: {show(pair.rate, 'seed_rate', units)} ({pair.off:+.1%})"
        for pair in pairs[:LISTED]
    ]
    cautions: tuple[str, ...] = ()
    if abs(best.off) > FAR_OFF:
        far = f"The nearest pair of {place.label} is {_off(best.off)} the rate wanted"
        cautions = (f"{far}; no pair of this planter comes closer.",)
    inputs = (
        Input("seed rate wanted", wanted),
        Input("cells", str(cells)),
        Input("row spacing", show(case.row_spacing, "row_spacing", units)),
        Input("slip", f"{drive.slip:.1%}"),
    )
    reason = reasoned(
        rule,
        f"{best.name} gives {given}, {_off(best.off)} the {wanted} wanted.",
        "your planter’s own sprockets; by definition of a chain drive",
        Trust.RECORD,
        how="; ".join(listed),
        inputs=inputs,
        cautions=(*cautions, "Confirm by a catch test or by counting over a measured row."),
        says={Trust.RECORD: f"{best.name}, {given}"},
    )
    return Answer(best.name, reason, warnings=cautions), best


def _off(share: float) -> str:
    return f"{abs(share):.1%} {'above' if share >= 0 else 'below'}"


def drive_warnings(
    case: Case, place: Place, seed_rate: Quantity | None, cells: int | None
) -> tuple[str, ...]:
    """Return a sentence where the motor of a drive group cannot turn as fast or slow as asked."""
    drive = case.planter.drives.get(place.name)
    if not isinstance(drive, MotorDrive) or seed_rate is None or cells is None:
        return ()
    found = motor_warnings(drive, seed_rate, case.row_spacing, case.job.speed, cells, case.units)
    named = f"{place.label[:1].upper()}{place.label[1:]}"
    return tuple(f"{named}: {one}" for one in found)
