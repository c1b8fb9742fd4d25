"""Bars stand where their time says, and are chosen by mouse and keys, and dragged."""

from itertools import combinations

import pytest
from PySide6.QtCore import QPoint, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPixmap
from pytestqt.qtbot import QtBot

from changeover.window.outlook import Outlook
from changeover.window.timetable.lanes import Bar, Lane, Lanes, LanesChart, Look, _paint_number
from changeover.window.timetable.legend import LanesLegend

ANN = Lane("Ann", (Bar("a", 0, 60, "meters 1-8", "Ann's meters.", Look.MAIN, movable=True),))
BO = Lane("Bo", (Bar("b", 30, 90, "depth", "Bo's depth", done=True, held=True),))


@pytest.fixture
def chart(qtbot: QtBot) -> LanesChart:
    made = LanesChart(Outlook(lambda *_a, **_k: None), "Who does what")  # type: ignore[arg-type,return-value]
    made.show_lanes(Lanes((ANN, BO), 0, 120, (15, 30, 60), str, now=45))
    qtbot.addWidget(made)
    made.resize(470, made.sizeHint().height())
    made.show()
    return made


def middle(chart: LanesChart, lane: int) -> QPoint:
    return chart.rect_of(lane, chart.shown.lanes[lane].bars[0]).center().toPoint()


def test_a_bar_is_as_long_as_its_time(chart: LanesChart) -> None:
    rect = chart.rect_of(0, ANN.bars[0])
    assert rect.width() == pytest.approx(chart.x_of(60) - chart.x_of(0))
    assert chart.value_at(chart.x_of(77)) == pytest.approx(77)


def test_a_click_chooses_a_bar_and_the_ground_chooses_none(qtbot: QtBot, chart: LanesChart) -> None:
    with qtbot.waitSignal(chart.chosen) as heard:
        qtbot.mouseClick(chart, Qt.MouseButton.LeftButton, pos=middle(chart, 1))
    assert heard.args == ["b"]
    assert chart.accessibleDescription() == "Bo's depth"
    qtbot.mouseClick(chart, Qt.MouseButton.LeftButton, pos=QPoint(460, 40))
    assert chart.key == ""


def test_the_arrow_keys_go_from_bar_to_bar(qtbot: QtBot, chart: LanesChart) -> None:
    seen = []
    for _ in range(3):
        qtbot.keyClick(chart, Qt.Key.Key_Right)
        seen.append(chart.key)
    assert seen == ["a", "b", "a"]


def test_a_movable_bar_is_dropped_on_another_lane_and_time(qtbot: QtBot, chart: LanesChart) -> None:
    begin = middle(chart, 0)
    end = begin + QPoint(round(chart.x_of(30) - chart.x_of(0)), 40)
    with qtbot.waitSignal(chart.dropped) as heard:
        qtbot.mousePress(chart, Qt.MouseButton.LeftButton, pos=begin)
        qtbot.mouseMove(chart, end)
        qtbot.mouseRelease(chart, Qt.MouseButton.LeftButton, pos=end)
    key, lane, value = heard.args
    assert (key, lane) == ("a", "Bo")
    assert value == pytest.approx(30, abs=0.5)


@pytest.mark.parametrize(
    ("key", "to"),
    [
        (Qt.Key.Key_Right, ("Ann", 15)),
        (Qt.Key.Key_Left, ("Ann", -15)),
        (Qt.Key.Key_Down, ("Bo", 0)),
    ],
)
def test_shift_and_an_arrow_key_move_the_chosen_bar(
    qtbot: QtBot, chart: LanesChart, key: Qt.Key, to: tuple[str, float]
) -> None:
    chart.choose("a")
    with qtbot.waitSignal(chart.dropped) as heard:
        qtbot.keyClick(chart, key, Qt.KeyboardModifier.ShiftModifier)
    assert tuple(heard.args) == ("a", *to)


def test_a_bar_that_is_not_movable_stays(qtbot: QtBot, chart: LanesChart) -> None:
    dropped: list[object] = []
    chart.dropped.connect(lambda *args: dropped.append(args))
    qtbot.mousePress(chart, Qt.MouseButton.LeftButton, pos=middle(chart, 1))
    qtbot.mouseRelease(chart, Qt.MouseButton.LeftButton, pos=middle(chart, 1) + QPoint(60, 0))
    chart.choose("b")
    qtbot.keyClick(chart, Qt.Key.Key_Up, Qt.KeyboardModifier.ShiftModifier)
    assert dropped == []


def test_everything_is_painted_without_a_word_from_qt(qtbot: QtBot, chart: LanesChart) -> None:
    image = chart.grab().toImage()
    line = image.pixelColor(round(chart.x_of(45)), 21)
    assert line == chart._outlook.tokens.colour("accent")


SHORT = (
    Bar("c", 0, 2.5, "meters 9-16", "Cy's meters", Look.MAIN),
    Bar("d", 3, 8, "tubes", "Cy's tubes", done=True),
    Bar("e", 60, 110, "depth"),
)


def test_a_bar_too_short_for_its_words_bears_a_number_that_is_written_out(
    qtbot: QtBot, chart: LanesChart
) -> None:
    chart.show_lanes(Lanes((ANN, Lane("Cy", SHORT)), 0, 120, (15, 30, 60), str))
    legend = LanesLegend(chart)
    qtbot.addWidget(legend)
    assert chart.numbered() == (("Cy", 1, SHORT[0]), ("Cy", 2, SHORT[1]))
    assert legend.text().replace("\u00a0", " ") == "Cy: 1 meters 9-16 · 2 ✓ tubes"
    chart.resize(1600, chart.height())
    assert legend.text().replace("\u00a0", " ") == "Cy: 1 meters 9-16"
    chart.resize(4000, chart.height())
    assert legend.text() == ""


def test_the_number_of_a_short_bar_is_painted_close_to_it(chart: LanesChart) -> None:
    chart.show_lanes(Lanes((ANN, Lane("Cy", SHORT[:1])), 0, 120, (15, 30, 60), str))
    rect = chart.rect_of(1, SHORT[0])
    below = QRect(round(rect.left()) - 4, round(rect.bottom()) + 1, 20, 8)
    image = chart.grab(below).toImage()
    assert len({image.pixel(x, y) for x in range(20) for y in range(8)}) > 3


def test_words_spill_behind_a_bar_only_where_all_of_them_fit(chart: LanesChart) -> None:
    near, far = Bar("n", 0, 4, "beans Otter Flat"), Bar("f", 12, 14, "corn Lantern Rise")
    chart.show_lanes(Lanes((Lane("Ann", (near, far)),), 0, 120, (15,), str, spill=True))
    assert [bar for _, _, bar in chart.numbered()] == [near]


def test_a_touch_on_a_bar_says_all_of_it_below_the_chart(qtbot: QtBot, chart: LanesChart) -> None:
    legend = LanesLegend(chart)
    qtbot.addWidget(legend)
    qtbot.mouseClick(chart, Qt.MouseButton.LeftButton, pos=middle(chart, 1))
    assert legend.text() == "Bo's depth."
    chart.choose("a")
    assert legend.text() == "Ann's meters."


def test_numbers_beside_their_bars_are_never_painted_over_each_other(chart: LanesChart) -> None:
    bars = tuple(Bar(f"k{n}", 3 * n, 3 * n + 1, "furrow 1-13", number=10 + n) for n in range(9))
    chart.show_lanes(Lanes((Lane("Cy", bars),), 0, 400, (60,), str))
    taken: list[QRectF] = []
    paper = QPixmap(100, 100)
    painter = QPainter(paper)
    for bar in bars:
        rect = chart.rect_of(0, bar)
        _paint_number(painter, rect, rect, str(bar.number), taken)
    painter.end()
    assert 2 <= len(taken) < len(bars)
    assert not any(one.intersects(other) for one, other in combinations(taken, 2))
