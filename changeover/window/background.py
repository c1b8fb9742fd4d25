"""Work behind the window: one search at a time, its progress, its end, and the wish to stop."""

import contextlib
import threading
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Any, Protocol

from PySide6.QtCore import QCoreApplication, QEventLoop, QObject, Qt, QThreadPool, QTimer, Signal

from changeover.quantities import Refusal

LOOK_MS = 80
"""How often progress is looked at."""

Stop = Callable[[], bool]
Report = Callable[[Any], None]
Job = Callable[[Stop, Report], Any]


class Pool(Protocol):
    """Runs a callable, elsewhere or here."""

    def start(self, job: Callable[[], None], /) -> None: ...


@dataclass
class _Run:
    """One search under way: its number, the wish to stop, and the progress told last."""

    number: int
    wish: threading.Event
    told: Any = None


@dataclass(frozen=True)
class _End:
    """What became of a search."""

    number: int
    found: Any = None
    error: BaseException | None = None


class Background(QObject):
    """Runs one search at a time off the thread of the window.

    A job gets ``stop`` (whether it is to end) and ``report`` (called with its progress), works
    on frozen values alone, and returns what it found. ``done`` carries that, ``failed`` a
    refusal's sentence; ``progressed`` follows at most every 80 ms. Starting another search
    stops the one before, whose end is then not heard.
    """

    progressed = Signal(object)
    done = Signal(object)
    failed = Signal(str)
    busy_changed = Signal(bool)
    _ended = Signal(object)

    def __init__(self, parent: QObject | None = None, pool: Pool | None = None) -> None:
        super().__init__(parent)
        self._pool = pool
        self._run: _Run | None = None
        self._number = 0
        wishes = self._wishes = [threading.Event()]
        self.destroyed.connect(partial(_stop_last, wishes))
        self._timer = QTimer(self, interval=LOOK_MS)
        self._timer.timeout.connect(self._look)
        self._ended.connect(self._hear, Qt.ConnectionType.QueuedConnection)
        app = QCoreApplication.instance()
        if app is not None:
            app.aboutToQuit.connect(self.stop)

    @property
    def busy(self) -> bool:
        return self._run is not None

    def start(self, job: Job) -> None:
        """Begin a search in place of the one under way."""
        self.stop()
        self._number += 1
        self._wishes[:] = [threading.Event()]
        run = self._run = _Run(self._number, self._wishes[-1])
        self._timer.start()
        self.busy_changed.emit(True)  # noqa: FBT003 -- a signal takes no names
        (self._pool or QThreadPool.globalInstance()).start(lambda: self._work(job, run))

    def stop(self) -> None:
        """Ask the search under way to end with its best so far."""
        if self._run is not None:
            self._run.wish.set()

    def wait(self) -> None:
        """Let the window run on until no search is under way."""
        loop = QEventLoop(self)
        self.busy_changed.connect(loop.quit)
        while self.busy:
            loop.exec()

    def _work(self, job: Job, run: _Run) -> None:
        def report(told: Any) -> None:
            run.told = told

        try:
            end = _End(run.number, found=job(run.wish.is_set, report))
        except BaseException as error:  # handed to the thread of the window, which raises it
            end = _End(run.number, error=error)
        with contextlib.suppress(RuntimeError):  # the window has gone meanwhile
            self._ended.emit(end)

    def _look(self) -> None:
        if self._run is not None and self._run.told is not None:
            self.progressed.emit(self._run.told)

    def _hear(self, end: _End) -> None:
        if self._run is None or end.number != self._run.number:
            return
        self._run = None
        self._timer.stop()
        self.busy_changed.emit(False)  # noqa: FBT003 -- a signal takes no names
        if isinstance(end.error, Refusal):
            self.failed.emit(str(end.error))
        elif end.error is not None:
            raise end.error
        else:
            self.done.emit(end.found)


def _stop_last(wishes: list[threading.Event]) -> None:
    """Stop what is under way when its window goes."""
    wishes[-1].set()
