"""A copy of the demo store for each test of the command line, and what a command answered."""

import json
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from changeover.__main__ import main
from changeover.bundled import bundled

Answer = Callable[..., dict[str, Any]]


@pytest.fixture
def store(tmp_path: Path) -> str:
    return str(shutil.copyfile(bundled("demo.sqlite"), tmp_path / "demo.sqlite"))


@pytest.fixture
def answer(capsys: pytest.CaptureFixture[str]) -> Answer:
    """Run a command with ``--json`` and return what standard output carried, and it alone."""

    def ask(*arguments: str) -> dict[str, Any]:
        assert main([*arguments, "--json"]) == 0
        answered: dict[str, Any] = json.loads(capsys.readouterr().out)
        return answered

    return ask
