"""Variable-rate drives: motor speed through ratios, oil flow, and the ranges a motor allows."""

from collections.abc import Sequence
from math import prod

import numpy as np

from changeover.planter.drive import MotorDrive, MotorKind
from changeover.quantities import Q, Quantity, Refusal, Units, show
from changeover.seed import bounds, rate
from changeover.seed.rate import ALL, Count, Share


def ratio_of_stages(stages: Sequence[float]) -> float:
    """Return the whole ratio of a drive from its stages, each input turns per output turn.

    A chain stage is driven teeth / driver teeth. Raises Refusal for a stage out of bounds. By
    definition: ratios in a row multiply.
    """
    return prod(float(bounds.RATIO.of(stage)) for stage in stages)


def motor_speed(disc_speed: Quantity, ratio: Count) -> Quantity:
    """Return the motor's turns per minute that turn the disc at ``disc_speed``.

    ``ratio`` is motor turns in one disc turn; hydraulic and electric motors alike. Raises
    Refusal for input out of bounds. By definition.
    """
    return Q(bounds.DISC_SPEED.of(disc_speed) * bounds.RATIO.of(ratio), "rpm")


def oil_flow(
    speed: Quantity, displacement: Quantity, volumetric_efficiency: Share = ALL
) -> Quantity:
    """Return the oil that a hydraulic motor takes at a speed, volume per time.

    displacement · speed / volumetric efficiency; ``displacement`` is volume per turn. Raises
    Refusal for input out of bounds. By definition: gal/min = in³ · rpm / 231.
    """
    swept = bounds.MOTOR_SPEED.of(speed) * bounds.DISPLACEMENT.of(displacement)
    return Q(swept * 100.0 / bounds.EFFICIENCY.of(volumetric_efficiency), "l/min")


def motor_speed_from_flow(
    flow: Quantity, displacement: Quantity, volumetric_efficiency: Share = ALL
) -> Quantity:
    """Return the speed of a hydraulic motor from its oil flow: ``oil_flow`` turned round.

    Raises Refusal for input out of bounds.
    """
    used = bounds.OIL_FLOW.of(flow) * bounds.EFFICIENCY.of(volumetric_efficiency) / 100.0
    return Q(used / bounds.DISPLACEMENT.of(displacement), "rpm")


def motor_torque(
    pressure: Quantity, displacement: Quantity, mechanical_efficiency: Share = ALL
) -> Quantity:
    """Return the torque of a hydraulic motor from the pressure across it, a force times a length.

    pressure · displacement / 2π · mechanical efficiency. Raises Refusal for input out of bounds.
    By definition of work per turn: in·lb = psi · in³ / 2π.
    """
    work = bounds.OIL_PRESSURE.of(pressure) * 1e5 * bounds.DISPLACEMENT.of(displacement) * 1e-3
    share = bounds.EFFICIENCY.of(mechanical_efficiency) / 100.0
    return Q(work * share / (2.0 * np.pi), "N*m")


def seeds_per_second_range(drive: MotorDrive, cells: Count) -> tuple[Quantity, Quantity]:
    """Return the least and most seeds per second and row that the motor allows.

    Raises Refusal for cells out of bounds. By definition: cells · motor speed / ratio.
    """
    number = rate.whole_cells(cells)
    low, high = drive.least_speed.to("rpm").magnitude, drive.most_speed.to("rpm").magnitude
    per_turn = number / drive.ratio / 60.0
    return Q(low * per_turn, "seed/s"), Q(high * per_turn, "seed/s")


def ground_speed_range(
    drive: MotorDrive, seed_rate: Quantity, row_spacing: Quantity, cells: Count
) -> tuple[Quantity, Quantity]:
    """Return the slowest and fastest ground speed at which the motor can keep the seed rate.

    Raises Refusal for input out of bounds. By definition.
    """
    per_metre = rate.seeds_per_length(seed_rate, row_spacing)
    low, high = seeds_per_second_range(drive, cells)
    return (low / per_metre).to("m/s"), (high / per_metre).to("m/s")


def rate_range(
    drive: MotorDrive, speed: Quantity, row_spacing: Quantity, cells: Count
) -> tuple[Quantity, Quantity]:
    """Return the least and most seeds per area that the motor can drop at a ground speed.

    Raises Refusal for input out of bounds. By definition.
    """
    swept = Q(bounds.SPEED.of(speed) * bounds.ROW_SPACING.of(row_spacing), "m^2/s")
    low, high = seeds_per_second_range(drive, cells)
    return (low / swept).to("seed/m^2"), (high / swept).to("seed/m^2")


def oil_flow_at(
    drive: MotorDrive, disc_speed: Quantity, volumetric_efficiency: Share = ALL
) -> Quantity:
    """Return the oil flow of a hydraulic drive at a disc speed.

    Raises Refusal for an electric motor, a drive without displacement, or input out of bounds.
    """
    if drive.kind is not MotorKind.HYDRAULIC or drive.displacement is None:
        raise Refusal("Oil flow: this drive has no oil displacement; enter that of its motor.")
    return oil_flow(motor_speed(disc_speed, drive.ratio), drive.displacement, volumetric_efficiency)


def motor_warnings(
    drive: MotorDrive,
    seed_rate: Quantity,
    row_spacing: Quantity,
    speed: Quantity,
    cells: int,
    units: Units = Units.US,
) -> tuple[str, ...]:
    """Return a sentence for each limit of the motor that the job breaks; none when it fits.

    Scalars only. Each sentence states the speed needed, the limit, the ground speeds that work
    and the seed rates that the motor can drop at the planned speed. Raises Refusal for input out
    of bounds.
    """
    disc = rate.disc_speed_at(seed_rate, row_spacing, speed, cells)
    turns = motor_speed(disc, drive.ratio)
    if turns > drive.most_speed:
        limit = f"above its most, {show(drive.most_speed, 'disc_speed', units)}"
    elif turns < drive.least_speed:
        limit = f"below its least, {show(drive.least_speed, 'disc_speed', units)}"
    else:
        return ()
    slow, fast = ground_speed_range(drive, seed_rate, row_spacing, cells)
    few, many = rate_range(drive, speed, row_spacing, cells)
    says = (
        f"The {drive.kind} motor would turn at {show(turns, 'disc_speed', units)}, {limit}: "
        f"at this rate drive {show(slow, 'speed', units)} to {show(fast, 'speed', units)}, or at "
        f"{show(speed, 'speed', units)} sow {show(few, 'seed_rate', units)} to "
        f"{show(many, 'seed_rate', units)}."
    )
    return (says,)
