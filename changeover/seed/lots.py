"""Seed lots: what is in the bag, as its tag says."""

from dataclasses import dataclass
from enum import StrEnum

from changeover.planter.names import check_name
from changeover.quantities import Quantity, Refusal, check_kind


class Treatment(StrEnum):
    """Whether the seed carries a treatment, and which caution goes with it."""

    NONE = "untreated"
    TREATED = "treated"


class Purity(StrEnum):
    """The purity class that the crop from this lot must meet."""

    COMMERCIAL = "commercial"
    CERTIFIED = "certified"
    REGISTERED = "registered"
    FOUNDATION = "foundation"
    IDENTITY_PRESERVED = "identity preserved"
    ORGANIC = "organic"


_KINDS = (
    ("thousand_seed_mass", "thousand_seed_mass"),
    *(("seed_size", name) for name in ("length", "width", "thickness")),
    ("mass", "package_mass"),
    ("bulk_density", "bulk_density"),
)


@dataclass(frozen=True)
class SeedLot:
    """One seed lot. ``crop`` is a key of the crop table, such as ``corn`` or ``dry_bean_pinto``.

    ``germination`` is a share, 0 to 1; ``thousand_seed_mass`` a mass; ``length``, ``width`` and
    ``thickness`` the mean seed dimensions; ``sieve`` the grade as printed on the tag, in
    sixty-fourths of an inch (lower, upper); ``package_seeds`` or ``package_mass`` what one
    package holds; ``bulk_density`` a mass per volume; ``lubricant`` the user's own dose of dry
    lubricant for one package, a mass or a volume. Raises Refusal for values that no seed can have.
    """

    number: str
    crop: str
    name: str = ""
    thousand_seed_mass: Quantity | None = None
    sieve: tuple[float, float] | None = None
    length: Quantity | None = None
    width: Quantity | None = None
    thickness: Quantity | None = None
    germination: float | None = None
    treatment: Treatment = Treatment.NONE
    treatment_name: str = ""
    purity: Purity = Purity.COMMERCIAL
    genetically_modified: bool = False
    package_seeds: int | None = None
    package_mass: Quantity | None = None
    packages: float | None = None
    bulk_density: Quantity | None = None
    lubricant: Quantity | None = None

    def __post_init__(self) -> None:
        if not self.number.strip():
            raise Refusal("The seed lot has no number; enter the one on the tag.")
        check_name("The seed lot", self.number)
        if not self.crop.strip():
            raise Refusal(f"Lot {self.number}: choose a crop.")
        if self.germination is not None and not 0 < self.germination <= 1:
            raise Refusal(f"Lot {self.number}: germination must be above 0 and at most 100 %.")
        self._check_kinds()
        mass = self.thousand_seed_mass
        if mass is not None and not 0.1 <= mass.to("g").magnitude <= 3000:
            raise Refusal(f"Lot {self.number}: a thousand seeds must weigh 0.1 to 3 000 g.")
        for name, size in (("long", self.length), ("wide", self.width), ("thick", self.thickness)):
            if size is not None and not 0.2 <= size.to("mm").magnitude <= 40:
                raise Refusal(
                    f"Lot {self.number}: a seed is 0.2 to 40 mm {name}; check the figure."
                )
        if self.sieve is not None and not 1 <= self.sieve[0] <= self.sieve[1] <= 64:
            raise Refusal(f"Lot {self.number}: sieve sizes run from 1 to 64 sixty-fourths, rising.")
        if self.package_seeds is not None and self.package_seeds <= 0:
            raise Refusal(f"Lot {self.number}: a package must hold more than no seeds.")
        if self.package_mass is not None and self.package_mass.to("g").magnitude <= 0:
            raise Refusal(f"Lot {self.number}: a package must weigh more than nothing.")
        if self.packages is not None and self.packages < 0:
            raise Refusal(f"Lot {self.number}: the count of packages cannot be below zero.")
        self._check_bulk()

    def _check_kinds(self) -> None:
        for measure, name in _KINDS:
            what = f"Lot {self.number}, {name.replace('_', ' ')}"
            check_kind(getattr(self, name), measure, what)

    def _check_bulk(self) -> None:
        dense = self.bulk_density
        if dense is not None and not 50 <= dense.to("kg/m^3").magnitude <= 2000:
            raise Refusal(
                f"Lot {self.number}: seed weighs 4 to 155 lb a bushel (50 to 2 000 kg/m³) in bulk."
            )
        dose = self.lubricant
        if dose is None:
            return
        if (
            not (dose.is_compatible_with("g") or dose.is_compatible_with("l"))
            or dose.magnitude <= 0
        ):
            raise Refusal(
                f"Lot {self.number}: the dose of dry lubricant is a mass or volume a package, "
                "such as 2 oz."
            )
