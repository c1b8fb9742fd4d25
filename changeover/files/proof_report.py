"""A proof on paper: what was tested and how, the results in tables, and the distribution drawn."""

from pathlib import Path

from changeover.files.atomic import write_whole
from changeover.files.print_font import printable, use_fonts
from changeover.files.proof_sheet import ProofReport
from changeover.quantities import Refusal

PAPERS = ("A4", "Letter")
MARGIN = 15.0  # millimetres


def write_proof_report(report: ProofReport, path: Path, *, paper: str = "A4") -> Path:
    """Write a report as PDF, whole or not at all; ``paper`` is ``A4`` or ``Letter``.

    Raises Refusal for another paper, and when the folder cannot be written.
    """
    if paper not in PAPERS:
        raise Refusal(f"Paper “{paper}” is not known; choose {' or '.join(PAPERS)}.")
    return write_whole(path, lambda temporary: _build(report, temporary, paper))


def _build(report: ProofReport, path: Path, paper: str) -> None:
    from reportlab.lib import pagesizes
    from reportlab.lib.units import mm
    from reportlab.platypus import SimpleDocTemplate

    from changeover.files.proof_report_flow import report_flow

    use_fonts()
    wide, high = pagesizes.A4 if paper == "A4" else pagesizes.LETTER
    margin = MARGIN * mm
    document = SimpleDocTemplate(
        str(path),
        pagesize=(wide, high),
        leftMargin=margin,
        rightMargin=margin,
        topMargin=margin,
        bottomMargin=margin,
        title=printable(report.title),
        author="Changeover",
        subject="proof",
        invariant=1,
    )
    document.build(report_flow(report, wide - 2 * margin))
