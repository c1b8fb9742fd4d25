"""The figures of a variable-rate drive: motor speed with the ranges that it allows, oil flow."""

from collections.abc import Iterator

from changeover.planter.drive import MotorDrive, MotorKind
from changeover.planter.places import Scope
from changeover.quantities import Quantity, show
from changeover.seed import drive as reckoning
from changeover.seed import rate
from changeover.seed.case import Case
from changeover.seed.reasons import Figure, Input, Reason, Trust

SOURCE = "your drive; by definition of its ratio"


def drive_figures(case: Case, seed_rate: Quantity, cells: int) -> Iterator[Figure]:
    """Give motor speed and oil flow for each drive group that works, alike ones drawn together.

    Raises Refusal for input out of bounds.
    """
    alike: dict[int, tuple[MotorDrive, list[str]]] = {}
    rows = set(case.rows)
    for group in case.planter.groups_of(Scope.DRIVE):
        drive = case.planter.drives.get(group.name)
        if isinstance(drive, MotorDrive) and rows & set(group.rows):
            same = next((key for key, (one, _) in alike.items() if one == drive), len(alike))
            alike.setdefault(same, (drive, []))[1].append(group.place.label)
    for number, (drive, names) in alike.items():
        end = f"_{number + 1}" if len(alike) > 1 else ""
        yield from _one(case, seed_rate, cells, drive, _listed(names), end)


def _one(
    case: Case, seed_rate: Quantity, cells: int, drive: MotorDrive, where: str, end: str
) -> Iterator[Figure]:
    turns = rate.disc_speed_at(seed_rate, case.row_spacing, case.job.speed, cells)
    speed = reckoning.motor_speed(turns, drive.ratio)
    inputs = (
        Input("disc speed", show(turns, "disc_speed", case.units)),
        Input("ratio", f"{drive.ratio:g}"),
        Input("cells", str(cells)),
    )
    how = "disc speed · ratio"
    why = _ranges(case, seed_rate, cells, drive)
    reason = Reason("motor speed", why, SOURCE, Trust.RECORD, how, inputs)
    yield Figure(f"motor_speed{end}", f"Motor speed, {where}", speed, "disc_speed", reason)
    if drive.kind is not MotorKind.HYDRAULIC or drive.displacement is None:
        return
    flow = reckoning.oil_flow_at(drive, turns)
    swept = show(drive.displacement, "displacement", case.units)
    why = f"{swept} a turn, no leakage counted; a worn motor takes more."
    how = "motor speed · displacement"
    caution = "Oil under pressure injects and burns: stop and relieve it before any line is opened."
    reason = Reason("oil flow", why, SOURCE, Trust.RECORD, how, inputs, (caution,))
    yield Figure(f"oil_flow{end}", f"Oil flow, {where}", flow, "oil_flow", reason)


def _ranges(case: Case, seed_rate: Quantity, cells: int, drive: MotorDrive) -> str:
    """Say at which ground speeds the motor keeps the rate, and what it can sow at the speed."""
    spacing, speed, units = case.row_spacing, case.job.speed, case.units
    slow, fast = reckoning.ground_speed_range(drive, seed_rate, spacing, cells)
    few, many = reckoning.rate_range(drive, speed, spacing, cells)
    low, high = drive.least_speed, drive.most_speed
    return (
        f"It turns {show(low, 'disc_speed', units, sign=False)} to "
        f"{show(high, 'disc_speed', units)}: at this rate drive "
        f"{show(slow, 'speed', units, sign=False)} to {show(fast, 'speed', units)}, or at "
        f"{show(speed, 'speed', units)} sow {show(few, 'seed_rate', units, sign=False)} to "
        f"{show(many, 'seed_rate', units)}."
    )


def _listed(names: list[str]) -> str:
    """Return names in a row: ``drive 1, drive 2 and drive 3``."""
    head = ", ".join(names[:-1])
    return f"{head} and {names[-1]}" if head else names[-1]
