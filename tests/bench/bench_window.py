"""The window: from process start to paint, another planter, a value on 48 rows, scrolling."""

import gc
import itertools
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterable, Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QEvent, QEventLoop, QObject, QTimer
from PySide6.QtWidgets import QWidget

from changeover.app import application, build_window
from changeover.bundled import bundled
from changeover.desk.door import apply
from changeover.desk.edits import ChooseNext, NextJob, PutPlanter, TakeProposal
from changeover.desk.lots import lots
from changeover.desk.opening import open_store
from changeover.window.main_window import MainWindow
from changeover.window.preferences import Preferences
from tests.bench.timing import Ratio, Spell
from tests.window.invented import Answers, long_planter

AT_ONCE = 0.05
AGAINST = "an empty Qt window with SQLAlchemy imported"
ROOT = Path(__file__).resolve().parents[2]
EMPTY = """
import os, time
import sqlalchemy, sqlalchemy.orm
from PySide6.QtWidgets import QApplication, QWidget
class Bare(QWidget):
    def paintEvent(self, event):
        print(time.monotonic(), flush=True)
        os._exit(0)
app = QApplication([])
bare = Bare()
bare.resize(1280, 720)
bare.show()
app.exec()
"""
OURS = """
import os, sys, time
import changeover.app as ours
from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtWidgets import QWidget
def told():
    print(time.monotonic(), flush=True)
    os._exit(0)
class Told(QObject):
    def eventFilter(self, widget, event):
        if event.type() == QEvent.Type.Paint:
            QTimer.singleShot(0, told)
        return False
def built(*arguments):
    window = plain(*arguments)
    begin = window.begin
    def begun():
        begin()
        window.told = Told()
        window.findChild(QWidget, "matrix_cells").installEventFilter(window.told)
    window.begin = begun
    return window
def veiled(*arguments):
    curtain = veil(*arguments)
    curtain.painted.connect(told)
    return curtain
plain, veil = ours.build_window, ours.Curtain
if sys.argv[2] == "rows":
    ours.build_window = built
else:
    ours.Curtain = veiled
ours.run(sys.argv[1])
"""


def started(code: str, *arguments: str) -> float:
    """Return the seconds from process start to the first paint that a program tells of."""
    begun = time.monotonic()
    done = subprocess.run(
        [sys.executable, "-c", code, *arguments], cwd=ROOT, capture_output=True, check=True
    )
    return float(done.stdout.split()[-1]) - begun


def start_up(repeat: int = 9) -> Iterator[Ratio]:
    """Measure by turns, so that a busy moment hits all alike.

    The window is there with its frame before the store is opened; its rows come after.
    """
    with tempfile.TemporaryDirectory() as folder:
        store = shutil.copy(bundled("demo.sqlite"), Path(folder) / "demo.sqlite")
        os.environ["XDG_CONFIG_HOME"] = folder
        started(OURS, str(store), "rows")
        taken = [
            (
                started(OURS, str(store), "frame"),
                started(OURS, str(store), "rows"),
                started(EMPTY),
            )
            for _ in range(repeat)
        ]
    frame, rows, empty = zip(*taken, strict=True)
    yield Ratio("process start to the window on the screen", frame, empty, AGAINST, 2)
    yield Ratio("process start to the demo's rows painted", rows, empty, AGAINST, 2)


def rest(milliseconds: int) -> None:
    """Let the window live for a while, with its event loop as in the program.

    ``QTest.qWait`` would keep the interpreter from threads behind the window.
    """
    loop = QEventLoop()
    QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


class Painted(QObject):
    """Takes the time at which the last of some widgets was painted."""

    def __init__(self, *widgets: QWidget) -> None:
        super().__init__()
        self._widgets = widgets
        self._left: set[QWidget] = set()
        self.at = 0.0
        for widget in widgets:
            widget.installEventFilter(self)

    def eventFilter(self, widget: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.Paint and widget in self._left:
            self._left.discard(widget)  # type: ignore[arg-type]
            QTimer.singleShot(0, self, self._note)
        return False

    def _note(self) -> None:
        if not self._left and not self.at:
            self.at = time.perf_counter()

    def seconds(self, work: Callable[[], object], repeat: int) -> list[float]:
        """Return the seconds from each call of ``work`` until all was painted after it."""
        taken = []
        for _ in range(repeat + 2):
            self._left, self.at = set(self._widgets), 0.0
            begun = time.perf_counter()
            work()
            while not self.at:
                QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 5)
            taken.append(self.at - begun)
            rest(400)
        return taken[2:]


@contextmanager
def window_on_48_rows() -> Iterator[MainWindow]:
    """Give a window on the demo with a planter of 48 rows added."""
    app = application()
    app.setQuitOnLastWindowClosed(False)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(shutil.copy(bundled("demo.sqlite"), Path(folder) / "demo.sqlite"))
        with closing(open_store(path)) as store:
            apply(store, PutPlanter(long_planter(48)), "bench")
            lot = next(lot.number for lot in lots(store) if lot.crop == "soybean")
            apply(store, ChooseNext("Long Acre", NextJob(lot)), "bench")
            apply(store, TakeProposal("Long Acre"), "bench")
            kept = Preferences(Path(folder) / "window.ini")
            window = build_window(store, kept, Answers(), "Long Acre")
            window.resize(1920, 1080)
            window.show()
            window.begin()
            rest(200)
            gc.freeze()  # as the program does once its window is there
            yield window
            window.close()


def measure() -> Iterable[Ratio | Spell]:
    yield from start_up()
    with window_on_48_rows() as window:
        page = window.open_page("switch")
        rest(300)
        names = itertools.cycle(["Old Fiddle 24", "Long Acre"])
        depths = itertools.cycle(["1.5", "2.0"])
        line = [setting.key for setting in page.model.sheet.lines].index("depth")
        bar = page.view.horizontalScrollBar()
        steps = itertools.cycle([*range(20, bar.maximum() + 1, 20), 0])
        both = Painted(page.view.viewport(), page.drawing)
        another = both.seconds(lambda: window.outlook.show_planter(next(names)), 20)
        yield Spell("another planter", another, AT_ONCE)
        page.view.select([(line, column) for column in range(48)])
        rest(300)
        cells = Painted(page.view.viewport())
        setting = cells.seconds(lambda: page.view.set_all(next(depths)), 20)
        yield Spell("a value on all of 48 rows", setting, AT_ONCE)
        scrolling = both.seconds(lambda: bar.setValue(next(steps)), 20)
        yield Spell("a step of scrolling", scrolling, AT_ONCE)
