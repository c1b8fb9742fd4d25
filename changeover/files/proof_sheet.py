"""What a printed proof says: its title, what it is of, and its parts, as plain values."""

from dataclasses import dataclass, field


@dataclass(frozen=True)
class ReportBars:
    """A histogram: counts by class, the x at the end of each class, a target, and zone ends."""

    counts: tuple[int, ...]
    ends: tuple[float, ...]
    target: float
    zones: tuple[float, ...]
    axis: str


@dataclass(frozen=True)
class ReportTable:
    """A table: the titles of its columns, and its lines as texts."""

    titles: tuple[str, ...]
    lines: tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class ReportPart:
    """One numbered part of a report: a heading, then sentences, tables and a histogram."""

    heading: str
    sentences: tuple[str, ...] = ()
    tables: tuple[ReportTable, ...] = ()
    bars: ReportBars | None = None


@dataclass(frozen=True)
class ProofReport:
    """A whole report: title, what it is of as pairs of name and value, and its parts."""

    title: str
    about: tuple[tuple[str, str], ...]
    parts: tuple[ReportPart, ...] = field(default_factory=tuple)
