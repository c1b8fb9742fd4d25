"""What the reason panel says of one cell, as plain words taken from the board."""

from dataclasses import dataclass

from changeover.planter.entry import same_value, show_value
from changeover.planter.setup import Cell, Value, cells_of
from changeover.quantities import show
from changeover.seed.reasons import Proposed, Reason
from changeover.window.matrix.sheet import Sheet

NO_LOT = "Choose the next seed and field (Alt+N) and a proposal with its reason stands here."
LOOKING_UP = "The proposal is being looked up."
NO_CELL = "Choose a cell to see what is proposed there and who says so."


@dataclass(frozen=True)
class Rung:
    """One rung of the trust order: what it says, and whether it is the one used."""

    words: str
    used: bool


@dataclass(frozen=True)
class ReasonWords:
    """The texts of the panel; ``differs`` colours the value, ``open_cells`` are not as proposed."""

    title: str
    value: str
    differs: bool = False
    proposed: str = ""
    why: str = ""
    how: str = ""
    source: str = ""
    rungs: tuple[Rung, ...] = ()
    cautions: tuple[str, ...] = ()
    open_cells: frozenset[Cell] = frozenset()
    use: str = "Use for all"
    can_keep: bool = False


def reason_words(sheet: Sheet, cell: Cell) -> ReasonWords:
    """Return what there is to say of a cell."""
    proposal = sheet.board.proposal
    one = proposal.cells.get(cell) if proposal is not None else None
    title = f"{sheet.setting(cell).name}, {cell.place.label}"
    differs = cell in sheet.standing.differing
    value, found = _value_words(sheet, cell, differs=differs), sheet.board.as_found.get(cell)
    keep = differs and found is not None
    if one is None:
        why = _nothing_words(sheet)
        return ReasonWords(title, value, differs, why=why, can_keep=keep)
    open_cells = cells_to_take(sheet, cell)
    return ReasonWords(
        title=title,
        value=value,
        differs=differs,
        proposed=_proposed_words(sheet, one),
        why=one.reason.why,
        how=_how(one.reason),
        source=_source(one),
        rungs=_rungs(one.reason),
        cautions=one.reason.cautions,
        open_cells=open_cells,
        use=_use_words(one, len(open_cells)),
        can_keep=keep,
    )


def _nothing_words(sheet: Sheet) -> str:
    if sheet.board.proposal is not None:
        return "Nothing is proposed here; the value is yours."
    return NO_LOT if sheet.board.lot is None else LOOKING_UP


def cells_to_take(sheet: Sheet, cell: Cell) -> frozenset[Cell]:
    """Return the cells of a cell's setting whose target is not what is proposed."""
    proposal, setting = sheet.board.proposal, sheet.setting(cell)
    if proposal is None:
        return frozenset()
    target = sheet.board.target
    return frozenset(
        other
        for other in cells_of(sheet.board.planter, setting)
        if (one := proposal.cells.get(other)) is not None
        and one.value is not None
        and not same_value(setting, target.get(other), one.value)
    )


def full_text(sheet: Sheet, cell: Cell, value: Value | None) -> str:
    """Return a value with its unit; a depth with its notch."""
    setting, planter = sheet.setting(cell), sheet.board.planter
    text = show_value(setting, planter, cell.place, value, sheet.units, sign=True)
    return f"{text} (notch {value})" if setting.key == "depth" and value is not None else text


def _value_words(sheet: Sheet, cell: Cell, *, differs: bool) -> str:
    found, target = sheet.board.as_found.get(cell), sheet.board.target.get(cell)
    now = full_text(sheet, cell, found) or "not known"
    if differs:
        return f"{now} now → {full_text(sheet, cell, target)}"
    if cell.place.row in sheet.standing.difference.locked:
        return f"{now}; the row is locked up"
    return f"{now}, as wanted" if target is not None else f"{now} now"


def _proposed_words(sheet: Sheet, one: Proposed) -> str:
    """Say the proposal where the target is another, and the band that is as good."""
    setting, cell = sheet.setting(one.cell), one.cell
    words = []
    if one.value is not None:
        if not same_value(setting, sheet.board.target.get(cell), one.value):
            words.append(f"proposed: {full_text(sheet, cell, one.value)}")
        if one.low is not None and one.high is not None and setting.measure:
            low = show(one.low, setting.measure, sheet.units, sign=False)
            words.append(f"band {low} to {show(one.high, setting.measure, sheet.units)}")
    return " · ".join(words)


def _use_words(one: Proposed, count: int) -> str:
    if count:
        return f"Use for all {count}" if count > 1 else "Use it"
    return "No proposal" if one.value is None else "As proposed"


def _how(reason: Reason) -> str:
    inputs = "; ".join(f"{one.name}: {one.text}" for one in reason.inputs)
    return "\n".join(part for part in (reason.how, f"From {inputs}." if inputs else "") if part)


def _source(one: Proposed) -> str:
    if one.value is None:
        return one.reason.source
    return f"{one.reason.source} · {one.reason.trust.value}"


def _rungs(reason: Reason) -> tuple[Rung, ...]:
    return tuple(Rung(f"{one.trust.value} — {one.says}", one.used) for one in reason.evidence)
