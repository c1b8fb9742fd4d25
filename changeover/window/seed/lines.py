"""The proposal as lines, one a setting: proposed, band, now, trust and a short why, as texts."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from changeover.planter.places import Place
from changeover.planter.settings import Setting
from changeover.planter.setup import Cell, Value, cells_of
from changeover.quantities import MEASURES, Q, Units, is_quantity, show, unit_of, unit_sign
from changeover.seed.reasons import Figure, Proposal, Proposed
from changeover.seed.row_locks import LOCKED_REASON
from changeover.switch.wording import listed, places_text
from changeover.window.matrix.sheet import Sheet
from changeover.window.reason.words import full_text

NONE_PROPOSED = "no proposal: enter it from your manual"
NOT_ENTERED = "not known"
MOST_GROUPS, MOST_NAMED = 3, 3


@dataclass(frozen=True)
class Group:
    """Places of a setting with one value: its text, the places, and the first cell."""

    text: str
    places: tuple[Place, ...]
    cell: Cell

    @property
    def where(self) -> str:
        """The places in words."""
        return places_text(self.places)

    @property
    def short(self) -> str:
        """The value and where it holds in few words, for a narrow box."""
        many = len(self.places) > MOST_NAMED
        return f"{self.text} · {f'{len(self.places)} rows' if many else self.where}"


@dataclass(frozen=True)
class ProposalLine:
    """What one setting is proposed to be; ``groups`` has the most common value first."""

    setting: Setting
    groups: tuple[Group, ...]
    proposed: str
    band: str
    now: str
    trust: str
    why: str
    differs: bool = False
    missing: bool = False

    @property
    def says(self) -> str:
        """All of it as one sentence, for a reader of the screen."""
        parts = (self.setting.name, self.proposed, self.band, self.now, self.trust, self.why)
        return "; ".join(part for part in parts if part)


def proposal_lines(sheet: Sheet) -> tuple[ProposalLine, ...]:
    """Return a line for each setting shown that the proposal speaks of, in the user's order."""
    proposal = sheet.board.proposal
    if proposal is None:
        return ()
    lines = (_line(sheet, proposal, setting) for setting in sheet.lines if not setting.record_only)
    return tuple(line for line in lines if line is not None)


def _line(sheet: Sheet, proposal: Proposal, setting: Setting) -> ProposalLine | None:
    every = (proposal.cells.get(cell) for cell in cells_of(sheet.board.planter, setting))
    own = [one for one in every if one is not None and one.reason is not LOCKED_REASON]
    if not own:
        return None
    groups = _groups(sheet, ((one.cell, one.value) for one in own))
    first = proposal.cells[groups[0].cell]
    missing = all(one.value is None for one in own)
    found = sheet.board.as_found
    return ProposalLine(
        setting=setting,
        groups=groups,
        proposed=NONE_PROPOSED if missing else _proposed(groups),
        band=_band(setting, first, sheet.units),
        now=_now(_groups(sheet, ((one.cell, found.get(one.cell)) for one in own))),
        trust="" if missing else first.reason.trust.value,
        why=_short(first.reason.why, missing=missing),
        differs=any(one.cell in sheet.standing.differing for one in own),
        missing=missing,
    )


def _groups(sheet: Sheet, values: Iterable[tuple[Cell, Value | None]]) -> tuple[Group, ...]:
    """Return the places by value, the most common first; texts are made once a value."""
    by_value: dict[object, list[Cell]] = {}
    shown: dict[object, Value | None] = {}
    for cell, value in values:
        key = (value.magnitude, value.units) if is_quantity(value) else value
        by_value.setdefault(key, []).append(cell)
        shown[key] = value
    by_text: dict[str, list[Cell]] = {}
    for read, cells in by_value.items():
        by_text.setdefault(_text(sheet, cells, shown[read]), []).extend(cells)
    found = (_group(sheet, text, cells) for text, cells in by_text.items())
    return tuple(sorted(found, key=lambda group: -len(group.places)))


def _group(sheet: Sheet, text: str, cells: list[Cell]) -> Group:
    """Return a group; the cell that stands for it is one that differs, where there is one."""
    differing = sheet.standing.differing
    stands = next((cell for cell in cells if cell in differing), cells[0])
    return Group(text, tuple(cell.place for cell in cells), stands)


def _text(sheet: Sheet, cells: list[Cell], value: Value | None) -> str:
    """Say a value; of a depth the notch first, with the depths that its rows plant there."""
    if value is None:
        return NOT_ENTERED
    if cells[0].setting != "depth":
        return full_text(sheet, cells[0], value)
    scale = sheet.board.planter.depth
    rows = {row if row in scale.offsets else 0: row for row in (c.place.row or 1 for c in cells)}
    depths = (scale.depth(int(value), row) for row in rows.values())
    ends = sorted(float(depth.to(unit_of("in")).magnitude) for depth in depths)
    texts = [show(Q(end, "in"), "depth", sheet.units) for end in (ends[0], ends[-1])]
    low = texts[0].rpartition(" ")[0]
    return f"notch {value} ({texts[0] if texts[0] == texts[1] else f'{low} to {texts[1]}'})"


def _proposed(groups: tuple[Group, ...]) -> str:
    """Say the common value, then the places that get another."""
    words = [groups[0].text]
    words += [f"{group.where}: {group.text}" for group in groups[1:MOST_GROUPS]]
    rest = groups[MOST_GROUPS:]
    if rest:
        words.append(f"{places_text(p for group in rest for p in group.places)} still others")
    return "; ".join(words)


def _now(groups: tuple[Group, ...]) -> str:
    if len(groups) == 1:
        return f"now {groups[0].text}"
    if len(groups) >= MOST_GROUPS:
        return f"now {groups[0].text}, {len(groups) - 1} others"
    return "now " + listed(f"{group.text} ({group.where})" for group in groups)


def _band(setting: Setting, one: Proposed, units: Units) -> str:
    if one.low is None or one.high is None or one.value is None or not setting.measure:
        return ""
    low = show(one.low, setting.measure, units, sign=False)
    return f"band {low} to {show(one.high, setting.measure, units)}"


def _short(text: str, *, missing: bool) -> str:
    """Return the first clause, or where nothing is proposed what is missing."""
    sentences = re.split(r"(?<=[.!?])\s+(?=[A-Z“])", text)
    if missing:
        return " ".join(sentences[1:])
    return sentences[0].partition(";")[0]


def figure_text(figure: Figure, units: Units) -> str:
    """Return a derived figure as it is shown; a plain count has no unit."""
    text = show(figure.quantity, figure.measure, units)
    sign = unit_sign(MEASURES[figure.measure].unit(units))
    return text if sign or figure.measure == "ratio" else text.split(".")[0]
