"""Which small drawings go with a cell, and the figures for them."""

from changeover.desk.sprocket_rates import RateTable, rates_on
from changeover.planter.entry import index_of
from changeover.planter.machine import Planter
from changeover.planter.places import Place
from changeover.planter.settings import Kind
from changeover.planter.setup import Cell, Value
from changeover.quantities import MEASURES, Quantity, is_quantity, show, unit_sign
from changeover.seed.lots import SeedLot
from changeover.window.matrix.sheet import Sheet
from changeover.window.reason.sketch import Sketch
from changeover.window.reason.sketch_band import BandSketch, Scale
from changeover.window.reason.sketch_disc import DiscSketch
from changeover.window.reason.sketch_notches import NotchSketch
from changeover.window.reason.sketch_rates import RatesSketch
from changeover.window.reason.sketch_row_unit import RowUnitSketch


def sketches(sheet: Sheet, cell: Cell) -> tuple[Sketch | None, Sketch | None]:
    """Return the main drawing and the strip of positions for a cell, None where there is none."""
    setting = sheet.setting(cell)
    if setting.key in ("depth", "closing"):
        return _row_unit(sheet, cell), _notches(sheet, cell)
    if setting.key in ("disc", "singulator"):
        strip = _notches(sheet, cell) if setting.kind is Kind.INDEX else None
        return _disc(sheet, cell.place), strip
    if setting.key == "sprockets":
        return _rates(sheet, cell), None
    if setting.kind is Kind.INDEX:
        return None, _notches(sheet, cell)
    return (_band(sheet, cell), None) if setting.kind is Kind.QUANTITY else (None, None)


def now_and_wanted(sheet: Sheet, cell: Cell) -> tuple[Value | None, Value | None]:
    """Return a cell's value as found, and its target or, where that is open, the proposal."""
    wanted = sheet.board.target.get(cell)
    if wanted is None and sheet.board.proposal is not None:
        one = sheet.board.proposal.cells.get(cell)
        wanted = one.value if one is not None else None
    return sheet.board.as_found.get(cell), wanted


def _row_unit(sheet: Sheet, cell: Cell) -> RowUnitSketch | None:
    place, planter = cell.place, sheet.board.planter
    now, wanted = now_and_wanted(sheet, Cell("depth", place))
    closing = now_and_wanted(sheet, Cell("closing", place))
    press = closing[1] if closing[1] is not None else closing[0]
    last = planter.depth.depth(planter.depth.count, place.row or 1)
    return RowUnitSketch(
        _share(planter, place, now),
        _share(planter, place, wanted),
        f"{_depth(sheet, place, now)} now" if now is not None else "",
        _depth(sheet, place, wanted),
        f"last notch {show(last, 'depth', sheet.units)}",
        _press(planter, press) if cell.setting == "closing" else None,
    )


def _share(planter: Planter, place: Place, notch: Value | None) -> float | None:
    if not isinstance(notch, int):
        return None
    scale, row = planter.depth, place.row or 1
    return float((scale.depth(notch, row) / scale.depth(scale.count, row)).to("").magnitude)


def _depth(sheet: Sheet, place: Place, notch: Value | None) -> str:
    if not isinstance(notch, int):
        return ""
    depth = sheet.board.planter.depth.depth(notch, place.row or 1)
    return show(depth, "depth", sheet.units)


def _press(planter: Planter, position: Value | None) -> float | None:
    if not isinstance(position, int):
        return None
    return (position - 1) / max(1, len(planter.closing) - 1)


def _notches(sheet: Sheet, cell: Cell) -> NotchSketch:
    setting, planter = sheet.setting(cell), sheet.board.planter
    index = index_of(setting, planter)
    if index is None:
        names = tuple(str(number) for number in range(1, planter.depth.count + 1))
    else:
        names = tuple(position.name for position in index.positions)
    now, wanted = now_and_wanted(sheet, cell)
    title = "notch" if index is None else "position"
    return NotchSketch(title, names, _whole(now), _whole(wanted))


def _whole(value: Value | None) -> int | None:
    return value if isinstance(value, int) else None


def _disc(sheet: Sheet, place: Place) -> DiscSketch | None:
    now, wanted = now_and_wanted(sheet, Cell("disc", place))
    code = wanted if wanted is not None else now
    part = next((part for part in sheet.board.parts if part.code == code), None)
    if part is None or part.cells is None or part.hole is None:
        return None
    open_now, open_wanted = now_and_wanted(sheet, Cell("singulator", place))
    position = _whole(open_wanted if open_wanted is not None else open_now)
    index = sheet.board.planter.singulator
    share = index.positions[position - 1].open_share if position else None
    return DiscSketch(
        part.code, part.cells, _mm(part.hole), _mm(part.cell_circle) if part.cell_circle else None,
        seed_outline(sheet.board.lot), share,
    )  # fmt: skip


def seed_outline(lot: SeedLot | None) -> tuple[float, float] | None:
    """Return the length and width of a lot's seed in millimetres, or its sieve size for both."""
    if lot is None:
        return None
    sizes = [size for size in (lot.length, lot.width, lot.thickness) if size is not None]
    if sizes:
        longest = sorted((_mm(size) for size in sizes), reverse=True)
        return longest[0], longest[1] if len(longest) > 1 else longest[0]
    if lot.sieve is not None:
        middle = sum(lot.sieve) / 2 / 64 * 25.4
        return middle, middle
    return None


def _mm(size: Quantity) -> float:
    return float(size.to("mm").magnitude)


def _band(sheet: Sheet, cell: Cell) -> BandSketch | None:
    setting, units = sheet.setting(cell), sheet.units
    shown = MEASURES[setting.measure or "count"]
    unit = shown.unit(units)
    now, wanted = now_and_wanted(sheet, cell)
    proposal = sheet.board.proposal
    one = proposal.cells.get(cell) if proposal is not None else None
    low, high = (one.low, one.high) if one is not None else (None, None)
    limit = sheet.board.planter.fan_limit if setting.key == "vacuum" else None
    figures = (_figure(value, unit) for value in (low, high, now, wanted, limit))
    sketch = BandSketch(Scale(unit_sign(unit), shown.digits(units)), *figures)
    return sketch if len(sketch.figures) > 1 else None


def _rates(sheet: Sheet, cell: Cell) -> RatesSketch | None:
    table = rates_on(sheet.board, cell.place)
    if table is None:
        return None
    thousands = tuple(tuple(rate / 1000.0 for rate in line) for line in table.rates)
    now, wanted = (_pair(value, table) for value in now_and_wanted(sheet, cell))
    unit = f"thousand {unit_sign(table.unit)}"
    return RatesSketch(table.driver, table.driven, thousands, unit, now, wanted)


def _pair(value: Value | None, table: RateTable) -> tuple[int, int] | None:
    """Return the pair that a setting names, None when the planter has no such sprockets."""
    pairs = ((a, b) for a in table.driver for b in table.driven)
    return next((pair for pair in pairs if value == f"{pair[0]}/{pair[1]}"), None)


def _figure(value: Value | None, unit: str) -> float | None:
    return float(value.to(unit).magnitude) if is_quantity(value) else None
