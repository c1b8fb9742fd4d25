"""A proof on paper: both papers, whole or not at all, and text that a reader finds in it."""

from pathlib import Path

import pytest

from changeover.files.proof_report import write_proof_report
from changeover.files.proof_sheet import ProofReport, ReportBars, ReportPart, ReportTable
from changeover.quantities import Refusal

REPORT = ProofReport(
    "Seed spacing: <Test> & Co",
    (("Planter", "Test 24"), ("Note", "north half")),
    (
        ReportPart("Method", ("Measured along a tape.",)),
        ReportPart(
            "Rows", tables=(ReportTable(("Row", "N"), tuple((str(n), "250") for n in range(90))),)
        ),
        ReportPart(
            "Shape", ("Counts.",), bars=ReportBars((0, 4, 9, 2), (1, 2, 3, 4), 2.5, (1,), "in")
        ),
    ),
)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_a_report_is_written_on_both_papers(tmp_path: Path, paper: str) -> None:
    path = write_proof_report(REPORT, tmp_path / "r.pdf", paper=paper)
    content = path.read_bytes()
    assert content.startswith(b"%PDF")
    assert content.count(b"/Type /Page\n") + content.count(b"/Type /Page ") >= 2


def test_the_same_report_is_the_same_file(tmp_path: Path) -> None:
    one, two = (write_proof_report(REPORT, tmp_path / f"{n}.pdf") for n in (1, 2))
    assert one.read_bytes() == two.read_bytes()


def test_another_paper_and_a_missing_folder_are_refused(tmp_path: Path) -> None:
    with pytest.raises(Refusal, match="choose A4 or Letter"):
        write_proof_report(REPORT, tmp_path / "r.pdf", paper="A3")
    with pytest.raises(Refusal, match="is missing"):
        write_proof_report(REPORT, tmp_path / "none" / "r.pdf")
    assert list(tmp_path.iterdir()) == []
