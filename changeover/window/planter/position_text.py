"""The positions of an index as people write them: ``1/4 = 25 %, open = 100 %`` or plain names."""

from changeover.planter.scales import Index, Position
from changeover.quantities import Refusal, read_quantity


def read_positions(text: str, what: str, *, shares: bool) -> Index:
    """Read positions in their order; with ``shares`` each may say how much it leaves open.

    Raises Refusal for a share that is no percentage, or names that repeat.
    """
    positions = []
    for piece in filter(None, (part.strip() for part in text.split(","))):
        name, equals, share = (part.strip() for part in piece.partition("="))
        if equals and not shares:
            raise Refusal(f"{what}: “{piece}” should be a plain name; leave out what follows “=”.")
        open_share = None
        if equals:
            left_open = read_quantity(share, "share", what=f"{what}, position {name}")
            open_share = float(left_open.to("").magnitude)
        positions.append(Position(name, open_share))
    if not positions:
        raise Refusal(f"{what}: enter at least one position, separated by commas.")
    return Index(tuple(positions))


def show_positions(index: Index) -> str:
    """Write positions the way ``read_positions`` reads them."""
    return ", ".join(
        position.name
        if position.open_share is None
        else f"{position.name} = {position.open_share * 100:g} %"
        for position in index.positions
    )
