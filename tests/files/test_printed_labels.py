"""Labels for the bags of a kit."""

from pathlib import Path

import pytest
from pypdf import PdfReader

from changeover.files.filling import labels_of
from changeover.files.printed_labels import write_labels
from changeover.files.sheet import SheetLabel, SheetPart
from changeover.quantities import Refusal
from changeover.switch.bags import bags
from tests.files.sheets import PARTS
from tests.switch.switch_case import BEAN, LONG_ACRE, bean, corn, plan

LABELS = labels_of(
    "Long Acre 24", bags(plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE), BEAN)), PARTS
)


def texts(path: Path) -> list[str]:
    return [page.extract_text() for page in PdfReader(path).pages]


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_every_row_has_a_label_with_its_parts(tmp_path: Path, paper: str) -> None:
    (page,) = texts(write_labels(LABELS, tmp_path / "l.pdf", paper=paper))
    assert page.count("Long Acre 24") == 24
    assert page.count("1 × S56  soybean disc") == 24
    for row in range(1, 25):
        assert f"row {row}\n" in page


def test_more_labels_than_a_page_holds_take_another(tmp_path: Path) -> None:
    assert len(texts(write_labels(LABELS * 2, tmp_path / "l.pdf"))) == 2


def test_a_label_with_many_parts_says_how_many_more_there_are(tmp_path: Path) -> None:
    many = tuple(SheetPart(f"P{number}", "", 1) for number in range(9))
    (page,) = texts(write_labels((SheetLabel("A", "row 1", many, "Ben"),), tmp_path / "l.pdf"))
    assert "and 5 more" in page
    assert "A · Ben" in page


def test_no_parts_and_another_paper_are_refused(tmp_path: Path) -> None:
    with pytest.raises(Refusal, match="no labels to print"):
        write_labels((), tmp_path / "l.pdf")
    with pytest.raises(Refusal, match="“A5” is not known"):
        write_labels(LABELS, tmp_path / "l.pdf", paper="A5")
