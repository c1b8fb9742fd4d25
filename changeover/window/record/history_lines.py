"""The lines of the history as people read them: alike changes of one entry stand together."""

from collections.abc import Iterable
from dataclasses import dataclass

from changeover.desk.board import Board
from changeover.desk.records import HistoryLine
from changeover.planter.places import Place
from changeover.planter.settings import Setting
from changeover.switch.wording import places_text
from changeover.window.dates import moment_text


@dataclass(frozen=True)
class FoldedLine:
    """One change at one or more places."""

    when: str
    who: str
    what: str
    where: str
    old: str
    new: str
    why: str

    @property
    def words(self) -> str:
        """All of its texts, for finding it."""
        return " ".join(vars(self).values()).casefold()


def fold(lines: Iterable[HistoryLine], board: Board) -> tuple[FoldedLine, ...]:
    """Fold alike changes of one entry into one line, the order kept. Settings get their names."""
    by_key = {setting.key: setting for setting in board.settings}
    grouped: dict[tuple[int, str, str, str, str, str], list[HistoryLine]] = {}
    for line in lines:
        key = (line.entry, line.planter, line.what, line.setting, line.old, line.new)
        grouped.setdefault(key, []).append(line)
    return tuple(_folded(alike, by_key) for alike in grouped.values())


def _folded(alike: list[HistoryLine], by_key: dict[str, Setting]) -> FoldedLine:
    line = alike[0]
    setting = by_key.get(line.setting)
    return FoldedLine(
        moment_text(line.when),
        line.who,
        _what(line, setting),
        _where(alike),
        line.old,
        line.new,
        line.why,
    )


def _what(line: HistoryLine, setting: Setting | None) -> str:
    if line.what == "tick":
        family = line.setting.partition("/")[0].partition(".")[0]
        return f"work: {family.replace('_', ' ')}"
    name = setting.name.lower() if setting is not None else line.setting.replace("_", " ")
    return f"{line.what}: {name}" if name else line.what


def _where(alike: list[HistoryLine]) -> str:
    places = [Place.from_text(line.place) for line in alike if ":" in line.place]
    places.sort(key=lambda place: (place.row or 0, place.name))
    return places_text(places) if places else alike[0].place
