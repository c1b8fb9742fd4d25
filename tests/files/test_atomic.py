"""A file is written whole or not at all, and a refusal says where and what to do."""

import errno
import os
from pathlib import Path

import pytest

from changeover.files.atomic import write_bytes, write_whole
from changeover.quantities import Refusal


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_a_file_is_written_and_nothing_else_is_left(tmp_path: Path) -> None:
    path = write_bytes(tmp_path / "a.csv", b"new")
    assert path.read_bytes() == b"new"
    assert names(tmp_path) == ["a.csv"]


def test_a_missing_folder_is_named(tmp_path: Path) -> None:
    with pytest.raises(Refusal, match=r"a\.csv was not written: the folder .*gone is missing"):
        write_bytes(tmp_path / "gone" / "a.csv", b"x")


@pytest.mark.parametrize(
    ("number", "sentence"),
    [
        (errno.ENOSPC, "the disk is full; make room"),
        (errno.EROFS, "the disk is read-only; choose another folder"),
        (errno.EACCES, "it may not be written there"),
        (errno.EIO, "choose another folder or close the file"),
    ],
)
def test_a_failure_half_way_keeps_the_old_file(tmp_path: Path, number: int, sentence: str) -> None:
    path = tmp_path / "a.csv"
    path.write_text("old")

    def half(temporary: Path) -> None:
        temporary.write_text("ha")
        raise OSError(number, os.strerror(number))

    with pytest.raises(Refusal, match=sentence):
        write_whole(path, half)
    assert path.read_text() == "old"
    assert names(tmp_path) == ["a.csv"]


def test_a_fault_of_the_writer_leaves_nothing_behind(tmp_path: Path) -> None:
    def faulty(temporary: Path) -> None:
        temporary.write_text("ha")
        raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        write_whole(tmp_path / "a.csv", faulty)
    assert names(tmp_path) == []


def test_a_folder_in_the_way_is_refused(tmp_path: Path) -> None:
    (tmp_path / "a.csv").mkdir()
    with pytest.raises(Refusal, match=r"a\.csv was not written"):
        write_bytes(tmp_path / "a.csv", b"x")
    assert names(tmp_path) == ["a.csv"]


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no full device here")
def test_a_disk_that_is_full_in_earnest_is_refused(tmp_path: Path) -> None:
    def onto_full(temporary: Path) -> None:
        temporary.unlink()
        with Path("/dev/full").open("wb", buffering=0) as full:
            full.write(b"x")

    with pytest.raises(Refusal, match="the disk is full"):
        write_whole(tmp_path / "a.csv", onto_full)
    assert names(tmp_path) == []


@pytest.mark.skipif(os.name != "posix", reason="file modes are POSIX")
def test_the_file_has_the_mode_that_new_files_have(tmp_path: Path) -> None:
    (tmp_path / "plain").touch()
    path = write_bytes(tmp_path / "a.csv", b"x")
    assert path.stat().st_mode == (tmp_path / "plain").stat().st_mode
