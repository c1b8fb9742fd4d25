"""A folder that cannot be made is refused in words, not in the system's own."""

from pathlib import Path

import pytest

from changeover.commands.folders import made_folder
from changeover.quantities import Refusal


def test_a_folder_is_made_with_those_above_it_and_may_be_there(tmp_path: Path) -> None:
    wanted = tmp_path / "a" / "b"
    assert made_folder(wanted).is_dir()
    assert made_folder(wanted) == wanted


def test_a_file_of_that_name_is_said(tmp_path: Path) -> None:
    (tmp_path / "sheets").write_text("a file")
    with pytest.raises(Refusal, match="a file of that name is there; choose another folder"):
        made_folder(tmp_path / "sheets")


def test_a_file_where_a_folder_above_should_be_is_said(tmp_path: Path) -> None:
    (tmp_path / "sheets").write_text("a file")
    with pytest.raises(Refusal, match="a file where a folder above it should be"):
        made_folder(tmp_path / "sheets" / "june")
