"""The log of a clean-out that a certifier or contract asks for, from what was ticked off."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell, Setup
from changeover.seed.lots import SeedLot, Treatment
from changeover.switch.clean_out import CleanOut, catch_label, clean_out
from changeover.switch.clean_rules import CleanPlace
from changeover.switch.clean_ticks import Cleaned
from changeover.switch.rules import SwitchRules
from changeover.switch.tasks import Task, TaskKind, Tick, Worklist
from changeover.switch.wording import listed, places_text

CLEANED_AT: Mapping[str, tuple[CleanPlace, ...]] = {
    "clean_tank": (CleanPlace.TANK,),
    "clean_hose": (CleanPlace.HOSE, CleanPlace.HOPPER),
    "meter": (CleanPlace.METER,),
    "clean_tube": (CleanPlace.TUBE, CleanPlace.SENSOR),
    "clean_floor": (CleanPlace.DRIP_POINT, CleanPlace.FLOOR),
}
CLEANED: Mapping[str, str] = {"meter": "Meter opened and cleaned"}
INSPECTION = "inspect_clean"
EMPTY = "not known"


@dataclass(frozen=True)
class LogLine:
    """One entry: when and by whom which places were cleaned, from which lot to which, and how.

    ``into`` is the label of the container that took the seed recovered, empty where none was.
    """

    when: str
    who: str
    where: str
    what: str
    lot_before: str
    lot_after: str
    steps: tuple[str, ...] = ()
    into: str = ""


@dataclass(frozen=True)
class CleanLog:
    """The log of one planter's clean-out; ``missing`` says what is still to do, in words."""

    planter: str
    lines: tuple[LogLine, ...] = ()
    inspected: tuple[LogLine, ...] = ()
    missing: tuple[str, ...] = ()

    @property
    def whole(self) -> bool:
        """Whether everything was cleaned and, where asked for, inspected."""
        return not self.missing


def clean_log(
    planter: Planter,
    worklist: Worklist,
    ticks: Iterable[Tick],
    before: Setup,
    target: Setup,
    lots: Mapping[str, SeedLot],
    rules: SwitchRules,
) -> CleanLog:
    """Return the log of a clean-out, in the order in which it was ticked off.

    Places ticked by one person at one time for one task are one line. Nobody's look over their
    own cleaning counts: then a second person's is missing.
    """
    made = tuple(ticks)
    cleaned = Cleaned(made, worklist.levels)
    tasks = [task for task in worklist.tasks if cleans(task)]
    inspections = [task for task in worklist.tasks if _head(task) == INSPECTION]
    teller = _Teller(planter, before, target, lots, rules)
    lines = sorted(_lines(tasks, made, cleaned, teller), key=lambda line: line.when)
    looks = _lines(inspections, made, cleaned, teller)
    left = (_left(task, cleaned) for task in [*tasks, *inspections])
    return CleanLog(
        planter=planter.name,
        lines=tuple(lines),
        inspected=tuple(looks),
        missing=(*(text for text in left if text), *_own_looks(lines, looks)),
    )


def _own_looks(lines: Iterable[LogLine], looks: Iterable[LogLine]) -> tuple[str, ...]:
    """Name whoever looked over what they had cleaned themselves."""
    both = sorted({line.who for line in lines} & {look.who for look in looks})
    return tuple(f"A second person's look: {who} cleaned and looked it over" for who in both)


def cleans(task: Task) -> bool:
    """Say whether a task cleans, alone or beside swaps in an open meter."""
    return task.kind is TaskKind.CLEAN or task.family.startswith("meter.")


def _head(task: Task) -> str:
    return task.family.partition(".")[0]


def _what(task: Task) -> str:
    """Say what was cleaned; the swaps at the same opening of a meter are no part of the log."""
    return CLEANED.get(_head(task), task.title)


def _of(task: Task, ticks: Iterable[Tick], cleaned: Cleaned) -> list[Tick]:
    places = frozenset(task.places)
    return [tick for tick in ticks if tick.place in places and cleaned.any_at(task, tick)]


def _left(task: Task, cleaned: Cleaned) -> str:
    left = [place for place in task.places if not cleaned.has(task, place)]
    return f"{_what(task)}: {places_text(left)}" if left else ""


def _lines(
    tasks: Iterable[Task], ticks: tuple[Tick, ...], cleaned: Cleaned, teller: "_Teller"
) -> list[LogLine]:
    lines: list[LogLine] = []
    for task in tasks:
        groups: dict[tuple[str, str], list[Place]] = {}
        for tick in _of(task, ticks, cleaned):
            groups.setdefault((tick.when, tick.who), []).append(tick.place)
        lines += [teller.line(task, when, who, places) for (when, who), places in groups.items()]
    return lines


@dataclass(frozen=True)
class _Teller:
    """Says for a place of the planter which lots it held and will hold, and how it is cleaned."""

    planter: Planter
    before: Setup
    target: Setup
    lots: Mapping[str, SeedLot]
    rules: SwitchRules

    def line(self, task: Task, when: str, who: str, places: list[Place]) -> LogLine:
        tanks = self._tanks(places)
        pairs = [(self._lot(self.before, tank), self._lot(self.target, tank)) for tank in tanks]
        cleans = [clean_out(old, new, self.rules) for old, new in dict.fromkeys(pairs)]
        return LogLine(
            when=when,
            who=who,
            where=places_text(places),
            what=_what(task),
            lot_before=listed(dict.fromkeys(self._name(self.before, tank) for tank in tanks)),
            lot_after=listed(dict.fromkeys(self._name(self.target, tank) for tank in tanks)),
            steps=self._steps(task, cleans),
            into=listed(dict.fromkeys(c.into for c in cleans)) if _recovers(task) else "",
        )

    def _tanks(self, places: list[Place]) -> tuple[Place, ...]:
        rows = sorted({row for place in places for row in self.planter.rows_of(place)})
        return tuple(dict.fromkeys(self.planter.place(Scope.TANK, row) for row in rows))

    def _lot(self, setup: Setup, tank: Place) -> SeedLot | None:
        return self.lots.get(str(setup.get(Cell("seed", tank))))

    def _name(self, setup: Setup, tank: Place) -> str:
        lot = self._lot(setup, tank)
        if lot is None:
            return str(setup.get(Cell("seed", tank)) or EMPTY)
        treated = "" if lot.treatment is Treatment.TREATED else ", untreated"
        return f"{catch_label(lot)}{treated}"

    def _steps(self, task: Task, cleans: list[CleanOut]) -> tuple[str, ...]:
        at = CLEANED_AT.get(_head(task))
        if at is None:
            return task.steps
        if at == (CleanPlace.TANK,) and self.planter.scope(Scope.TANK) is Scope.ROW:
            at = (CleanPlace.HOPPER,)
        steps = (step for clean in cleans for place in at for step in clean.steps.get(place, ()))
        return tuple(dict.fromkeys(steps))


def _recovers(task: Task) -> bool:
    return _head(task) in ("clean_tank", "clean_hose", "meter")
