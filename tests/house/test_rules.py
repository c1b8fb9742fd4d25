"""The house rules: short files, short functions, a sentence at the top, annotated returns."""

import ast
import statistics
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
FOLDERS = ("changeover", "migrations", "tests")
FILES = sorted(path for folder in FOLDERS for path in (ROOT / folder).rglob("*.py"))
FILES += [ROOT / "start.py"]
PROGRAM = [path for path in FILES if path.is_relative_to(ROOT / "changeover")]

LONGEST_FILE, NINE_TENTHS, LONGEST_FUNCTION, MEDIAN_FUNCTION = 400, 300, 60, 8
Function = ast.FunctionDef | ast.AsyncFunctionDef


def lines_of(path: Path) -> int:
    return len(path.read_text(encoding="utf-8").splitlines())


def name_of(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def functions_of(path: Path) -> Iterator[Function]:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    return (node for node in ast.walk(tree) if isinstance(node, Function))


def length(function: Function) -> int:
    return (function.end_lineno or function.lineno) - function.lineno + 1


def test_no_file_is_too_long() -> None:
    long = {name_of(path): n for path in FILES if (n := lines_of(path)) > LONGEST_FILE}
    assert not long


def test_nine_files_of_ten_are_short() -> None:
    longest = sorted(((lines_of(path), name_of(path)) for path in FILES), reverse=True)
    allowed = len(FILES) // 10
    over = [entry for entry in longest if entry[0] > NINE_TENTHS]
    assert len(over) <= allowed, over


@pytest.mark.parametrize("path", FILES, ids=name_of)
def test_functions_are_short_and_annotated(path: Path) -> None:
    for function in functions_of(path):
        where = f"{name_of(path)}:{function.lineno} {function.name}"
        assert length(function) <= LONGEST_FUNCTION, f"{where} has {length(function)} lines"
        assert function.returns is not None, f"{where} does not say what it returns"


@pytest.mark.parametrize("path", FILES, ids=name_of)
def test_each_module_begins_with_a_sentence(path: Path) -> None:
    first = (ast.get_docstring(ast.parse(path.read_text(encoding="utf-8"))) or "").split("\n\n")[0]
    assert first, f"{name_of(path)} has no docstring"
    assert first.endswith((".", "?")), (
        f"{name_of(path)}: the first line is not a sentence: {first!r}"
    )


def test_functions_are_short_on_the_whole() -> None:
    lengths = [length(function) for path in PROGRAM for function in functions_of(path)]
    assert statistics.median(lengths) <= MEDIAN_FUNCTION + 4


def test_folders_are_nouns_of_the_job() -> None:
    banned = {"utils", "util", "helpers", "helper", "misc", "common", "mixed", "manager", "core"}
    named = {part for path in FILES for part in path.relative_to(ROOT).with_suffix("").parts}
    assert not named & banned
