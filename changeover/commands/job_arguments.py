"""The arguments that name a store, a planter and what it is to plant next."""

import argparse
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from typing import TYPE_CHECKING

from changeover.commands.arguments import Parser, add_json, add_units

if TYPE_CHECKING:
    from changeover.desk.edits import NextJob
    from changeover.desk.opening import Store
    from changeover.quantities import Quantity, Units
    from changeover.seed.lots import SeedLot

INPUTS = {
    "speed": ("speed", "Ground speed"),
    "rate": ("seed_rate", "Seed rate"),
    "stand": ("seed_rate", "Stand"),
}


def add_job_arguments(parser: Parser) -> None:
    """Add the store, planter, lot and field, the inputs of the job, units and ``--json``."""
    parser.add_argument("store", metavar="STORE", help="the store: a file, or a PostgreSQL address")
    parser.add_argument("--planter", required=True, metavar="NAME", help="planter in the store")
    parser.add_argument("--lot", required=True, metavar="NAME", help="seed lot, by number or name")
    parser.add_argument("--field", metavar="NAME", help="field; without one an acre of loam")
    parser.add_argument("--speed", help='ground speed, such as "5 mph"')
    parser.add_argument("--rate", help='seeds per area, such as "32000/acre"')
    parser.add_argument("--stand", help='plants per area that are to stand, such as "30000/acre"')
    add_units(parser)
    add_json(parser)


@contextmanager
def opened(args: argparse.Namespace) -> Iterator["Store"]:
    """Open the store of the arguments and close it again. Raises Refusal."""
    from changeover.desk.opening import open_store

    store = open_store(args.store)
    try:
        yield store
    finally:
        store.close()


def read_job(args: argparse.Namespace, store: "Store", units: "Units") -> "NextJob":
    """Return the job of the arguments. Raises Refusal for text that is no quantity."""
    from changeover.desk.edits import NextJob
    from changeover.desk.lots import lots
    from changeover.quantities import Refusal

    if args.rate and args.stand:
        raise Refusal("A seed rate and a stand are two ways to say one thing; give one of them.")
    speed, rate, stand = (_read(args, key, units) for key in INPUTS)
    lot = lot_number(args.lot, lots(store))
    job = NextJob(lot=lot, field=args.field, seed_rate=rate, stand=stand)
    return job if speed is None else replace(job, speed=speed)


def lot_number(text: str, lots: Iterable["SeedLot"]) -> str:
    """Return the number of the lot that is called by its number or by its name.

    Raises Refusal when there is none, or when several have that name.
    """
    from changeover.quantities import Refusal

    known = {lot.number: lot.name for lot in lots}
    if text in known:
        return text
    named = [number for number, name in known.items() if name.casefold() == text.casefold()]
    if len(named) == 1:
        return named[0]
    if named:
        raise Refusal(f"Several lots are called “{text}”; give a number: {', '.join(named)}.")
    there = ", ".join(f"{number} ({name})" if name else number for number, name in known.items())
    raise Refusal(f"There is no lot “{text}” in this store; it has {there or 'no lots yet'}.")


def _read(args: argparse.Namespace, key: str, units: "Units") -> "Quantity | None":
    from changeover.quantities import read_quantity

    measure, name = INPUTS[key]
    text = getattr(args, key)
    return None if text is None else read_quantity(text, measure, units, name)
