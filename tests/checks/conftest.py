"""The recorder of checks against outside sources, and the page of documentation made from it."""

from collections.abc import Callable
from dataclasses import asdict, dataclass
from pathlib import Path

import pytest

PAGE = Path(__file__).resolve().parents[2] / "docs" / "outside-checks.md"
TRUSTS = ("your manual", "your record", "published", "common practice", "from memory", "derived")

HEAD = """# Checks against outside sources

Made from the tests by `python -m pytest tests/checks --write-outside-checks`; do not edit.
“Derived” is arithmetic from definitions. A print error is a printed figure that arithmetic
contradicts: there the test holds the program to the arithmetic, and the note says why.

"""
COLUMNS = "| calculation | source | trust | printed | Changeover | unit | tolerance | note |\n"


@dataclass(frozen=True)
class Row:
    """One figure printed elsewhere beside the program's own."""

    calculation: str
    source: str
    trust: str
    printed: float
    ours: float
    unit: str
    tolerance: float
    note: str
    print_error: bool = False

    def cells(self) -> str:
        """Return the row as one line of a Markdown table."""
        shown = {
            **asdict(self),
            "printed": f"{self.printed:.8g}",
            "ours": f"{round(self.ours, 9) + 0.0:.6g}",
        }
        shown["tolerance"] = f"{self.tolerance:.3g}"
        if self.print_error:
            shown["printed"] += " (print error)"
        del shown["print_error"]
        return "| " + " | ".join(str(cell).replace("|", "/") for cell in shown.values()) + " |\n"


RowKey = tuple[str, int]
ROWS = pytest.StashKey[dict[RowKey, Row]]()
OutsideCheck = Callable[..., None]


@pytest.fixture
def outside_check(request: pytest.FixtureRequest) -> OutsideCheck:
    """Return a function that holds a figure to a printed one and records the row.

    With ``print_error=True`` the printed figure is known to be wrong and ``derived`` is what the
    program is held to; the note says why.
    """
    rows = request.config.stash.setdefault(ROWS, {})

    def check(*, derived: float | None = None, **fields: object) -> None:
        row = Row(**{"note": "", **fields})  # type: ignore[arg-type]
        row = Row(**{**asdict(row), "printed": float(row.printed), "ours": float(row.ours)})
        number = sum(1 for node, _ in rows if node == request.node.nodeid)
        rows[(request.node.nodeid, number)] = row
        assert row.trust in TRUSTS, f"{row.trust!r} is not a level of trust"
        assert row.source, "an outside check names its source"
        _hold(row, derived)

    return check


def _hold(row: Row, derived: float | None) -> None:
    """Assert that the program agrees with the print, or with arithmetic where the print errs."""
    name = f"{row.calculation} ({row.source})"
    if not row.print_error:
        assert abs(row.ours - row.printed) <= row.tolerance, f"{name}: {row.ours} ≠ {row.printed}"
        return
    assert derived is not None, f"{name}: a print error needs the derived figure"
    assert row.note, f"{name}: a print error needs a note that says why"
    assert abs(derived - row.printed) > row.tolerance, f"{name}: the print is right after all"
    assert abs(row.ours - derived) <= row.tolerance, f"{name}: {row.ours} ≠ {derived}"


def page(rows: list[Row]) -> str:
    """Return the page of documentation, sorted, so that it is the same on every run."""
    lines = sorted(row.cells() for row in rows)
    return HEAD + COLUMNS + "|---|---|---|--:|--:|---|--:|---|\n" + "".join(lines)


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--write-outside-checks",
        nargs="?",
        const=str(PAGE),
        metavar="PATH",
        help="write the page of outside checks (docs/outside-checks.md)",
    )


def pytest_sessionfinish(session: pytest.Session, exitstatus: int) -> None:
    """Write the page where it was asked for and every check held."""
    path = session.config.getoption("--write-outside-checks", None)
    if path and exitstatus == pytest.ExitCode.OK:
        rows = session.config.stash.get(ROWS, {})
        Path(path).write_text(page(list(rows.values())), encoding="utf-8", newline="\n")
