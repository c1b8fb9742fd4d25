"""Row layouts: split rows locked up, twin rows, the width of a pass and the mean rate over it."""

from collections.abc import Collection

from changeover.quantities import Q, Quantity, Refusal
from changeover.seed import bounds
from changeover.seed.rate import Share


def rows_with_splits(main_rows: int) -> int:
    """Return the rows of a split-row planter: one between each pair of main rows, 2N − 1.

    Raises Refusal for fewer than one main row. By definition.
    """
    if main_rows < 1:
        raise Refusal("Split rows: a planter has at least one main row.")
    return 2 * main_rows - 1


def pass_width(main_rows: int, row_spacing: Quantity) -> Quantity:
    """Return the width of one pass: main rows · their spacing, split rows in or out of the ground.

    Raises Refusal for input out of bounds. By definition of the row that joins the next pass.
    """
    return Q(bounds.ROWS.of(main_rows) * bounds.ROW_SPACING.of(row_spacing), "m")


def planting_rows(rows: int, locked_up: Collection[int]) -> tuple[int, ...]:
    """Return the numbers of the rows that plant, those locked up left out.

    Rows count from 1. Raises Refusal when a locked row does not exist or none is left.
    """
    beyond = [row for row in locked_up if not 1 <= row <= rows]
    if beyond:
        raise Refusal(f"Locked-up rows: row {beyond[0]} does not exist; there are 1 to {rows}.")
    left = tuple(row for row in range(1, rows + 1) if row not in locked_up)
    if not left:
        raise Refusal("Locked-up rows: all rows are locked up; unlock at least one.")
    return left


def mean_rate(per_length: Quantity, rows: int, width: Quantity) -> Quantity:
    """Return seeds per area over the whole pass from seeds per length in each row that plants.

    seeds per length · rows / pass width. With 31 rows at 15 in on a 40 ft pass it is 31/32 of
    the rate in the row, as no split row stands where passes join. Raises Refusal for input out
    of bounds. By definition.
    """
    seeds = bounds.SEEDS_PER_LENGTH.of(per_length) * bounds.ROWS.of(rows)
    return Q(seeds / bounds.WIDTH.of(width), "seed/m^2")


def twin_row_spacing(rate: Quantity, pair_spacing: Quantity) -> Quantity:
    """Return the spacing of seeds in each of two twin rows, whose pairs stand at ``pair_spacing``.

    Twice the spacing of a single row at the same rate. Raises Refusal for input out of bounds.
    By definition.
    """
    return Q(2.0 / (bounds.RATE.of(rate) * bounds.ROW_SPACING.of(pair_spacing)), "m")


def field_capacity(width: Quantity, speed: Quantity, efficiency: Share) -> Quantity:
    """Return the area worked in a time: width · speed · efficiency.

    Raises Refusal for input out of bounds. Srivastava et al. 2006 (ASABE); Iowa State PM 696:
    acres an hour = ft · mph · efficiency / 8.25.
    """
    swept = bounds.WIDTH.of(width) * bounds.SPEED.of(speed)
    return Q(swept * bounds.EFFICIENCY.of(efficiency) / 100.0 * 0.36, "hectare/h")
