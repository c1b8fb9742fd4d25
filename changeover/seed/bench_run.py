"""One row's part of a bench run, as the look-up takes it for evidence."""

from dataclasses import dataclass

from changeover.quantities import Quantity, Refusal, check_kind


@dataclass(frozen=True)
class BenchSeen:
    """One row's part of a bench run of a lot: its vacuum, singulator position and counts.

    ``position`` is numbered on the planter's index, None when not known; ``disc_cells`` those of
    the disc that ran; ``said`` names the run for people. Runs are given the latest first. Raises
    Refusal for counts that cannot be.
    """

    row: int
    lot: str
    cells: int
    skips: int
    doubles: int
    vacuum: Quantity | None = None
    position: int | None = None
    disc_cells: int | None = None
    said: str = "bench run"

    def __post_init__(self) -> None:
        check_kind(self.vacuum, "pressure", f"Bench run, row {self.row}, vacuum")
        if self.cells < 1 or min(self.skips, self.doubles) < 0:
            raise Refusal(f"Bench run, row {self.row}: count at least one cell.")
        if self.skips + self.doubles > self.cells:
            raise Refusal(f"Bench run, row {self.row}: more skips and doubles than cells.")
