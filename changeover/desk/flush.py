"""Flushing the old lot out with the new one until a purity limit is met, and the log of it."""

import re
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import cache

from changeover.bundled import bundled
from changeover.desk.clean_outs import clean_outs
from changeover.desk.plan_switch import WorkView
from changeover.desk.shop_edits import PutFlush
from changeover.planter.places import Place, Scope
from changeover.planter.settings import LOCKED_UP
from changeover.planter.setup import Cell
from changeover.quantities import Q, Quantity, Refusal, Units, how_many, show
from changeover.store.season_values import FlushRecord
from changeover.switch.clean_log import LogLine
from changeover.switch.dilution import Flush, PurityLimit, flush, limits_for, read_purity

_ONE_IN = re.compile(r"1\s*(?:in|:|/)\s*([\d ,]+)")

ASSUMED = (
    "Reckoned as if the old seed mixed at once with all the seed in a row, and each seed that "
    "leaves were replaced by a new one. How much is left in a row is yours to count: no published "
    "figure was found."
)


@dataclass(frozen=True)
class FlushCase:
    """What a flush is reckoned for: the lots, the rows that plant, and how they will be sown.

    ``limits`` are published ones for the next lot's crop and purity class.
    """

    planter: str
    old: str
    new: str
    rows: int
    row_spacing: Quantity
    seeds_per_length: Quantity
    limits: tuple[PurityLimit, ...]


@cache
def purity_limits() -> tuple[PurityLimit, ...]:
    """Return the purity limits that travel with the program."""
    return read_purity(bundled("resources", "purity.toml").read_text(encoding="utf-8"))


def flush_case(view: WorkView) -> FlushCase:
    """Return what a flush of a switch is reckoned for.

    Raises Refusal while no other lot is chosen, or no seed rate is wanted.
    """
    board = view.board
    others = [one for one in clean_outs(view) if one.old and one.old != one.new]
    if board.lot is None or not others:
        raise Refusal(f"{board.planter.name}: no other lot comes next, so nothing is flushed.")
    rate = _rate(view)
    rows = [row for row in board.planter.row_numbers if not _locked(view, row)]
    narrow = len(rows) > len(board.planter.main_rows)
    spacing = board.planter.narrow_spacing if narrow else board.planter.row_spacing
    return FlushCase(
        planter=board.planter.name,
        old=", ".join(dict.fromkeys(one.old for one in others)),
        new=board.lot.number,
        rows=len(rows),
        row_spacing=spacing,
        seeds_per_length=(rate * spacing).to("seed/m"),
        limits=limits_for(purity_limits(), _crop_key(board.lot.crop), str(board.lot.purity)),
    )


def _crop_key(crop: str) -> str:
    """Return the key of the limits of a crop: all dry beans have theirs in common."""
    return "dry_bean" if crop.startswith("dry_bean") else crop


def _rate(view: WorkView) -> Quantity:
    board = view.board
    for place in board.planter.places(Scope.DRIVE):
        rate = board.target.get(Cell("seed_rate", place))
        if rate is not None and not isinstance(rate, (int, str)):
            return rate
    raise Refusal(f"{board.planter.name}: no seed rate is wanted yet; set it on Switch first.")


def _locked(view: WorkView, row: int) -> bool:
    return view.board.target.get(Cell("row_lock", Place.of_row(row))) == LOCKED_UP


def reckon(case: FlushCase, residual: float, pool: float, limit: float) -> Flush:
    """Return what must run through each row until the share of old seed is the limit.

    ``residual`` and ``pool`` are seeds in one row. Raises Refusal for figures that cannot be.
    """
    return flush(residual, pool, limit, case.seeds_per_length, case.row_spacing, case.rows)


def flush_text(found: Flush, case: FlushCase, units: Units) -> str:
    """Say what a flush takes."""
    if not found.seeds:
        return "The limit is met from the first seed on: nothing has to be flushed."
    length, area = show(found.row_length, "row_length", units), show(found.area, "area", units)
    seeds = f"{found.seeds:,.0f}".replace(",", "\u202f")
    rows = how_many(case.rows, "row")
    return f"Each row has to drop {seeds} seeds: {length} of row, {area} with {rows}."


def limit_text(limit: PurityLimit) -> str:
    """Say a published limit: ``1 in 400 plants in the field (…)``."""
    if not limit.share:
        return f"none at all, {limit.of} ({limit.source})"
    one_in = 1 / limit.share
    plain = abs(one_in - round(one_in)) < 1e-6
    said = f"1 in {one_in:.0f}" if plain else f"{100 * limit.share:g} %"
    return f"{said} {limit.of} ({limit.source})"


def read_limit(text: str) -> float:
    """Read a limit such as ``0.1 %`` or ``1 in 400`` as a share. Raises Refusal."""
    typed = text.strip().removesuffix("of seeds").strip()
    one_in = _ONE_IN.fullmatch(typed)
    try:
        if one_in is not None:
            return 1 / float(one_in[1].replace(",", "").replace(" ", ""))
        return float(typed.removesuffix("%")) / (100 if typed.endswith("%") else 1)
    except (ValueError, ZeroDivisionError) as error:
        raise Refusal(f"“{text}” is no limit; write it like 0.1 % or 1 in 400.") from error


def read_seeds(text: str, what: str) -> float:
    """Read a number of seeds. Raises Refusal."""
    try:
        return float(text.strip().replace(",", "").replace(" ", ""))
    except ValueError as error:
        raise Refusal(f"{what}: “{text}” is no number of seeds; write it like 40.") from error


def log_flush(
    case: FlushCase,
    figures: tuple[float, float, float],
    who: str,
    *,
    measured: bool,
    now: datetime | None = None,
) -> PutFlush:
    """Return the edit that enters a flush into the log; ``figures`` as ``reckon`` takes them.

    Raises Refusal for figures that cannot be, or without a name.
    """
    found = reckon(case, *figures)
    residual, pool, limit = figures
    moment = now if now is not None else datetime.now(UTC)
    return PutFlush(
        FlushRecord(
            planter=case.planter,
            lot=case.new,
            residual=residual,
            limit=limit,
            seeds=round(found.seeds, 3),
            row_feet=round(float(found.row_length.to("ft").magnitude), 3),
            acres=round(float(found.area.to("acre").magnitude), 6),
            measured=measured,
            who=who.strip(),
            when=moment.astimezone(UTC).isoformat(timespec="seconds"),
            pool=pool,
        )
    )


def log_lines(records: tuple[FlushRecord, ...], old: str, units: Units) -> tuple[LogLine, ...]:
    """Return flushes as lines of the clean-out log."""
    return tuple(
        LogLine(
            when=one.when,
            who=one.who,
            where="every row that plants",
            what=f"flushed to 1 in {1 / one.limit:.0f}",
            lot_before=old,
            lot_after=one.lot,
            steps=(_counted(one), _flushed(one, units)),
        )
        for one in records
    )


def _counted(one: FlushRecord) -> str:
    said = "counted" if one.measured else "reckoned with"
    among = f" among {one.pool:g}" if one.pool else ""
    return f"{one.residual:g} old seeds{among} in a row, {said}"


def _flushed(one: FlushRecord, units: Units) -> str:
    length = show(Q(one.row_feet, "ft"), "row_length", units)
    area = show(Q(one.acres, "acre"), "area", units)
    return f"{one.seeds:.0f} seeds a row: {length} of row, {area}"
