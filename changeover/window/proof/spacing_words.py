"""A spacing test as lines of a table, and in words, in the convention that was chosen."""

from dataclasses import dataclass

from changeover.desk.prove.spacing import JudgedSpacing
from changeover.proof.bench import Standing
from changeover.proof.bootstrap import SpacingIntervals
from changeover.proof.intervals import Interval
from changeover.proof.spacing import Indices, SpacingMeasures
from changeover.proof.wording import percent
from changeover.quantities import Units, show
from changeover.window.entry.list_table import Column

SPACINGS, POSITIONS = "by spacings", "by drop positions"
EXPLAINED = {
    SPACINGS: "Shares of all spacings (Kachman & Smith 1995).",
    POSITIONS: "Shares of the places where a seed should lie (ISO 7256-1, from memory).",
}


@dataclass(frozen=True)
class SpacingLine:
    """One row of the table; ``row`` is None for all rows together."""

    row: int | None
    measures: SpacingMeasures
    standing: Standing


def spacing_lines(judged: JudgedSpacing) -> tuple[SpacingLine, ...]:
    """Return the line of all rows together, then one for each row."""
    whole = SpacingLine(None, judged.overall, judged.overall_verdict.standing)
    return (
        whole,
        *(SpacingLine(row, one, judged.verdicts[row].standing) for row, one in judged.rows.items()),
    )


def spacing_columns(convention: str, units: Units) -> tuple[Column[SpacingLine], ...]:
    """Return the columns of the table in one convention."""

    def share(name: str) -> Column[SpacingLine]:
        def text(line: SpacingLine) -> str:
            indices = indices_of(line.measures, convention)
            return percent(getattr(indices, name)) if indices.meaningful else "not meaningful"

        title = {"quality_of_feed": "Feed", "multiples": "Multiples", "misses": "Misses"}[name]
        return Column(title, text, number=True)

    return (
        Column("Row", lambda line: "all" if line.row is None else str(line.row), number=True),
        Column("N", lambda line: str(line.measures.n), number=True),
        Column("Mean", lambda line: show(line.measures.mean, "spacing", units), number=True),
        share("quality_of_feed"),
        share("multiples"),
        share("misses"),
        Column("Precision", lambda line: _or_dash(line.measures.precision_ref), number=True),
        Column("CP3", lambda line: percent(line.measures.cp3_target), number=True),
        Column("Rate", lambda line: percent(line.measures.rate_share), number=True),
        Column(
            "Verdict",
            lambda line: str(line.standing),
            loud=lambda line: line.standing is Standing.SHORT,
            wide=True,
        ),
    )


def indices_of(measures: SpacingMeasures, convention: str) -> Indices:
    """Return the indices in one convention."""
    return measures.by_spacings if convention == SPACINGS else measures.by_positions


def figures_said(
    measures: SpacingMeasures,
    convention: str,
    found: SpacingIntervals | None,
    units: Units,
) -> tuple[tuple[str, str], ...]:
    """Return the figures as pairs of name and value, with intervals where they are known."""
    shares = indices_of(measures, convention)
    tail = "by_spacings" if convention == SPACINGS else "by_positions"
    named = (
        ("Quality of feed", "quality_of_feed"),
        ("Multiples", "multiples"),
        ("Misses", "misses"),
    )
    short = measures.shortage
    indices = [
        (
            title,
            f"{percent(getattr(shares, name))}{_bounds(found, f'{name}_{tail}')}"
            if shares.meaningful
            else "not meaningful: seeds in clusters",
        )
        for title, name in named
    ]
    sd = "–" if measures.sd is None else show(measures.sd, "spacing", units)
    return (
        *indices,
        ("Precision over target", _with(measures.precision_ref, found, "precision_ref")),
        ("Precision over mean", _with(measures.precision_mean, found, "precision_mean")),
        ("Mean, SD", f"{show(measures.mean, 'spacing', units)}, {sd}"),
        ("CP3 about target", percent(measures.cp3_target)),
        ("CP3 about mode", percent(measures.cp3_mode)),
        ("Rate achieved", percent(measures.rate_share)),
        ("Seeds missing", f"{percent(short.total)}, of it:"),
        ("   by skips", percent(short.skips)),
        ("   by doubles", percent(short.doubles)),
        ("   by spread", percent(short.spread)),
    )


def _with(share: float | None, found: SpacingIntervals | None, name: str) -> str:
    return f"{_or_dash(share)}{_bounds(found, name)}"


def _bounds(found: SpacingIntervals | None, name: str) -> str:
    one: Interval | None = None if found is None else getattr(found, name)
    return "" if one is None else f" ({percent(one.low)} to {percent(one.high)})"


def _or_dash(share: float | None) -> str:
    return "–" if share is None else percent(share)
