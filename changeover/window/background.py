"""Work behind the window: one search at a time, its progress, its end, and the wish to stop."""

import contextlib
import gc
import sys
import threading
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Any, Protocol

from PySide6.QtCore import QCoreApplication, QEventLoop, QObject, Qt, QThreadPool, QTimer, Signal

from changeover.quantities import Refusal

LOOK_MS = 80
"""How often progress is looked at."""

TURN_SECONDS = 0.0005
"""How long Python works behind the window before the window may have its turn, when it asks;
our own choice, by trial: with Python's 5 ms a paint that calls back ten times lasts 50 ms."""

Stop = Callable[[], bool]
Report = Callable[[Any], None]
Job = Callable[[Stop, Report], Any]


class Pool(Protocol):
    """Runs a callable, elsewhere or here."""

    def start(self, job: Callable[[], None], /) -> None: ...


class _WindowFirst:
    """Lets the window have its turn soon while any work goes on behind it.

    Meanwhile nothing is collected, since that would hold the window up and might take apart
    things of the window in another thread. What has been loaded is then left out for good.
    """

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._under_way = 0
        self._usual, self._modules = sys.getswitchinterval(), 0

    def __enter__(self) -> None:
        with self._lock:
            self._under_way += 1
            if self._under_way == 1:
                self._usual, self._modules = sys.getswitchinterval(), len(sys.modules)
                sys.setswitchinterval(TURN_SECONDS)
                gc.disable()

    def __exit__(self, *_error: object) -> None:
        with self._lock:
            self._under_way -= 1
            if not self._under_way:
                sys.setswitchinterval(self._usual)
                if len(sys.modules) > self._modules:
                    gc.freeze()
                gc.enable()


_WINDOW_FIRST = _WindowFirst()


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
            with _WINDOW_FIRST:
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
