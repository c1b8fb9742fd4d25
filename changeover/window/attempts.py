"""Doing something that may be refused, and saying so where refused edits are said."""

from collections.abc import Callable
from typing import TypeVar

from changeover.quantities import Refusal
from changeover.window.door import Door

_T = TypeVar("_T")


def attempt(door: Door, job: Callable[[], _T]) -> _T | None:
    """Return what a job returns, or None when it was refused; the sentence is then shown."""
    try:
        return job()
    except Refusal as refusal:
        door.refused.emit(str(refusal))
        return None
