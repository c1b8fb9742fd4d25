"""The built wheel carries all it needs: installed in an empty place, it does the main job."""

import json
import os
import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
CARRIED = ("changeover/__main__.py", "changeover/resources/units.txt", "changeover/demo.sqlite")

pytestmark = [pytest.mark.slow, pytest.mark.xdist_group("wheel")]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the wheel without the network, as ``pip install .`` would."""
    folder = tmp_path_factory.mktemp("wheel")
    pip = [sys.executable, "-m", "pip", "wheel", "--no-deps", "--no-build-isolation", "-q"]
    subprocess.run([*pip, "-w", folder, ROOT], check=True, capture_output=True)
    (built,) = folder.glob("changeover-*.whl")
    return built


@pytest.fixture(scope="module")
def command(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Install the wheel in an environment of its own that borrows only libraries."""
    home = tmp_path_factory.mktemp("empty")
    subprocess.run([sys.executable, "-m", "venv", "--without-pip", home], check=True)
    bin_folder = home / ("Scripts" if os.name == "nt" else "bin")
    site = next(home.rglob("site-packages"))
    pip = [sys.executable, "-m", "pip", "--python", bin_folder / "python", "install"]
    subprocess.run([*pip, "--no-deps", "--no-index", "-q", wheel], check=True, capture_output=True)
    borrowed = [path for path in sys.path if path.endswith("site-packages")]
    (site / "borrowed.pth").write_text("\n".join(borrowed) + "\n", encoding="utf-8")
    return bin_folder / "changeover"


def run(command: Path, folder: Path, *arguments: str | Path) -> subprocess.CompletedProcess[str]:
    """Run the installed command from another folder, which must not see this working tree."""
    env = {key: value for key, value in os.environ.items() if key != "PYTHONPATH"}
    return subprocess.run(
        [command, *arguments], cwd=folder, env=env, capture_output=True, text=True, check=False
    )


def test_the_wheel_carries_resources_and_migrations(wheel: Path) -> None:
    names = set(zipfile.ZipFile(wheel).namelist())
    for folder in ("resources", "migrations"):
        files = [path for path in (ROOT / folder).rglob("*") if path.is_file()]
        kept = [path for path in files if "__pycache__" not in path.parts]
        assert {f"changeover/{path.relative_to(ROOT).as_posix()}" for path in kept} <= names
    assert set(CARRIED) <= names


def test_the_installed_program_is_not_this_working_tree(command: Path, tmp_path: Path) -> None:
    where = "import changeover; print(changeover.__file__)"
    python = command.with_name("python")
    done = subprocess.run(
        [python, "-c", where], cwd=tmp_path, capture_output=True, text=True, check=True
    )
    assert not Path(done.stdout.strip()).is_relative_to(ROOT / "changeover")


def test_the_installed_command_reckons_a_rate(command: Path, tmp_path: Path) -> None:
    rate = ("rate", "--rate", "32000/acre", "--row-spacing", "30 in", "--json")
    done = run(command, tmp_path, *rate)
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout)["spacing"]["value"] == pytest.approx(6.534)


def test_the_installed_command_does_the_main_job(command: Path, tmp_path: Path) -> None:
    where = "from changeover.bundled import bundled; print(bundled('demo.sqlite'))"
    python = command.with_name("python")
    demo = subprocess.run(
        [python, "-c", where], cwd=tmp_path, capture_output=True, text=True, check=True
    ).stdout.strip()
    assert not Path(demo).is_relative_to(ROOT)
    store = shutil.copyfile(demo, tmp_path / "store.sqlite")
    job = ("--planter", "Magpie 31", "--lot", "Y-208", "--field", "Otter Flat")
    done = run(command, tmp_path, "worklist", store, *job, "--out", "work", "--json")
    assert done.returncode == 0, done.stderr
    assert all((tmp_path / name).exists() for name in json.loads(done.stdout)["files"])
