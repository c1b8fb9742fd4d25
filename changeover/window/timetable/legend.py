"""What the numbers on a chart of lanes stand for, and all that is to be said of the chosen bar."""

from itertools import groupby

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QSizePolicy

from changeover.window.timetable.lanes import Bar, LanesChart


class LanesLegend(QLabel):
    """Stands below a chart, and follows it; hidden while there is nothing to say."""

    def __init__(self, chart: LanesChart) -> None:
        super().__init__()
        self._chart = chart
        self.setProperty("look", "soft")
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(True)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        chart.worded.connect(self.follow)
        self.follow()

    def follow(self) -> None:
        """Say what the chart leaves out now."""
        text = legend_text(self._chart)
        self.setText(text)
        self.setVisible(bool(text) and not self._chart.isHidden())


def legend_text(chart: LanesChart) -> str:
    """Return a line for the chosen bar and one for each lane with numbers on its bars."""
    chosen = chart.bar_chosen()
    lines = [f"{chosen.tip.removesuffix('.')}."] if chosen is not None and chosen.tip else []
    for name, group in groupby(chart.numbered(), key=lambda one: one[0]):
        lines.append(f"{name}: {' · '.join(_entry(number, bar) for _, number, bar in group)}")
    return "\n".join(lines)


def _entry(number: int, bar: Bar) -> str:
    """Return the number and words of a bar, which no line end parts."""
    return f"{number} {'✓ ' * bar.done}{bar.text}".replace(" ", "\u00a0")
