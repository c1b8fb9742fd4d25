"""What the tag of a seed lot and the card of a field say, in a few short lines."""

from changeover.desk.labels import crop_words
from changeover.desk.tables import crops
from changeover.quantities import NARROW_SPACE, Q, Quantity, Units, grouped, show
from changeover.seed.fields import Field
from changeover.seed.lots import SeedLot


def crop_name(key: str) -> str:
    """Return a crop's name, or its key as words where the table does not know it."""
    crop = crops().get(key)
    return crop.name if crop is not None else crop_words(key)


def lot_line(lot: SeedLot) -> str:
    """Return a lot in one line, for choosing it: ``Y-208 · Soybean · Plain Tale 2``."""
    return " · ".join(part for part in (lot.number, crop_name(lot.crop), lot.name) if part)


def lot_facts(lot: SeedLot, units: Units) -> tuple[str, ...]:
    """Return what the tag says, a line for each thing known."""
    seed = ", ".join(part for part in (_size(lot), _germination(lot)) if part)
    lines = (_mass(lot, units), seed, _class(lot), _package(lot, units))
    return tuple(line for line in lines if line)


def field_line(field: Field, units: Units) -> str:
    """Return a field in one line: ``Otter Flat · 142.0 ac``."""
    return f"{field.name} · {show(field.area, 'area', units)}"


def field_facts(field: Field) -> str:
    """Return what is known of a field's ground."""
    return f"{field.texture.value}{f', {field.where}' if field.where else ''}"


def per_mass(thousand: Quantity) -> Quantity:
    """Return the seeds per mass of a thousand-seed mass."""
    found: Quantity = Q(1000.0, "seed") / thousand
    return found


def _mass(lot: SeedLot, units: Units) -> str:
    mass = lot.thousand_seed_mass
    if mass is None:
        return ""
    count = show(per_mass(mass), "seeds_per_mass", units)
    return f"{show(mass, 'thousand_seed_mass', units)} a thousand, {count}"


def _size(lot: SeedLot) -> str:
    sizes = [size for size in (lot.length, lot.width, lot.thickness) if size is not None]
    if sizes:
        texts = [f"{float(size.to('mm').magnitude):.1f}" for size in sizes]
        return f"{' × '.join(texts)} mm"
    if lot.sieve is None:
        return ""
    low, high = lot.sieve
    return f"sieve grade {low:g} to {high:g} sixty-fourths of an inch"


def _germination(lot: SeedLot) -> str:
    return f"germination {lot.germination * 100:g} %" if lot.germination is not None else ""


def _class(lot: SeedLot) -> str:
    words = [lot.treatment.value + (f", {lot.treatment_name}" if lot.treatment_name else "")]
    words.append(lot.purity.value)
    if lot.genetically_modified:
        words.append("genetically modified")
    return " · ".join(words)


def _package(lot: SeedLot, units: Units) -> str:
    held = []
    if lot.package_seeds is not None:
        held.append(f"{grouped(lot.package_seeds, 0)} seeds")
    if lot.package_mass is not None:
        held.append(show(lot.package_mass, "mass", units))
    if lot.packages is not None:
        count = f"{lot.packages:g}".replace(",", NARROW_SPACE)
        stock = f"{count} packages there"
        return f"{stock}, each {' or '.join(held)}" if held else stock
    return f"package of {' or '.join(held)}" if held else ""
