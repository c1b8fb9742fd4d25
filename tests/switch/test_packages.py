"""The solvers are called by plain names of their packages, and cost nothing until they are."""

import importlib
import subprocess
import sys
from types import ModuleType

import pytest

import changeover.switch.season as season
import changeover.switch.timetable as timetable


@pytest.mark.parametrize("package", [timetable, season])
def test_every_public_name_is_that_of_the_solver(package: ModuleType) -> None:
    solve = importlib.import_module(f"{package.__name__}.solve")
    assert sorted(package.__all__) == sorted(solve.__all__)
    assert all(getattr(package, name) is getattr(solve, name) for name in package.__all__)


@pytest.mark.parametrize("package", [timetable, season])
def test_another_name_is_not_there(package: ModuleType) -> None:
    with pytest.raises(AttributeError, match="has no attribute 'neither'"):
        _ = package.neither


def test_the_model_alone_does_not_load_the_solver() -> None:
    code = (
        "import sys, changeover.switch.timetable.model, changeover.switch.season.model as _;"
        "print([m for m in sys.modules if m.endswith('.solve') or m.startswith('ortools')])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
