"""Fitting a text into the width it has: smaller, then narrower, and only then cut with a …."""

from functools import lru_cache

from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QFontMetricsF

from changeover.window.theme import font

LEAST_PX = 9


@lru_cache(maxsize=4096)
def fitted(text: str, width: int, pixels: int, *, bold: bool = False) -> tuple[QFont, str]:
    """Return the font and the text to draw within a width; the text is cut only at the last."""
    made = font(pixels, bold=bold)
    for stretch in (100, 88, 75):
        for size in range(pixels, max(LEAST_PX, pixels - 3) - 1, -1):
            made = font(size, bold=bold)
            made.setStretch(stretch)
            if QFontMetricsF(made).horizontalAdvance(text) <= width:
                return made, text
    return made, QFontMetricsF(made).elidedText(text, Qt.TextElideMode.ElideRight, width)
