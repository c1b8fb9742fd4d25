"""The hoppers that hold one lot, as people write them by rows: ``1-6, 9``."""

from collections.abc import Iterable

from changeover.planter.group_text import read_rows, show_rows
from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.quantities import Refusal


def read_hoppers(planter: Planter, text: str, what: str) -> tuple[Place, ...]:
    """Read the row hoppers, or whole tanks, that feed the rows of a text such as ``1-6``.

    ``what`` names the input. Raises Refusal for text that is no rows, for a row that the planter
    does not have or that is named twice, and for a tank of which only some rows are named.
    """
    rows = read_rows(text, what)
    if not rows:
        raise Refusal(f"{what}: say which rows, such as 1-6.")
    beyond = [row for row in rows if row not in planter.row_numbers]
    if beyond:
        raise Refusal(f"{what}: {planter.name} has rows 1 to {planter.rows}, not {beyond[0]}.")
    twice = next((row for row in rows if rows.count(row) > 1), None)
    if twice is not None:
        raise Refusal(f"{what}: row {twice} is named twice; name it once.")
    places = tuple(dict.fromkeys(planter.place(Scope.TANK, row) for row in rows))
    for place in places:
        fed = planter.rows_of(place)
        if not set(fed) <= set(rows):
            raise Refusal(
                f"{what}: {place.label} feeds rows {show_rows(fed)}, which take one lot; name all "
                "of them."
            )
    return places


def show_hoppers(planter: Planter, places: Iterable[Place]) -> str:
    """Write hoppers or tanks by their rows, the way ``read_hoppers`` reads them."""
    return show_rows(row for place in places for row in planter.rows_of(place))
