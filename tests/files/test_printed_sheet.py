"""The printed sheet: every task, box and caution, on either paper, in signs that print."""

from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader

from changeover.files.print_font import lost_signs, lost_words, printable, use_fonts
from changeover.files.printed_sheet import write_printed_sheet
from changeover.files.sheet import SheetPlace, WorklistSheet
from changeover.quantities import Refusal
from tests.files.sheets import hostile_sheet, switch_sheet

SHEET = switch_sheet()


def pages(sheet: WorklistSheet, folder: Path, paper: str = "A4") -> list[str]:
    path = write_printed_sheet(sheet, folder / "w.pdf", paper=paper)
    return [page.extract_text() for page in PdfReader(path).pages]


def flat(texts: list[str]) -> str:
    return " ".join(" ".join(texts).split())


def test_every_task_step_and_caution_is_printed(tmp_path: Path) -> None:
    text = flat(pages(SHEET, tmp_path))
    for task in SHEET.tasks:
        wanted = [f"{task.number}. {task.title}", *task.steps, *task.cautions]
        assert [words for words in wanted if flat([words]) not in text] == []


def test_parts_that_wait_to_be_inspected_are_printed_with_the_kit(tmp_path: Path) -> None:
    assert "23, 7 to inspect" in flat(pages(SHEET, tmp_path))


@pytest.mark.parametrize(("paper", "size"), [("A4", (595, 842)), ("Letter", (612, 792))])
def test_the_paper_is_the_one_asked_for(tmp_path: Path, paper: str, size: tuple[int, int]) -> None:
    path = write_printed_sheet(SHEET, tmp_path / "w.pdf", paper=paper)
    box = PdfReader(path).pages[0].mediabox
    assert (round(float(box.width)), round(float(box.height))) == size


def test_another_paper_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refusal, match="“A5” is not known; choose A4 or Letter"):
        write_printed_sheet(SHEET, tmp_path / "w.pdf", paper="A5")


def test_every_page_names_the_switch_and_its_number(tmp_path: Path) -> None:
    texts = pages(SHEET, tmp_path)
    assert len(texts) >= 2
    for number, text in enumerate(texts, start=1):
        assert "Long Acre 24" in text
        assert "corn, Hill Nine → soybean lot S-114" in text
        assert f"page {number} of {len(texts)}" in text


def test_every_row_has_its_box(tmp_path: Path) -> None:
    only = replace(SHEET, tasks=tuple(t for t in SHEET.tasks if t.title.startswith("Closing")))
    text = flat(pages(replace(only, cautions=(), kit=(), back=()), tmp_path))
    for row in range(1, 25):
        assert f" {row} " in f" {text} "


def test_fonts_are_embedded_so_that_no_sign_is_missing(tmp_path: Path) -> None:
    path = write_printed_sheet(SHEET, tmp_path / "w.pdf")
    fonts = [
        font.get_object()
        for page in PdfReader(path).pages
        for font in page["/Resources"]["/Font"].values()
    ]
    names = {str(font["/BaseFont"]) for font in fonts if "/FontDescriptor" in font}
    assert any(name.endswith("DejaVuSans") for name in names)
    assert any(name.endswith("DejaVuSans-Bold") for name in names)


def test_signs_that_the_font_lacks_become_question_marks() -> None:
    use_fonts()
    assert printable("½ → ₂ ° – “x” × ≤ Ж ñ") == "½ → ₂ ° – “x” × ≤ Ж ñ"
    assert printable("豆 1\u202f000") == "? 1\u00a0000"


def test_signs_that_cannot_be_printed_are_said_on_the_sheet(tmp_path: Path) -> None:
    assert "lacks 2 signs of its names" in flat(pages(replace(SHEET, field="豆 Ж 王"), tmp_path))
    assert "lacks" not in flat(pages(replace(SHEET, field="Ж ñ"), tmp_path))
    assert lost_signs(replace(SHEET, planter="豆", field="豆")) == "豆"
    assert "lacks 豆;" in lost_words(replace(SHEET, planter="豆"))
    assert lost_words(SHEET) == ""


def test_the_head_names_the_next_lot_in_full_however_long_the_rest(tmp_path: Path) -> None:
    long = replace(
        SHEET,
        planter="Magpie 31 " * 9,
        now="Sunflower, Long Pightle by the lane, and Kettle Piece · set 24 May" * 2,
        next="Soybean lot Y-208, Plain Tale 2",
        field="Otter Flat",
    )
    for text in pages(long, tmp_path):
        assert "→ Soybean lot Y-208, Plain Tale 2" in flat([text])
        assert "Otter Flat" in text


def test_text_is_never_taken_for_markup(tmp_path: Path) -> None:
    text = flat(pages(hostile_sheet("<b>a & b</i> <img src='x'/>"), tmp_path))
    assert "<b>a & b</i> <img src='x'/>" in text


def test_an_endless_task_and_name_still_fit_on_pages(tmp_path: Path) -> None:
    long = replace(
        SHEET.tasks[0],
        title="deep " * 60,
        steps=tuple(f"step {number}" for number in range(200)),
        places=tuple(SheetPlace(str(row)) for row in range(1, 65)),
    )
    texts = pages(replace(SHEET, planter="W" * 300, tasks=(long,)), tmp_path)
    assert "step 199" in flat(texts)
    assert len(texts) > 3


def test_a_switch_without_work_says_so(tmp_path: Path) -> None:
    text = flat(pages(replace(SHEET, tasks=(), kit=(), back=()), tmp_path))
    assert "there is no work to do" in text


def test_the_same_switch_prints_the_same_bytes(tmp_path: Path) -> None:
    one = write_printed_sheet(SHEET, tmp_path / "a.pdf").read_bytes()
    assert write_printed_sheet(SHEET, tmp_path / "b.pdf").read_bytes() == one
