"""The table of rates of a ground drive: drivers down, driven across, the pair wanted stands out."""

from dataclasses import dataclass

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter

from changeover.window.marks import pen
from changeover.window.planter.signs import text
from changeover.window.theme import SMALL_PX, Tokens

HEAD, LINE, FIRST = 34, 17, 26
MOST_ACROSS, MOST_DOWN = 7, 10
LONG = 100.0  # thousands from which all figures are written smaller
RIGHT = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
Pair = tuple[int, int]


@dataclass(frozen=True)
class RatesSketch:
    """Rates in thousands by driver and driven teeth; ``now`` and ``wanted`` are pairs or None.

    A longer table shows what lies about the pair that is wanted.
    """

    driver: tuple[int, ...]
    driven: tuple[int, ...]
    rates: tuple[tuple[float, ...], ...]
    unit: str
    now: Pair | None
    wanted: Pair | None

    @property
    def height(self) -> int:
        return 14 + HEAD + LINE * len(_about(self.driver, self._wanted(0), MOST_DOWN))

    @property
    def says(self) -> str:
        """The pairs now and wanted with their rates."""
        pairs = (("now", self.now), ("wanted", self.wanted))
        told = [f"{name} {a}/{b}: {self._rate(a, b)}" for name, (a, b) in _known(pairs)]
        return f"rates in {self.unit}; {', '.join(told) or 'no pair chosen'}"

    def paint(self, painter: QPainter, box: QRectF, tokens: Tokens) -> None:
        across = _about(self.driven, self._wanted(1), MOST_ACROSS)
        pitch = (box.width() - FIRST) / len(across)
        head = QRectF(box.left() + 2, box.top(), box.width() - 2, 16)
        text(painter, head, f"{self.unit}, driven across", tokens, "soft", side=LEFT)
        for column, teeth in enumerate(across):
            self._write(painter, box, (column, pitch, HEAD - LINE), f"{teeth}", tokens, "soft")
        for line, driver in enumerate(_about(self.driver, self._wanted(0), MOST_DOWN)):
            top = HEAD + LINE * line
            first = QRectF(box.left() + 2, box.top() + top, FIRST - 6, LINE)
            text(painter, first, f"{driver}", tokens, "soft", side=LEFT)
            for column, driven in enumerate(across):
                self._cell(painter, box, (column, pitch, top), (driver, driven), tokens)

    def _cell(
        self,
        painter: QPainter,
        box: QRectF,
        at: tuple[int, float, int],
        pair: Pair,
        tokens: Tokens,
    ) -> None:
        chosen, leaving = pair == self.wanted, pair == self.now != self.wanted
        if chosen or leaving:
            line = pen(tokens.colour("accent" if chosen else "work"), 1.2)
            line.setStyle(Qt.PenStyle.SolidLine if chosen else Qt.PenStyle.DotLine)
            painter.setPen(line)
            painter.setBrush(tokens.colour("accent_wash") if chosen else Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(_place(box, at).adjusted(1, 1, 1, -1), 3, 3)
        ink = "accent" if chosen else "work" if leaving else "ink"
        self._write(painter, box, at, self._rate(*pair), tokens, ink, bold=chosen)

    def _write(
        self,
        painter: QPainter,
        box: QRectF,
        at: tuple[int, float, int],
        words: str,
        tokens: Tokens,
        ink: str,
        *,
        bold: bool = False,
    ) -> None:
        inside = _place(box, at).adjusted(1, 0, -2, 0)
        size = SMALL_PX if max(map(max, self.rates)) < LONG else SMALL_PX - 1
        text(painter, inside, words, tokens, ink, bold=bold, pixels=size, side=RIGHT)

    def _rate(self, driver: int, driven: int) -> str:
        rate = self.rates[self.driver.index(driver)][self.driven.index(driven)]
        return f"{rate:.1f}"

    def _wanted(self, side: int) -> int | None:
        pair = self.wanted if self.wanted is not None else self.now
        return None if pair is None else pair[side]


def _place(box: QRectF, at: tuple[int, float, int]) -> QRectF:
    column, pitch, top = at
    return QRectF(box.left() + FIRST + pitch * column, box.top() + top, pitch, LINE)


def _about(teeth: tuple[int, ...], wanted: int | None, most: int) -> tuple[int, ...]:
    """Return so many neighbours at most, about the one wanted."""
    middle = teeth.index(wanted) if wanted in teeth else 0
    first = max(0, min(middle - most // 2, len(teeth) - most))
    return teeth[first : first + most]


def _known(pairs: tuple[tuple[str, Pair | None], ...]) -> list[tuple[str, Pair]]:
    return [(name, pair) for name, pair in pairs if pair is not None]
