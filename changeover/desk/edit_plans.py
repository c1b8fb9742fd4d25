"""Editing what plans go by: crew, shared tools, season, fixed jobs, deliveries, flushes."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from changeover.desk.changed import Changed
from changeover.desk.shop_edits import (
    PutDelivery,
    PutFixing,
    PutFlush,
    PutMember,
    PutSeason,
    PutTool,
)
from changeover.store.unit_of_work import UnitOfWork

_Write = Callable[[UnitOfWork, Any], None]


def _fixing(work: UnitOfWork, edit: PutFixing) -> None:
    if edit.value is not None:
        work.jobs.get(edit.value.job)
        work.planters.get(edit.value.planter)
    work.fixings.put(edit.value, edit.before)


def _delivery(work: UnitOfWork, edit: PutDelivery) -> None:
    if edit.value is not None:
        work.parts.get(edit.value.part)
    work.deliveries.put(edit.value, edit.before)


def _flush(work: UnitOfWork, edit: PutFlush) -> None:
    if edit.value is not None:
        work.planters.get(edit.value.planter)
    work.flushes.put(edit.value, edit.before)


def rename_planter(work: UnitOfWork, old: str, new: str) -> None:
    """Let fixed jobs and flushes follow a planter's new name."""
    for kept in (work.fixings, work.flushes):
        for value in kept.all():
            if value.planter == old:
                kept.put(replace(value, planter=new), value)  # type: ignore[arg-type]


WRITE: Mapping[type, tuple[frozenset[Changed], _Write]] = {
    PutMember: (frozenset({Changed.CREW}), lambda work, e: work.crew.put(e.value, e.before)),
    PutTool: (frozenset({Changed.CREW}), lambda work, e: work.tools.put(e.value, e.before)),
    PutSeason: (frozenset({Changed.SEASON}), lambda work, e: work.season.put(e.value, e.before)),
    PutFixing: (frozenset({Changed.SEASON}), _fixing),
    PutDelivery: (frozenset({Changed.PARTS}), _delivery),
    PutFlush: (frozenset({Changed.TICKS}), _flush),
}
