"""Readings of gauge-wheel load at settings of the down pressure: a row's own calibration."""

from dataclasses import dataclass

from changeover.planter.places import Place
from changeover.quantities import Quantity, Refusal


@dataclass(frozen=True)
class LoadReading:
    """The load measured on the gauge wheels of a row or circuit at one down-pressure setting.

    ``setting`` is a force or a pressure, ``load`` a force. Raises Refusal for a setting or load
    of another kind or below zero.
    """

    place: Place
    setting: Quantity
    load: Quantity

    def __post_init__(self) -> None:
        where = f"Load on {self.place.label}"
        if not (self.setting.is_compatible_with("N") or self.setting.is_compatible_with("kPa")):
            raise Refusal(f"{where}: the setting is a force or a pressure, such as 150 lbf.")
        if not self.load.is_compatible_with("N") or not 0 <= self.load.to("N").magnitude <= 20_000:
            raise Refusal(f"{where}: the load is a force up to 4 500 lbf (20 000 N).")
        if self.setting.magnitude < 0:
            raise Refusal(f"{where}: the setting cannot be below zero.")
