"""A dose of dry lubricant as people write it: a mass or a volume for each package."""

from changeover.quantities import Quantity, Refusal, read_quantity

WHAT = "Dry lubricant"


def read_dose(text: str) -> Quantity | None:
    """Read a mass or a volume; empty text is None. Raises Refusal for anything else."""
    typed = text.strip()
    if not typed:
        return None
    if not any(sign.isalpha() for sign in typed):
        raise Refusal(f"{WHAT}: write the unit too, such as 2 oz or 0.1 l for each package.")
    try:
        return read_quantity(typed, "mass", what=WHAT)
    except Refusal as refusal:
        try:
            return read_quantity(typed, "volume", what=WHAT)
        except Refusal:
            raise refusal from None


def dose_text(dose: Quantity | None) -> str:
    """Return a dose as it is typed, in its own unit."""
    return "" if dose is None else f"{float(dose.magnitude):g} {dose.units:~P}"
