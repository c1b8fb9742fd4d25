"""The figures of ``changeover rate``: name, measure, and for each that follows its reason."""

from collections.abc import Mapping
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from changeover.quantities import Quantity
    from changeover.seed.reasons import Figure

NAMES = {
    "rate": ("Seed rate", "seed_rate"),
    "stand": ("Stand", "seed_rate"),
    "row_spacing": ("Row spacing", "row_spacing"),
    "germination": ("Germination", "share"),
    "emergence": ("Emergence", "share"),
    "meter_error": ("Meter error", "share"),
    "speed": ("Ground speed", "speed"),
    "cells": ("Cells on the disc", "count"),
    "seeds_per_mass": ("Seeds per mass", "seeds_per_mass"),
    "thousand_seed_mass": ("Thousand-seed mass", "thousand_seed_mass"),
    "spacing": ("Spacing in the row", "spacing"),
    "twin_row_spacing": ("Spacing in each twin row", "spacing"),
    "seeds_per_length": ("Seeds per length of row", "seeds_per_length"),
    "row_length_thousandth": ("Row length of a thousandth", "row_length"),
    "seeds_per_second": ("Seeds per second and row", "seeds_per_second"),
    "disc_speed": ("Disc speed", "disc_speed"),
    "most_disc_speed": ("Most disc speed", "disc_speed"),
    "top_speed": ("Top ground speed advised", "speed"),
    "mass_rate": ("Mass rate", "mass_rate"),
    "motor_ratio": ("Motor turns in a disc turn", "ratio"),
    "motor_least": ("Least motor speed", "disc_speed"),
    "motor_most": ("Most motor speed", "disc_speed"),
    "displacement": ("Oil in a motor turn", "displacement"),
    "volumetric_efficiency": ("Volumetric efficiency", "share"),
    "motor_speed": ("Motor speed", "disc_speed"),
    "oil_flow": ("Oil flow", "oil_flow"),
    "slowest": ("Slowest at this rate", "speed"),
    "fastest": ("Fastest at this rate", "speed"),
    "least_rate": ("Least rate at this speed", "seed_rate"),
    "most_rate": ("Most rate at this speed", "seed_rate"),
}

HOW = {
    "spacing": "1 / (seed rate · row spacing)",
    "twin_row_spacing": "2 / (seed rate · spacing of the pairs)",
    "seeds_per_length": "seed rate · row spacing",
    "row_length_thousandth": "a thousandth of the area / row spacing",
    "seeds_per_second": "seed rate · row spacing · ground speed",
    "disc_speed": "60 · seeds per second / cells, one seed in each",
    "top_speed": "the lower of 16 seeds/s and most disc speed · cells / 60, over seeds per length",
    "mass_rate": "seed rate / seeds per mass",
    "motor_speed": "disc speed · ratio",
    "oil_flow": "motor speed · displacement / volumetric efficiency",
    "slowest": "least motor speed / ratio · cells / seeds per length",
    "fastest": "most motor speed / ratio · cells / seeds per length",
    "least_rate": "least motor speed / ratio · cells / (ground speed · row spacing)",
    "most_rate": "most motor speed / ratio · cells / (ground speed · row spacing)",
}
WHY = {
    "rate": "The seeds to sow for that stand.",
    "spacing": "The mean distance from seed to seed in one row.",
    "twin_row_spacing": "Each of two twin rows takes half the seeds.",
    "seeds_per_length": "What to find when you dig along one row.",
    "row_length_thousandth": "Count seeds or plants over this length and multiply by 1000.",
    "seeds_per_second": "What the meter must single out and the tube must carry.",
    "disc_speed": "How fast the disc turns at that ground speed.",
    "top_speed": "Above it expect more skips; 16 seeds/s is from one machine, cotton and maize.",
    "mass_rate": "The same rate by weight, at the size of this lot.",
    "motor_speed": "What the motor must turn for that disc speed.",
    "oil_flow": "What the tractor must give this motor alone.",
    "slowest": "Below it the motor would turn slower than it can.",
    "fastest": "Above it the motor would turn faster than it can.",
    "least_rate": "The motor at its least speed.",
    "most_rate": "The motor at its most speed.",
}
STAND = "stand / (germination · emergence · (1 − meter error))"
STAND_SOURCE = "by definition; University of Arizona az1203 and NDSU A1961 multiply the same way"


def figures_of(quantities: Mapping[str, "Quantity"]) -> list["Figure"]:
    """Return each quantity as a figure with its reason, in the order of ``NAMES``."""
    from changeover.seed.reasons import Figure, Reason, Trust
    from changeover.seed.speed import RELEASE_SOURCE

    how, sources = dict(HOW), {"rate": STAND_SOURCE, "top_speed": RELEASE_SOURCE}
    if "most_disc_speed" in quantities:
        sources["top_speed"] += "; your manual"
    if "stand" in quantities:
        how["rate"] = STAND
    figures = []
    for key, (name, measure) in NAMES.items():
        if key not in quantities:
            continue
        if key in how:
            source = sources.get(key, "by definition")
            reason = Reason(key, WHY[key], source, Trust.PUBLISHED, how[key])
        else:
            reason = Reason(key, "As you gave it.", "your entry", Trust.RECORD)
        figures.append(Figure(key, name, quantities[key], measure, reason))
    return figures
