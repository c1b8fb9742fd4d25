"""Where everything on a task card stands, for a width and for desk or yard sizes."""

from dataclasses import dataclass
from functools import cached_property

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFontMetricsF

from changeover.window.theme import SMALL_PX, TEXT_PX, font
from changeover.window.work.task_words import TaskWords

WRAP = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
EDGE, TOP, CARET = 12.0, 10.0, 30.0
TALL = 10_000.0


@dataclass(frozen=True)
class Sizes:
    """The sizes of a card in pixels: on a desk, or large enough for a gloved finger in a yard."""

    box: float
    chip: float
    gap: float
    text: int
    small: int

    @property
    def sign(self) -> float:
        """The side of the tick within a chip."""
        return min(self.chip * 0.6, 16.0)


DESK = Sizes(box=18, chip=20, gap=4, text=TEXT_PX, small=SMALL_PX)
YARD = Sizes(box=40, chip=44, gap=8, text=16, small=14)


@dataclass(frozen=True)
class TaskLayout:
    """The rectangles of one card."""

    words: TaskWords
    sizes: Sizes
    width: float
    open: bool
    bold: bool = True

    @property
    def left(self) -> float:
        return EDGE + self.sizes.box + 12

    @cached_property
    def box(self) -> QRectF:
        return QRectF(EDGE, TOP, self.sizes.box, self.sizes.box)

    @cached_property
    def aside(self) -> QRectF:
        """Where the task is and its minutes, at the right of the title."""
        metrics = QFontMetricsF(font(self.sizes.small))
        words = (self.words.where, self.words.minutes)
        wide = sum(metrics.horizontalAdvance(text) + 2 for text in words) + 24
        return QRectF(self.width - CARET - EDGE - wide, TOP, wide, self.sizes.box)

    @cached_property
    def title(self) -> QRectF:
        room = max(160.0, self.aside.left() - 16 - self.left)
        metrics = QFontMetricsF(font(self.sizes.text, bold=self.bold))
        bound = metrics.boundingRect(QRectF(0, 0, room, TALL), WRAP, self.words.title)
        down = max(0.0, (self.sizes.box - metrics.height()) / 2)
        return QRectF(self.left, TOP + down, room, bound.height())

    @cached_property
    def chips(self) -> tuple[QRectF, ...]:
        """The places to tick, wrapped into lines; none when there is only one."""
        count = len(self.words.places)
        if count < 2:
            return ()
        metrics, sizes = QFontMetricsF(font(self.sizes.small, bold=True)), self.sizes
        text = max(metrics.horizontalAdvance(chip) for chip in self.words.chips)
        wide = max(sizes.chip, text + sizes.sign * 0.7 + 8)
        top = max(self.title.bottom(), self.box.bottom()) + 7
        line = max(1, int((self.width - EDGE - self.left + sizes.gap) // (wide + sizes.gap)))
        across, down = wide + sizes.gap, sizes.chip + sizes.gap
        return tuple(
            QRectF(self.left + (n % line) * across, top + (n // line) * down, wide, sizes.chip)
            for n in range(count)
        )

    @cached_property
    def details(self) -> tuple[QRectF, ...]:
        """One rectangle for each line behind the task, when it is open."""
        if not self.open:
            return ()
        metrics = QFontMetricsF(font(self.sizes.small + 1))
        room, top = self.width - EDGE - self.left, self._above_details + 8
        placed: list[QRectF] = []
        for line in self.words.details:
            indent = 20.0 if line.caution else 0.0
            bound = metrics.boundingRect(QRectF(0, 0, room - indent, TALL), WRAP, line.text)
            placed.append(QRectF(self.left + indent, top, room - indent, bound.height()))
            top = placed[-1].bottom() + 4
        return tuple(placed)

    @property
    def height(self) -> float:
        last = self.details[-1].bottom() if self.details else self._above_details
        return last + 11

    @property
    def _above_details(self) -> float:
        chips = self.chips[-1].bottom() if self.chips else 0.0
        return max(self.title.bottom(), self.box.bottom(), chips)
