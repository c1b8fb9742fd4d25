"""The command line itself: what opens the window, what is refused before, what it answers."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from changeover import __version__
from changeover.__main__ import main, names_a_store


@pytest.mark.parametrize("given", [[], ["mine.sqlite"], ["postgresql://host/store"], [__file__]])
def test_a_store_or_nothing_opens_the_window(given: list[str]) -> None:
    assert names_a_store(given)


@pytest.mark.parametrize("given", [["rate"], ["--help"], ["shots", "x"], ["nonsense"]])
def test_a_command_does_not(given: list[str]) -> None:
    assert not names_a_store(given)


@pytest.mark.parametrize(
    ("name", "content"), [("gone.sqlite", None), ("text.sqlite", b"hello"), ("folder", b"")]
)
def test_what_is_no_store_is_refused_before_a_window(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str, content: bytes | None
) -> None:
    path = tmp_path / name
    if name == "folder":
        path.mkdir()
    elif content is not None:
        path.write_bytes(content)
    assert main(["open", str(path)]) == 2
    assert capsys.readouterr().err.count("\n") == 1


def test_without_a_display_it_says_so(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "platform", "linux")
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    assert main([]) == 2
    assert "no display" in capsys.readouterr().err


def test_the_version_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["--version"])
    assert ended.value.code == 0
    assert capsys.readouterr().out == f"changeover {__version__}\n"


def test_the_parser_is_there_before_anything_heavy() -> None:
    heavy = ("pint", "numpy", "sqlalchemy", "PySide6", "pandas")
    loaded = f"print([name for name in {heavy} if name in sys.modules])"
    code = f"import sys, changeover.__main__ as start; start.build_parser(); {loaded}"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_a_reader_that_goes_away_is_no_error() -> None:
    rate = [sys.executable, "-m", "changeover", "rate", "--rate", "32000/acre"]
    command = [*rate, "--row-spacing", "30 in", "--json"]
    reader, writer = os.pipe()
    os.close(reader)
    done = subprocess.run(command, stdout=writer, stderr=subprocess.PIPE, text=True, check=False)
    os.close(writer)
    assert "Traceback" not in done.stderr
