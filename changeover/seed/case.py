"""One case of the look-up: a planter, the rows that take one lot, and all that is known of them."""

from dataclasses import dataclass
from functools import cached_property

from changeover.planter.machine import Planter
from changeover.planter.parts import Meter, Part, ShelfCount
from changeover.planter.setup import Setup
from changeover.quantities import Quantity, Units
from changeover.seed import rate
from changeover.seed.bench_run import BenchSeen
from changeover.seed.crops import Crop, CropFigure
from changeover.seed.fields import FieldJob
from changeover.seed.lots import SeedLot
from changeover.seed.manual import ManualValue, ProvedSetup
from changeover.seed.seed_size import SeedSize, seed_size


@dataclass(frozen=True)
class Case:
    """What the look-up knows about the rows that take one lot.

    ``rows`` are those that work, ``row_spacing`` the spacing between them; ``as_found`` is the
    setup that the planter has now, ``bench`` the bench runs, the latest first.
    """

    planter: Planter
    as_found: Setup
    lot: SeedLot
    crop: Crop
    job: FieldJob
    rows: tuple[int, ...]
    row_spacing: Quantity
    parts: tuple[Part, ...] = ()
    shelf: tuple[ShelfCount, ...] = ()
    manual: tuple[ManualValue, ...] = ()
    records: tuple[ProvedSetup, ...] = ()
    meters: tuple[Meter, ...] = ()
    units: Units = Units.US
    bench: tuple[BenchSeen, ...] = ()

    @cached_property
    def size(self) -> SeedSize | None:
        """The size of the lot's seed, None when nothing is known of it."""
        return seed_size(self.lot, self.crop)

    @cached_property
    def measured_diameter(self) -> Quantity | None:
        """The mean diameter of the lot's own seed, None when it was not measured."""
        return self.size.diameter if self.size is not None and self.size.measured else None

    @cached_property
    def seeds_per_mass(self) -> tuple[Quantity, CropFigure | None] | None:
        """Seeds per mass, and the crop's figure where the lot's own mass is not known."""
        if self.lot.thousand_seed_mass is not None:
            return rate.seeds_per_mass_from_thousand(self.lot.thousand_seed_mass), None
        if figure := self.crop.best("seeds_per_mass"):
            return figure.middle, figure
        if figure := self.crop.best("thousand_seed_mass"):
            return rate.seeds_per_mass_from_thousand(figure.middle), figure
        return None

    def part(self, code: str) -> Part | None:
        return next((part for part in self.parts if part.code == code), None)

    @property
    def name(self) -> str:
        """The crop's name as it stands in the middle of a sentence."""
        return self.crop.name[:1].lower() + self.crop.name[1:]
