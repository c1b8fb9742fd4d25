"""Residual seed in a row and its dilution by the next lot, until a purity limit is met."""

import math
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass

from changeover.quantities import Q, Quantity, Refusal
from changeover.seed.reasons import Trust


@dataclass(frozen=True)
class PurityLimit:
    """The greatest share of other seed that a class of a crop may have, 0 to 1, and who says so.

    A ``share`` of 0 means none at all, which no dilution meets.
    """

    crop: str
    purity: str
    share: float
    of: str
    source: str
    trust: Trust


@dataclass(frozen=True)
class Flush:
    """What must run through one row until the limit is met.

    ``seeds`` per row; ``row_length`` of one row and ``area`` of all rows together;
    ``left`` is the old seed still in the row then, and ``passed`` what came out of it.
    """

    seeds: float
    row_length: Quantity
    area: Quantity
    left: float
    passed: float


def read_purity(text: str) -> tuple[PurityLimit, ...]:
    """Read the table of purity limits (TOML text). Raises Refusal for a limit that lacks a part."""
    return tuple(_limit(entry) for entry in tomllib.loads(text).get("limit", ()))


def _limit(entry: Mapping[str, object]) -> PurityLimit:
    try:
        share = 1 / float(str(entry["one_in"])) if "one_in" in entry else float(str(entry["share"]))
        limit = PurityLimit(
            str(entry["crop"]),
            str(entry["purity"]),
            share,
            str(entry["of"]),
            str(entry["source"]),
            Trust(str(entry["trust"])),
        )
    except (KeyError, ValueError, ZeroDivisionError) as error:
        raise Refusal(
            f"A purity limit of “{entry.get('crop', '?')}” is not whole ({error}); give crop, "
            "purity, one_in or share, of, source and trust."
        ) from error
    _share(limit.share, f"The purity limit of “{limit.crop}”")
    return limit


def limits_for(limits: tuple[PurityLimit, ...], crop: str, purity: str) -> tuple[PurityLimit, ...]:
    """Return the limits of a crop's purity class, those that hold for any crop last."""
    own = [limit for limit in limits if limit.purity == purity and limit.crop == crop]
    return (*own, *(limit for limit in limits if limit.purity == purity and limit.crop == "any"))


def old_share(residual: float, pool: float, seeds: float) -> float:
    """Return the share of old seed in what comes out after ``seeds`` seeds of a row.

    share = residual / pool · exp(−seeds / pool): the old seed is mixed at once with all the
    ``pool`` seeds that the row holds, and each seed that leaves is replaced by a new one. This
    first-order mixing is our assumption; no published residual or flush of a planter was found.
    Raises Refusal when the figures cannot be.
    """
    _amounts(residual, pool)
    if seeds < 0:
        raise Refusal(f"{seeds:g} seeds cannot have run through a row; give 0 or more.")
    return residual / pool * math.exp(-seeds / pool)


def seeds_to_flush(residual: float, pool: float, limit: float) -> float:
    """Return the seeds of one row until the share of old seed in what comes out is the limit.

    seeds = pool · ln(residual / (pool · limit)), 0 where the limit is met from the beginning.
    ``residual`` and ``pool`` are seeds, ``limit`` a share over 0 to 1. Raises Refusal for a
    limit of none, which no dilution meets, and figures that cannot be.
    """
    _amounts(residual, pool)
    _share(limit, "The purity limit")
    if not limit:
        raise Refusal(
            "A purity limit of none is never met by flushing; clean the row and inspect it empty."
        )
    if residual <= pool * limit:
        return 0.0
    return pool * math.log(residual / (pool * limit))


def flush(
    residual: float,
    pool: float,
    limit: float,
    seeds_per_length: Quantity,
    row_spacing: Quantity,
    rows: int,
) -> Flush:
    """Return the seeds, row length and area to plant until the share of old seed is the limit.

    ``residual`` is the old seed left in each row and ``pool`` the seeds mixing in it (counts);
    ``seeds_per_length`` the seeds that a row drops over a length; ``rows`` how many rows are
    flushed. Raises Refusal as ``seeds_to_flush`` does, and for rates and rows not over 0.
    """
    per_metre = float(seeds_per_length.to("seed/m").magnitude)
    if per_metre <= 0 or row_spacing.to("m").magnitude <= 0 or rows < 1:
        raise Refusal("A flush needs seeds per length, row spacing and rows over 0; enter them.")
    seeds = seeds_to_flush(residual, pool, limit)
    length = Q(seeds / per_metre, "m")
    left = residual * math.exp(-seeds / pool)
    area = (rows * length * row_spacing).to("hectare")
    return Flush(seeds, length, area, left, residual - left)


def stray_share(strays: float, row_length: Quantity, seeds_per_length: Quantity) -> float:
    """Return stray seeds found on a length of row as a share of the seeds planted there."""
    planted = float((row_length * seeds_per_length).to("seed").magnitude)
    if planted <= 0 or strays < 0:
        raise Refusal("Strays need a row length and a rate over 0, and a count of 0 or more.")
    return strays / planted


def strays_allowed(limit: float, row_length: Quantity, seeds_per_length: Quantity) -> float:
    """Return the stray seeds on a length of row at which a share of the seeds is reached."""
    _share(limit, "The purity limit")
    return limit * float((row_length * seeds_per_length).to("seed").magnitude)


def _amounts(residual: float, pool: float) -> None:
    if not (math.isfinite(pool) and pool > 0) or not 0 <= residual <= pool:
        raise Refusal(
            f"{residual:g} old seeds among {pool:g} in a row cannot be; give a pool over 0 and a "
            "residual from 0 to the pool."
        )


def _share(share: float, what: str) -> None:
    if not 0 <= share <= 1:
        raise Refusal(f"{what} is a share of {share:g}; give one from 0 to 1 (0.1 % is 0.001).")
