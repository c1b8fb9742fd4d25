"""Fixtures for every test: no screen needed, no deadline for laws, nothing of Qt left behind."""

import os
import sys
import threading
from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, settings

os.environ["QT_QPA_PLATFORM"] = "offscreen"
os.environ.setdefault("QT_LOGGING_RULES", "qt.qpa.fonts.warning=false")

settings.register_profile(
    "changeover",
    deadline=None,
    derandomize=True,
    max_examples=60,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
settings.load_profile("changeover")


def _left_open() -> list[str]:
    """Return what of Qt is still there: top-level widgets that are shown, busy pool threads."""
    if "PySide6.QtWidgets" not in sys.modules:
        return []
    from PySide6.QtCore import QThreadPool
    from PySide6.QtWidgets import QApplication

    if QApplication.instance() is None:
        return []
    shown = [repr(widget) for widget in QApplication.topLevelWidgets() if widget.isVisible()]
    busy = QThreadPool.globalInstance().activeThreadCount()
    return shown + ([f"{busy} busy threads of the pool"] if busy else [])


@pytest.fixture(autouse=True)
def nothing_left(request: pytest.FixtureRequest) -> Iterator[None]:
    """Fail a test that leaves a window shown, a pool thread busy or a thread of its own running."""
    if "qtbot" in request.fixturenames:
        request.getfixturevalue("qapp")
    before = set(threading.enumerate())
    yield
    started = [t for t in set(threading.enumerate()) - before if not t.name.startswith("Dummy-")]
    left = [f"thread {thread.name}" for thread in started if not thread.daemon] + _left_open()
    assert not left, f"left behind: {', '.join(left)}"
