"""The arguments that name a store, a planter and what it is to plant next."""

import argparse
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from changeover.commands.arguments import Parser, add_json, add_units

if TYPE_CHECKING:
    from changeover.desk.edits import NextJob
    from changeover.desk.opening import Store
    from changeover.planter.machine import Planter
    from changeover.planter.places import Place
    from changeover.quantities import Quantity, Units
    from changeover.seed.lots import SeedLot

INPUTS = {
    "speed": ("speed", "Ground speed"),
    "rate": ("seed_rate", "Seed rate"),
    "stand": ("seed_rate", "Stand"),
    "area": ("area", "Area"),
    "row_spacing": ("row_spacing", "Row spacing"),
    "soil_temperature": ("temperature", "Soil temperature"),
}
SHARES = {
    "emergence": 'share of live seeds that come up, such as "90 %%"',
    "overlap": 'share of the area sown twice, such as "3 %%"',
    "reserve": 'share of a fill left when you stop for seed, such as "10 %%"',
    "meter_error": 'share that the meters drop too few, such as "1 %%"',
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
    parser.add_argument("--area", help='part of the field to plant, such as "40 acre"')
    parser.add_argument("--row-spacing", help='wanted of a split-row planter, such as "15 in"')
    parser.add_argument("--moisture", help="of the soil: dry, moist (without it) or wet")
    parser.add_argument("--tillage", help="tilled (without it), mulch till, strip till or no-till")
    parser.add_argument("--soil-temperature", help='at seed depth, such as "52 degF"')
    for key, example in SHARES.items():
        parser.add_argument(f"--{key.replace('_', '-')}", help=example)
    parser.add_argument("--both-ends", action="store_true", help="seed waits at both ends")
    parser.add_argument(
        "--other-lot",
        action="append",
        default=[],
        metavar="TANK=NUMBER",
        help='tank or rows that take another lot, such as "tank 2=K-1" or "rows 1-6=K-1"; '
        "may be given again",
    )
    add_units(parser)
    add_json(parser)


@contextmanager
def opened(args: argparse.Namespace) -> Iterator["Store"]:
    """Open the store of the arguments to read it, and close it again. Raises Refusal."""
    from changeover.desk.opening import open_store

    store = open_store(args.store, reading=True)
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
    given: dict[str, Any] = {key: _read(args, key, units) for key in INPUTS}
    given["seed_rate"], speed = given.pop("rate"), given.pop("speed")
    given |= {key: _share(args, key, units) for key in SHARES} | _soil(args)
    known = lots(store)
    job = NextJob(
        lot=lot_number(args.lot, known),
        field=args.field,
        **given,
        seed_at_both_ends=args.both_ends,
        other_lots=_others(store, args, known),
    )
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


def _soil(args: argparse.Namespace) -> dict[str, Any]:
    """Return moisture and tillage where they are given. Raises Refusal for a word not known."""
    from changeover.quantities import Refusal
    from changeover.seed.fields import Moisture, Tillage

    found: dict[str, Any] = {}
    for name, words in (("moisture", Moisture), ("tillage", Tillage)):
        text = getattr(args, name)
        if text is None:
            continue
        if text not in list(words):
            raise Refusal(f"{name.capitalize()}: “{text}” is not one of {', '.join(words)}.")
        found[name] = words(text)
    return found


def _others(
    store: "Store", args: argparse.Namespace, known: Iterable["SeedLot"]
) -> tuple[tuple["Place", str], ...]:
    """Return the tanks or row hoppers that take another lot, each with its lot. Raises Refusal."""
    from changeover.desk.board import read_board
    from changeover.quantities import Refusal

    if not args.other_lot:
        return ()
    planter = read_board(store, args.planter, proposal=False).planter
    found: dict[Place, str] = {}
    for text in args.other_lot:
        name, _, lot = (part.strip() for part in text.partition("="))
        for place in _hoppers(planter, name, text):
            if place in found:
                raise Refusal(f"Other lot: {place.label} is given two lots; leave one of them.")
            found[place] = lot_number(lot, known)
    return tuple(found.items())


def _hoppers(planter: "Planter", name: str, text: str) -> tuple["Place", ...]:
    """Return the one tank of that name, or the hoppers of rows such as ``rows 1-6``."""
    from changeover.planter.hopper_text import read_hoppers
    from changeover.planter.places import Scope
    from changeover.quantities import Refusal

    places = planter.places(Scope.TANK)
    named = tuple(place for place in places if place.label == name)
    if named and "=" in text:
        return named
    word, _, rows = name.partition(" ")
    if "=" not in text or word not in ("row", "rows"):
        there = ", ".join(place.label for place in places)
        raise Refusal(f"Other lot: “{text}” is not a tank and a lot; the tanks are {there}.")
    return read_hoppers(planter, rows, "Other lot")


def _share(args: argparse.Namespace, key: str, units: "Units") -> float | None:
    from changeover.quantities import read_quantity

    text = getattr(args, key)
    if text is None:
        return None
    share = read_quantity(text, "share", units, key.replace("_", " ").capitalize())
    return float(share.to("percent").magnitude) / 100.0


def _read(args: argparse.Namespace, key: str, units: "Units") -> "Quantity | None":
    from changeover.quantities import read_quantity

    measure, name = INPUTS[key]
    text = getattr(args, key)
    return None if text is None else read_quantity(text, measure, units, name)
