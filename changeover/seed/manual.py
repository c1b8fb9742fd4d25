"""Values that the user vouches for: entered from the machine's own manual, or proved good."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from types import MappingProxyType

from changeover.planter.setup import Value
from changeover.quantities import Quantity, Refusal, scale_to

# Two lots count as of one size within a sixty-fourth of an inch, the step between seed screens
# (common practice, no source).
SIZE_STEP_MM = 25.4 / 64.0
# What does not hang on the disc.
WITHOUT_DISC = frozenset({"disc", "depth", "closing"})
# A position or a distance at the hub means something on its own planter only.
CARRIED_OVER = frozenset({"disc", "brush", "vacuum"})


@dataclass(frozen=True)
class ManualValue:
    """One value that the user entered from the machine's own manual, for a crop and a setting.

    ``value`` is of the setting's own kind; for depth it may be a notch or a depth. ``planter``
    and ``part`` (the code of a disc) narrow it down, None when it holds for all. ``note`` says
    where it stands, such as a page.
    """

    crop: str
    setting: str
    value: Value
    note: str = ""
    planter: str | None = None
    part: str | None = None

    def __post_init__(self) -> None:
        if not self.crop.strip() or not self.setting.strip():
            raise Refusal("A manual value needs a crop and a setting; choose both.")


@dataclass(frozen=True)
class ProvedSetup:
    """A saved setup that proved good: its crop, disc and seed size, and its values by setting key.

    ``seed_diameter`` is the mean diameter of the seed, None when it was not measured; ``proved``
    says how it proved, in words.
    """

    name: str
    crop: str
    disc: str | None = None
    seed_diameter: Quantity | None = None
    values: Mapping[str, Value] = field(default_factory=lambda: MappingProxyType({}))
    planter: str | None = None
    day: date | None = None
    proved: str = ""


def manual_value(
    values: Iterable[ManualValue],
    crops: frozenset[str],
    setting: str,
    planter: str,
    part: str | None,
) -> ManualValue | None:
    """Return the manual value that fits best: for this disc and planter before one for all.

    ``crops`` are the keys under which the crop goes: its own and that of its kind. Of two that
    fit as well the later one wins.
    """
    best: tuple[int, ManualValue] | None = None
    for one in values:
        fits = (
            one.setting == setting
            and one.crop in crops
            and one.planter in (None, planter)
            and one.part in (None, part)
        )
        closeness = 2 * (one.part is not None) + (one.planter is not None)
        if fits and (best is None or closeness >= best[0]):
            best = (closeness, one)
    return best[1] if best else None


def same_size(one: Quantity | None, other: Quantity | None) -> bool:
    """Say whether two mean diameters count as one size; the unmeasured fits the unmeasured."""
    if one is None or other is None:
        return one is other
    return abs(_mm(one) - _mm(other)) <= SIZE_STEP_MM * (1.0 + 1e-12)


def _mm(size: Quantity) -> float:
    scale = scale_to(size.units, "mm")
    return float("nan") if scale is None else float(size.magnitude) * scale


def proved_setup(
    records: Iterable[ProvedSetup],
    crop: str,
    setting: str,
    planter: str,
    disc: str | None,
    seed_diameter: Quantity | None,
) -> ProvedSetup | None:
    """Return the record to follow for a setting: same crop, disc and seed size, newest first.

    A record of this planter comes before one of another; from another only the disc, the brush
    and the vacuum are carried over.
    """
    fitting = [
        one
        for one in records
        if setting in one.values
        and one.crop == crop
        and (setting in WITHOUT_DISC or one.disc == disc)
        and (one.planter == planter or setting in CARRIED_OVER)
        and same_size(one.seed_diameter, seed_diameter)
    ]
    order = sorted(fitting, key=lambda one: (one.planter == planter, one.day or date.min))
    return order[-1] if order else None
