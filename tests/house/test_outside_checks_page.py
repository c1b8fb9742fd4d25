"""The page of outside checks in the documentation says what the tests hold."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.slow
def test_the_page_is_up_to_date(tmp_path: Path) -> None:
    written = tmp_path / "page.md"
    command = [sys.executable, "-m", "pytest", "tests/checks", "-q", "-p", "no:cacheprovider"]
    alone = {key: value for key, value in os.environ.items() if not key.startswith("PYTEST_")}
    done = subprocess.run(
        [*command, f"--write-outside-checks={written}"],
        cwd=ROOT,
        env=alone,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout
    page = (ROOT / "docs" / "outside-checks.md").read_text(encoding="utf-8")
    assert written.read_text(encoding="utf-8") == page, (
        "run `python -m pytest tests/checks --write-outside-checks` and commit the page"
    )
