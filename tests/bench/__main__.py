"""Run the benchmarks: ``python -m tests.bench [WORD ...]`` takes those with a word in the name.

A benchmark is a module ``tests/bench/bench_*.py`` with ``measure() -> Iterable[Ratio | Spell]``.
"""

import importlib
import os
import sys
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


def main(words: list[str]) -> int:
    """Print one line for each measure of each benchmark."""
    found = sorted(path.stem for path in Path(__file__).parent.glob("bench_*.py"))
    chosen = [name for name in found if not words or any(word in name for word in words)]
    if not chosen:
        sys.stderr.write(f"There is no such benchmark; there are: {', '.join(found)}.\n")
        return 2
    for name in chosen:
        sys.stdout.write(f"{name.removeprefix('bench_').replace('_', ' ')}\n")
        for measured in importlib.import_module(f"tests.bench.{name}").measure():
            sys.stdout.write(f"  {measured.line()}\n")
            sys.stdout.flush()
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
