"""Ranked advice: what to look at first for each symptom, and who says so."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from changeover.proof.source import PRACTICE, Source
from changeover.seed.reasons import Trust

_METER_TESTS = Source(
    "Singh, Singh & Saraswat 2005, Biosystems Engineering 92(4):429-438 (from memory)",
    Trust.MEMORY,
)
_SPEED_TESTS = Source(
    "Bozdoğan, Scientia Agricola: seeding uniformity for vacuum precision seeders",
    Trust.PUBLISHED,
)
_VACUUM_TESTS = Source(
    "Karayel, Barut & Özmerzi 2004, Biosystems Engineering 87(4):437-444", Trust.PUBLISHED
)
_PLUGGED = Source(
    "University of Nebraska: one plugged hole of 24 drops that row's rate by about 4 %",
    Trust.PUBLISHED,
)
_STANDSTILL = "Fan off, tractor off and key out before a meter is opened."


class Symptom(StrEnum):
    """What a bench run can show."""

    SKIPS_ALL = "skips on most rows"
    SKIPS_ODD = "skips on this row alone"
    DOUBLES_ALL = "doubles on most rows"
    DOUBLES_ODD = "doubles on this row alone"
    SKIPS_AND_DOUBLES = "skips and doubles together"
    REPEATING_CELL = "the same cell fails at every turn of the disc"
    SHORT_RUN = "too few cells to tell"


@dataclass(frozen=True)
class Advice:
    """One thing to do; in a list, the likeliest and cheapest to check stands first."""

    text: str
    source: Source
    caution: str = ""


_ADVICE: Mapping[Symptom, tuple[Advice, ...]] = MappingProxyType(
    {
        Symptom.SKIPS_ALL: (
            Advice(
                "Raise the vacuum a step and run again: skips fall, doubles rise.", _METER_TESTS
            ),
            Advice(
                "Drive slower, or use a disc with more cells: a slower disc skips less.",
                _SPEED_TESTS,
            ),
            Advice("Set the singulator less aggressive, one index at a time.", PRACTICE),
            Advice("Check that cell or hole size suits this seed lot.", _VACUUM_TESTS),
            Advice("Add dry lubricant and stir: sticky treatment bridges in the meter.", PRACTICE),
        ),
        Symptom.SKIPS_ODD: (
            Advice(
                "Blow through the cells of this disc: one may be plugged.", _PLUGGED, _STANDSTILL
            ),
            Advice("Look for a split vacuum hose or a hose off its nipple on this row.", PRACTICE),
            Advice(
                "Check the vacuum seal for hardening, cracks or flat spots.", PRACTICE, _STANDSTILL
            ),
            Advice("Check disc flatness and the hub spacing of this meter.", PRACTICE, _STANDSTILL),
            Advice(
                "Change this disc with a good row's: if the fault moves, it is the disc.",
                PRACTICE,
                _STANDSTILL,
            ),
        ),
        Symptom.DOUBLES_ALL: (
            Advice(
                "Lower the vacuum a step and run again: doubles fall, skips rise.", _METER_TESTS
            ),
            Advice("Set the singulator more aggressive, one index at a time.", PRACTICE),
            Advice("Check that the holes are not too large for this seed lot.", _METER_TESTS),
        ),
        Symptom.DOUBLES_ODD: (
            Advice(
                "Check the singulator of this row: its index, its wear and its seat.",
                PRACTICE,
                _STANDSTILL,
            ),
            Advice(
                "Check the cells of this disc for rounded or enlarged edges.", PRACTICE, _STANDSTILL
            ),
            Advice("Compare the vacuum at this row with its neighbours.", PRACTICE),
        ),
        Symptom.SKIPS_AND_DOUBLES: (
            Advice(
                "Check the singulator, brush and disc together for wear.", PRACTICE, _STANDSTILL
            ),
            Advice("Check that disc and seed lot suit each other: mixed sizes do both.", PRACTICE),
        ),
        Symptom.REPEATING_CELL: (
            Advice(
                "Mark and clean the cell, look for a chip or burr; replace the disc if it stays.",
                PRACTICE,
                _STANDSTILL,
            ),
        ),
        Symptom.SHORT_RUN: (
            Advice(
                "Run more cells before changing anything: a short clean run proves little.",
                Source(
                    "Wilson interval: 0 events in 100 cells leave up to 3.7 % open", Trust.PUBLISHED
                ),
            ),
        ),
    }
)


def advice_for(symptom: Symptom) -> tuple[Advice, ...]:
    """Return what to look at for a symptom, first things first."""
    return _ADVICE[symptom]
