"""The layers of the program: imports go down only, and one folder owns each heavy library."""

import subprocess
import sys
import tomllib
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
CONTRACTS = tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["importlinter"][
    "contracts"
]
OWNERS = {
    "PySide6": {"window", "app"},
    "sqlalchemy": {"store"},
    "openpyxl": {"files"},
    "ortools": {"switch"},
}
TRADE = ("planter", "seed", "switch", "proof", "quantities")
HEAVY = ("PySide6", "sqlalchemy", "pandas", "scipy.special", "ortools", "openpyxl", "reportlab")
IMPORT_ALL = """
import importlib, pkgutil, sys
for name in {names!r}:
    module = importlib.import_module("changeover." + name)
    for found in pkgutil.walk_packages(getattr(module, "__path__", []), module.__name__ + "."):
        importlib.import_module(found.name)
print([name for name in {heavy!r} if name in sys.modules])
"""


def folders() -> set[str]:
    found = (ROOT / "changeover").iterdir()
    return {path.stem for path in found if path.suffix == ".py" or (path / "__init__.py").exists()}


def test_the_contracts_hold() -> None:
    lint = [sys.executable, "-c", "from importlinter.cli import lint_imports_command as c; c()"]
    done = subprocess.run(
        [*lint, "--no-cache"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout


def test_every_folder_but_its_owner_is_kept_from_each_heavy_library() -> None:
    for library, owners in OWNERS.items():
        contract = next(c for c in CONTRACTS if library in c.get("forbidden_modules", ()))
        kept = {name.removeprefix("changeover.") for name in contract["source_modules"]}
        assert kept == folders() - {"__init__"} - owners, library


def imported(names: tuple[str, ...]) -> str:
    code = IMPORT_ALL.format(names=names, heavy=HEAVY)
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=False
    )
    return done.stdout.strip() or done.stderr


def test_the_trade_is_imported_without_any_heavy_library() -> None:
    assert imported(TRADE) == "[]"


def test_the_desk_and_the_commands_load_heavy_libraries_when_first_used() -> None:
    assert imported(("desk", "commands")) in ("[]", "['sqlalchemy']")
