"""No text that people typed becomes a formula."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.files.formula_guard import MOST_CHARACTERS, clean_text, guarded, starts_formula


@pytest.mark.parametrize(
    "text", ["=1+1", "+A1", "-A1", "@SUM(A1)", "\t=1", "\n=1", "  =1", "＝1", "\u202f=1"]
)
def test_what_starts_a_formula_gets_an_apostrophe(text: str) -> None:
    assert guarded(text) == f"'{text}"


@pytest.mark.parametrize("text", ["", "row 3", "C30 → S56", "1/2", "'=1", "a=b"])
def test_other_text_stays_as_it_is(text: str) -> None:
    assert guarded(text) == text


@given(st.text())
def test_guarded_text_never_starts_a_formula(text: str) -> None:
    assert not starts_formula(guarded(text))
    assert clean_text(text) in guarded(text)


@given(st.text(alphabet=st.characters(codec=None)))
def test_cleaned_text_holds_nothing_that_a_file_cannot(text: str) -> None:
    cleaned = clean_text(text)
    assert cleaned.encode("utf-8").decode("utf-8") == cleaned
    assert not any(ord(sign) < 32 and sign not in "\t\n" for sign in cleaned)


@pytest.mark.parametrize("end", ["\r", "\r\n", "\x85", "\u2028"])
def test_every_line_end_becomes_one_and_guards_what_follows(end: str) -> None:
    assert guarded(f"{end}=1") == "'\n=1"


def test_text_too_long_for_a_cell_is_cut_and_shows_it() -> None:
    cut = clean_text("a" * 40_000)
    assert len(cut) == MOST_CHARACTERS
    assert cut.endswith("…")
