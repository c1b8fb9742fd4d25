"""What each tank or row hopper needs for a job: seed, packages, fills, and how far a fill goes."""

from dataclasses import dataclass

from changeover.planter.places import Place, Scope
from changeover.quantities import Q, Quantity
from changeover.seed import need, rate, row_layout, tanks
from changeover.seed.case import Case
from changeover.seed.crops import CropFigure

# ASABE D497.7, row-crop planters: 50 to 75 %, typically 65 %. The hours of a day's work count
# turns and filling in.
TYPICAL_EFFICIENCY = Q(65.0, "percent")
EFFICIENCY_SOURCE = "ASABE D497.7 (row-crop planters, typically 65 % of the time in work)"


@dataclass(frozen=True)
class Fill:
    """What a full tank or hopper holds and how far it goes, down to the reserve."""

    seeds: Quantity
    fills: int
    area: Quantity
    time: Quantity


@dataclass(frozen=True)
class TankNeed:
    """One tank or row hopper, or several alike: the rows that each feeds and what each needs.

    ``share`` is that of the rows that plant this lot, 0 to 1; ``packages`` are whole ones,
    rounded up for each tank, None when the package is not known; ``fill`` is None when
    capacity, bulk density or seed size is not.
    """

    places: tuple[Place, ...]
    rows: int
    share: float
    seeds: Quantity
    packages: need.Packages | None
    fill: Fill | None


def drawn_rate(case: Case, seed_rate: Quantity) -> Quantity:
    """Return the seeds that the field takes an area, over the pass, overlap and meter error in.

    The rows of this lot over the width of the pass: on a planter with split rows no row stands
    where passes join. Raises Refusal for input out of bounds. By definition.
    """
    per_length = rate.seeds_per_length(seed_rate, case.row_spacing)
    mean = row_layout.mean_rate(per_length, max(1, len(case.rows)), case.planter.width)
    job = case.job
    drawn: Quantity = mean * (1.0 + (job.overlap or 0.0)) * (1.0 - (job.meter_error or 0.0))
    return drawn


def seeds_for(case: Case, seed_rate: Quantity) -> Quantity:
    """Return the seeds that the rows of a case sow on the job's area, overlap counted in.

    Raises Refusal for input out of bounds.
    """
    return need.seeds_needed(case.job.planted_area, drawn_rate(case, seed_rate))


def bulk_density(case: Case) -> tuple[Quantity, CropFigure | None] | None:
    """Return the bulk density, and the crop's figure where the lot's own is not known."""
    if case.lot.bulk_density is not None:
        return case.lot.bulk_density, None
    figure = case.crop.best("bulk_density")
    return None if figure is None else (figure.middle, figure)


def tank_needs(
    case: Case, seed_rate: Quantity, packages: need.Packages | None
) -> tuple[TankNeed, ...]:
    """Return what each tank or row hopper of a case needs, those alike drawn together.

    Rows that are locked up take nothing; ``packages`` are those of the whole job, whose size
    counts. Raises Refusal for input out of bounds.
    """
    fed = _fed_rows(case)
    if not fed:
        return ()
    total = seeds_for(case, seed_rate)
    size = None if packages is None else packages.seeds_per_package
    alike: dict[int, list[Place]] = {}
    for place, rows in fed.items():
        alike.setdefault(rows, []).append(place)
    return tuple(
        _one(case, seed_rate, total, tuple(places), rows, size) for rows, places in alike.items()
    )


def _fed_rows(case: Case) -> dict[Place, int]:
    fed: dict[Place, int] = {}
    for row in case.rows:
        place = case.planter.place(Scope.TANK, row)
        fed[place] = fed.get(place, 0) + 1
    return fed


def _one(
    case: Case,
    seed_rate: Quantity,
    total: Quantity,
    places: tuple[Place, ...],
    rows: int,
    size: int | None,
) -> TankNeed:
    share = rows / len(case.rows)
    seeds = total * share
    packages = None if size is None else need.packages_needed(seeds, size)
    return TankNeed(places, rows, share, seeds, packages, _fill(case, seed_rate, share, seeds))


def _fill(case: Case, seed_rate: Quantity, share: float, seeds: Quantity) -> Fill | None:
    volume, dense = case.planter.tank_capacity, bulk_density(case)
    if volume is None or dense is None or case.seeds_per_mass is None:
        return None
    held = tanks.seeds_in_volume(volume, dense[0], case.seeds_per_mass[0])
    reserve = case.job.reserve or 0.0
    area = tanks.run_out_area(held, drawn_rate(case, seed_rate), share, reserve)
    speed = row_layout.field_capacity(case.planter.width, case.job.speed, TYPICAL_EFFICIENCY)
    fills = tanks.fills_needed(seeds, held * (1.0 - reserve))
    return Fill(held, fills, area, tanks.run_out_time(area, speed))


def stops_for_seed(
    case: Case, seed_rate: Quantity, found: tuple[TankNeed, ...]
) -> tuple[tanks.RefillStop, ...] | None:
    """Return where to stop for seed, by the tank that runs out first; None when not known.

    Raises Refusal when one fill does not last to the next place to stop.
    """
    filled = [one for one in found if one.fill is not None]
    if case.job.field.run_length is None or not filled:
        return None
    lasting = min(one.fill.seeds / one.share for one in filled if one.fill is not None)
    return tanks.refill_stops(
        case.job.planted_area,
        case.job.field.run_length,
        case.planter.width,
        lasting,
        drawn_rate(case, seed_rate),
        reserve=case.job.reserve or 0.0,
        runs_between_stops=1 if case.job.seed_at_both_ends else 2,
    )
