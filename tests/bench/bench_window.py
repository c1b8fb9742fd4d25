"""The window: from process start to paint, another planter, a value on 48 rows, scrolling."""

import itertools
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterable, Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from changeover.bundled import bundled
from tests.bench.timing import Ratio, Spell, seconds_of

AT_ONCE = 0.05
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
from PySide6.QtCore import QEvent, QTimer
from PySide6.QtWidgets import QApplication, QTableView
class Watched(QApplication):
    def notify(self, receiver, event):
        done = super().notify(receiver, event)
        if event.type() == QEvent.Type.Paint and receiver.objectName() == "matrix_cells":
            print(time.monotonic(), flush=True)
            os._exit(0)
        return done
app = Watched([])
from changeover.app import run
run(sys.argv[1])
"""


def started(code: str, *arguments: str) -> float:
    """Return the seconds from process start to the first paint that a program tells of."""
    begun = time.monotonic()
    done = subprocess.run(
        [sys.executable, "-c", code, *arguments], cwd=ROOT, capture_output=True, check=True
    )
    return float(done.stdout.split()[-1]) - begun


def start_up(repeat: int = 9) -> Ratio:
    """Measure both by turns, so that a busy moment hits both."""
    with tempfile.TemporaryDirectory() as folder:
        store = shutil.copy(bundled("demo.sqlite"), Path(folder) / "demo.sqlite")
        os.environ["XDG_CONFIG_HOME"] = folder
        started(OURS, str(store))
        pairs = [(started(OURS, str(store)), started(EMPTY)) for _ in range(repeat)]
    ours, empty = zip(*pairs, strict=True)
    against = "an empty Qt window with SQLAlchemy imported"
    return Ratio("process start to the first painted rows", ours, empty, against, 2)


@contextmanager
def window_on_48_rows() -> Iterator[tuple[object, object]]:
    """Give the application and a window on the demo with a planter of 48 rows added."""
    from changeover.app import application, build_window
    from changeover.desk.door import apply
    from changeover.desk.edits import NextJob, ChooseNext, PutPlanter, TakeProposal
    from changeover.desk.opening import open_store
    from changeover.window.preferences import Preferences
    from tests.window.invented import Answers, long_planter

    app = application()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(shutil.copy(bundled("demo.sqlite"), Path(folder) / "demo.sqlite"))
        with closing(open_store(path)) as store:
            apply(store, PutPlanter(long_planter(48)), "bench")
            lot = next(lot.number for lot in _lots(store) if lot.crop == "soybean")
            apply(store, ChooseNext("Long Acre", NextJob(lot)), "bench")
            apply(store, TakeProposal("Long Acre"), "bench")
            kept = Preferences(Path(folder) / "window.ini")
            window = build_window(store, kept, Answers(), "Long Acre")
            window.resize(1920, 1080)
            window.show()
            window.begin()
            app.processEvents()
            yield app, window
            window.close()


def _lots(store: object) -> Iterable[object]:
    from changeover.desk.lots import lots

    return lots(store)


def measure() -> Iterable[Ratio | Spell]:
    yield start_up()
    with window_on_48_rows() as (app, window):
        page = window.open_page("switch")
        names = itertools.cycle(["Old Fiddle 24", "Long Acre"])
        depths = itertools.cycle(["1.5", "2.0"])
        line = [setting.key for setting in page.model.sheet.lines].index("depth")
        every = [(line, column) for column in range(48)]
        bar = page.view.horizontalScrollBar()
        steps = itertools.cycle([*range(0, bar.maximum() + 1, 40)])

        def switch_planter() -> None:
            window.outlook.show_planter(next(names))
            app.processEvents()

        def set_rows() -> None:
            page.view.set_all(next(depths))
            app.processEvents()

        def scroll() -> None:
            bar.setValue(next(steps))
            app.processEvents()

        yield Spell("another planter", seconds_of(switch_planter, 30, 2), AT_ONCE)
        window.outlook.show_planter("Long Acre")
        app.processEvents()
        page.view.select(every)
        yield Spell("a value on all of 48 rows", seconds_of(set_rows, 30, 2), AT_ONCE)
        yield Spell("a step of scrolling", seconds_of(scroll, 60, 2), AT_ONCE)
