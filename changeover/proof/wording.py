"""Figures as they stand in a sentence: three or four digits and the unit."""

from changeover.quantities import Quantity, grouped, unit_sign


def said(quantity: Quantity, digits: int | None = None) -> str:
    """Return a quantity for a sentence, ``32 000 1/ac`` or ``6.53 in``.

    Three figures are said unless ``digits`` after the point are asked for.
    """
    size = abs(float(quantity.magnitude))
    if digits is None:
        digits = 0 if size >= 100 else 1 if size >= 10 else 2
    unit = f"{quantity.units:~P}".replace("inch_of_water", "inH2O")
    if unit.startswith("count/"):
        unit = unit.replace("count", "seeds", 1)
    return f"{grouped(float(quantity.magnitude), digits)} {unit_sign(unit)}".rstrip()


def percent(share: float, digits: int = 1) -> str:
    """Return a share 0 to 1 as a percentage."""
    return f"{100 * share:.{digits}f} %"
