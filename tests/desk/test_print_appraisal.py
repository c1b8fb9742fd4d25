"""The report for a customer states currency, tax, prices and sources, on A4 and on Letter."""

from dataclasses import replace
from decimal import Decimal
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image
from pypdf import PdfReader

from changeover.desk.appraise import appraisal_view, appraise_now, attach
from changeover.desk.door import apply
from changeover.desk.opening import Store
from changeover.desk.print_appraisal import sheet_of, write_report
from changeover.files.appraisal_report import write_appraisal
from changeover.files.appraisal_sheet import SheetPhoto
from changeover.quantities import Refusal
from tests.desk.trade_in import DAY, MAGPIE, PENNY, inspect, kept, price_file


def text_of(path: Path) -> str:
    pages = (page.extract_text() for page in PdfReader(path).pages)
    return " ".join(" ".join(pages).split()).replace("\xa0", " ")


def picture(kind: str = "JPEG", green: int = 120) -> bytes:
    made = BytesIO()
    Image.new("RGB", (40, 30), (90, green, 60)).save(made, kind)
    return made.getvalue()


def test_everything_that_a_customer_asks_is_on_paper(demo: Store, tmp_path: Path) -> None:
    values = {"as_found": Decimal(40_000), "reconditioned": Decimal("45000.5")}
    view = kept(demo, tmp_path, note="One owner, stored dry.", **values)
    text = text_of(write_report(demo, view, tmp_path))
    for words in (
        "Appraisal: Penny Twelve",
        "12 rows, 30.0 in apart",
        "One owner, stored dry.",
        "40 000.00 USD",
        "45 000.50 USD",
        "Opener disc (D-15)",
        "2 × 61.35 USD",
        "514.24 USD",
        "Prices: list “shop” of 2026-03-10, in USD, before tax.",
        "Labour: 90.00 USD an hour. Tax: 7 % on parts and labour.",
        "Iowa State University",
        "page 1 of",
    ):
        assert words in text, words


@pytest.mark.parametrize(("paper", "size"), [("A4", (595, 842)), ("Letter", (612, 792))])
def test_both_papers(demo: Store, tmp_path: Path, paper: str, size: tuple[int, int]) -> None:
    path = write_report(demo, kept(demo, tmp_path), tmp_path, paper)
    box = PdfReader(path).pages[0].mediabox
    assert (round(box.width), round(box.height)) == size
    assert path.name == f"appraisal-penny-twelve-spring-{paper.lower()}.pdf"


def test_what_has_no_price_and_what_was_not_inspected_is_said(demo: Store, tmp_path: Path) -> None:
    inspect(demo, PENNY, 7, extra=True)
    view = appraise_now(demo, PENNY, price_file(tmp_path), DAY)
    view = replace(view, not_read=(11, 12))
    text = text_of(write_report(demo, view, tmp_path))
    assert "No price was given for wiper; it is not in the sums." in text
    assert "Not inspected: rows 11, 12." in text


def test_photos_are_on_the_report(demo: Store, tmp_path: Path) -> None:
    view = kept(demo, tmp_path)
    for number, kind in enumerate(("JPEG", "PNG", "PNG")):
        content = picture(kind, 40 * number)
        apply(demo, attach(view, f"row {number} worn", content), "Ada")
    path = write_report(demo, appraisal_view(demo, PENNY, "spring"), tmp_path)
    assert sum(len(page.images) for page in PdfReader(path).pages) == 3
    assert "row 2 worn" in text_of(path)


def test_a_photo_that_is_none_is_refused_and_nothing_is_written(
    demo: Store, tmp_path: Path
) -> None:
    sheet = sheet_of(demo, kept(demo, tmp_path))
    broken = replace(sheet, photos=(SheetPhoto("row 9", b"\xff\xd8\xff broken"),))
    with pytest.raises(Refusal, match=r"Photo 1 \(row 9\) cannot be read"):
        write_appraisal(broken, tmp_path / "a.pdf")
    assert not (tmp_path / "a.pdf").exists()


def test_a_second_planter_stands_beside(demo: Store, tmp_path: Path) -> None:
    view = kept(demo, tmp_path)
    inspect(demo, MAGPIE, 2)
    other = appraise_now(demo, MAGPIE, price_file(tmp_path), DAY)
    text = text_of(write_report(demo, view, tmp_path, other=other))
    assert "Beside another planter" in text
    assert "171.41 USD" in text


def test_names_with_mark_up_are_printed_as_they_are(demo: Store, tmp_path: Path) -> None:
    view = kept(demo, tmp_path, note="<b>5 & 6</b> \u2603 =SUM(A1)")
    assert "<b>5 & 6</b>" in text_of(write_report(demo, view, tmp_path))


def test_without_prices_there_is_no_report(demo: Store, tmp_path: Path) -> None:
    view = replace(kept(demo, tmp_path), appraised=None, says="choose a list")
    with pytest.raises(Refusal, match="choose a list"):
        write_report(demo, view, tmp_path)


def test_a_folder_that_is_missing_is_refused(demo: Store, tmp_path: Path) -> None:
    view = kept(demo, tmp_path)
    with pytest.raises(Refusal, match=r"folder .* is missing"):
        write_report(demo, view, tmp_path / "none")
    with pytest.raises(Refusal, match="Paper “A3”"):
        write_report(demo, view, tmp_path, "A3")
