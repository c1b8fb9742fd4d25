"""A bar on standard error while a search runs, where a person is looking at it."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, TextIO

if TYPE_CHECKING:
    from changeover.switch.search import Progress

WIDTH = 30


@dataclass
class Bar:
    """Draws how far a search is, over and over on one line, and wipes it at the end."""

    stream: TextIO
    shown: str = ""

    def search(self, told: "Progress") -> None:
        """Show how far a search is, and the best it has found."""
        best = f"  best {told.best:.0f}" if told.best is not None else ""
        bound = f", bound {told.bound:.0f}" if told.best is not None and told.bound else ""
        self.share(told.fraction, f"{best}{bound}")

    def share(self, share: float, words: str = "") -> None:
        """Show a share from 0 to 1, with words behind it."""
        full = round(WIDTH * min(1.0, max(0.0, share)))
        text = f"[{'#' * full}{'.' * (WIDTH - full)}] {share:4.0%}{words}"
        if text != self.shown:
            self.stream.write(f"\r{text:<{len(self.shown)}}")
            self.stream.flush()
            self.shown = text

    def wipe(self) -> None:
        """Leave the line empty."""
        if self.shown:
            self.stream.write(f"\r{' ' * len(self.shown)}\r")
            self.stream.flush()


@contextmanager
def progress_bar() -> Iterator[Bar | None]:
    """Give a bar when standard error is a terminal, None when it is not."""
    if not sys.stderr.isatty():
        yield None
        return
    bar = Bar(sys.stderr)
    try:
        yield bar
    finally:
        bar.wipe()
