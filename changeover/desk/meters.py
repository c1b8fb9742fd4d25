"""Meters: where each one is mounted, and moving them between rows."""

from dataclasses import replace

from changeover.desk.edits import PutMeters
from changeover.planter.parts import Meter
from changeover.quantities import Refusal
from changeover.store.opening import Store


def meters(store: Store, planter: str | None = None) -> tuple[Meter, ...]:
    """Return the meters of one planter from the left, or all of them when ``planter`` is None."""
    with store.read() as work:
        found = work.meters.all()
    if planter is None:
        return found
    mounted = [meter for meter in found if meter.planter == planter]
    return tuple(sorted(mounted, key=lambda meter: (meter.row or 0, meter.serial)))


def move_meter(store: Store, serial: str, planter: str | None, row: int | None) -> PutMeters:
    """Return the edit that mounts a meter on a row, or (None) takes it to the bench.

    A meter that sits there changes places with it. Raises Refusal for an unknown meter,
    planter or row.
    """
    with store.read() as work:
        moved = work.meters.get(serial)
        if planter is not None and row not in work.planters.get(planter).row_numbers:
            raise Refusal(f"{planter} has no row {row}; check the row number.")
        there = next(
            (m for m in work.meters.all() if row and (m.planter, m.row) == (planter, row)), None
        )
    after, before = [replace(moved, planter=planter, row=row)], [moved]
    if there is not None and there.serial != serial:
        after.append(replace(there, planter=moved.planter, row=moved.row))
        before.append(there)
    return PutMeters(tuple(after), before=tuple(before))
