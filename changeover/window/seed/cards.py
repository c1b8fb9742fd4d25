"""The lines of the proposal to look at and walk through: each is painted whole, never cut."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QFontMetrics,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from changeover.window.marks import Mark, paint_mark, pen
from changeover.window.outlook import Outlook
from changeover.window.theme import SMALL_PX, TEXT_PX, font

MARK, NAME, FIGURE_NAME, GAP, PAD = 34, 104, 168, 10, 7
SIDE, WIDE_SIDE = 128, 220
WRAP = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
FAR, KEPT_WIDTHS = 10_000, 8


@dataclass(frozen=True)
class CardWords:
    """The texts of one line: name and value, what is beside them, and what stands below.

    ``loud`` puts the value in the accent and ``beside`` in the work colour; a line without a
    ``mark`` is a derived figure.
    """

    key: str
    name: str
    value: str
    beside: str = ""
    below: str = ""
    side: str = ""
    mark: Mark | None = None
    loud: bool = False
    missing: bool = False
    says: str = ""


@dataclass(frozen=True)
class Piece:
    """One text of a line in its place."""

    box: QRect
    text: str
    token: str
    pixels: int
    bold: bool = False


def pieces(words: CardWords, width: int) -> tuple[tuple[Piece, ...], int]:
    """Return the texts of a line in their places, and the height that they take."""
    name = NAME if words.mark is not None else FIGURE_NAME
    left, side = MARK + name + GAP, max(SIDE, min(WIDE_SIDE, width // 5))
    middle = max(80, width - left - GAP - side - GAP)
    value = "work" if words.missing else "accent" if words.loud else "ink"
    columns = (
        (MARK, name, ((words.name, "ink", TEXT_PX, words.mark is not None),)),
        (left, middle, (
            (words.value, value, TEXT_PX, not words.missing),
            (words.below, "soft", SMALL_PX, False),
        )),
        (left + middle + GAP, side, (
            (words.beside, "work" if words.loud else "soft", TEXT_PX if words.mark else SMALL_PX,
             False),
            (words.side, "soft", SMALL_PX, False),
        )),
    )  # fmt: skip
    found, foot = [], 0
    for x, room, texts in columns:
        y = PAD
        for text, token, pixels, bold in texts:
            if text:
                metrics = QFontMetrics(font(pixels, bold=bold))
                tall = metrics.boundingRect(QRect(0, 0, room, FAR), WRAP, text).height()
                found.append(Piece(QRect(x, y, room, tall), text, token, pixels, bold))
                y += tall + 2
        foot = max(foot, y)
    return tuple(found), foot + PAD - 2


class SeedCard(QWidget):
    """One line; ``chosen`` is emitted when a click or the keyboard comes to it."""

    chosen = Signal(str)
    step = Signal(int)

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook, self.words, self.here = outlook, CardWords("", "", ""), False
        self._kept: dict[int, tuple[tuple[Piece, ...], int]] = {}
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_words(self, words: CardWords, *, here: bool) -> None:
        """Show a line, chosen or not; only the chosen one is a stop of the Tab key."""
        if (words, here) == (self.words, self.here):
            return
        if words != self.words:
            self.words = words
            self._kept.clear()
            self.setAccessibleName(words.says or f"{words.name}: {words.value}")
            self.updateGeometry()
        self.here = here
        policy = Qt.FocusPolicy.StrongFocus if here else Qt.FocusPolicy.ClickFocus
        self.setFocusPolicy(policy)
        self.update()

    def laid_out(self, width: int) -> tuple[tuple[Piece, ...], int]:
        """Return texts in their places and the height, kept until words or width are others."""
        if width not in self._kept:
            if len(self._kept) > KEPT_WIDTHS:
                self._kept.clear()
            self._kept[width] = pieces(self.words, width)
        return self._kept[width]

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return self.laid_out(width)[1]

    def sizeHint(self) -> QSize:
        return QSize(560, self.heightForWidth(self.width() or 560))

    def minimumSizeHint(self) -> QSize:
        return QSize(420, 24)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Ask for the height that the new width takes: Qt keeps the one of the width before."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.updateGeometry()

    def mousePressEvent(self, _event: QMouseEvent) -> None:
        self.chosen.emit(self.words.key)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self.chosen.emit(self.words.key)
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        steps = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1, Qt.Key.Key_Home: -FAR, Qt.Key.Key_End: FAR}
        if event.key() in steps:
            self.step.emit(steps[Qt.Key(event.key())])
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter, tokens = QPainter(self), self._outlook.tokens
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect())
        painter.setPen(pen(tokens.colour("hair"), 1.0))
        painter.drawLine(QPointF(0, box.bottom() - 0.5), QPointF(box.right(), box.bottom() - 0.5))
        if self.here:
            edge = 1.6 if self.hasFocus() else 0.8
            painter.setPen(pen(tokens.colour("accent"), edge))
            painter.setBrush(tokens.colour("accent_wash"))
            painter.drawRoundedRect(box.adjusted(1, 1, -1, -1.5), 5, 5)
        if self.words.mark is not None:
            paint_mark(painter, QRectF(9, PAD + 1, 15, 15), self.words.mark, tokens)
        for piece in self.laid_out(self.width())[0]:
            painter.setFont(font(piece.pixels, bold=piece.bold))
            painter.setPen(tokens.colour(piece.token))
            painter.drawText(piece.box, WRAP, piece.text)


class SeedCards(QWidget):
    """All lines under one another; ``chosen`` gives the key of the line in view."""

    chosen = Signal(str)

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook, self.here = outlook, ""
        self.cards: list[SeedCard] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)

    def show_lines(self, lines: Sequence[CardWords]) -> None:
        """Show other lines; the one in view stays where it is still there."""
        while len(self.cards) < len(lines):
            self._add()
        keys = [line.key for line in lines]
        if self.here not in keys:
            self.here = keys[0] if keys else ""
        for number, card in enumerate(self.cards):
            card.setVisible(number < len(lines))
            if number < len(lines):
                card.show_words(lines[number], here=lines[number].key == self.here)

    def choose(self, key: str) -> None:
        """Bring a line into view."""
        if key == self.here:
            return
        self.here = key
        for card in self.cards:
            card.show_words(card.words, here=card.words.key == key)
        self.chosen.emit(key)

    def card(self, key: str) -> SeedCard:
        """Return the card of a line. Raises StopIteration when there is none."""
        return next(card for card in self.cards if card.words.key == key)

    def _step(self, by: int) -> None:
        shown = [card for card in self.cards if not card.isHidden()]
        here = next((n for n, card in enumerate(shown) if card.words.key == self.here), 0)
        following = shown[max(0, min(len(shown) - 1, here + by))]
        self.choose(following.words.key)
        following.setFocus(Qt.FocusReason.TabFocusReason)

    def _add(self) -> None:
        card = SeedCard(self._outlook)
        card.chosen.connect(self.choose)
        card.step.connect(self._step)
        self.cards.append(card)
        self._column.addWidget(card)
