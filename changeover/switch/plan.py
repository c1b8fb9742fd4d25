"""One switch as every maker of tasks sees it: planter, setups, difference, lots and rules."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import TypedDict, Unpack

from changeover.planter.machine import Planter
from changeover.planter.parts import Part
from changeover.planter.places import Place, Scope
from changeover.planter.settings import Setting, WorkPlace
from changeover.planter.setup import Cell, Setup
from changeover.seed.lots import SeedLot, Treatment
from changeover.switch.clean_out import CleanOut, clean_out
from changeover.switch.clean_rules import CleanPlace
from changeover.switch.clean_ticks import clean_key, cleaning
from changeover.switch.difference import Difference, locked_rows
from changeover.switch.rules import SwitchRules
from changeover.switch.standard_minutes import Minutes
from changeover.switch.tasks import Change, MachineState, PartCount, Task, TaskKind
from changeover.switch.wording import Words

STATES: Mapping[WorkPlace, MachineState] = {
    WorkPlace.TANK: MachineState.POWER_OFF,
    WorkPlace.METER: MachineState.POWER_OFF,
    WorkPlace.ROW_UNIT: MachineState.RAISED,
    WorkPlace.FAN: MachineState.FAN_RUNNING,
    WorkPlace.DRIVE: MachineState.POWER_OFF,
    WorkPlace.CAB: MachineState.ANY,
}


class TaskFields(TypedDict, total=False):
    """The fields of a task that have a default, but for its cautions."""

    changes: Mapping[Place, tuple[Change, ...]]
    state: MachineState
    tools: tuple[str, ...]
    steps: tuple[str, ...]
    parts_in: tuple[PartCount, ...]
    parts_out: tuple[PartCount, ...]
    persons: int
    why: str
    kind: TaskKind
    by_tick: bool
    proves: frozenset[Cell]
    cleans: frozenset[str]


@dataclass(frozen=True)
class CleanGroup:
    """Tanks (or row hoppers) that held the same lot and are cleaned alike, and their rows."""

    clean: CleanOut
    old: str
    tanks: tuple[Place, ...]
    rows: tuple[int, ...]

    def key(self, work: str, rest: str = "") -> str:
        """Return the key of the work that cleans this group."""
        return clean_key(work, [self.old], self.clean.levels, rest)

    def cleans(self, *places: CleanPlace) -> frozenset[str]:
        """Return how far the places are cleaned, in words that ticks are compared by."""
        return cleaning(self.clean.places, *places)


@dataclass(frozen=True)
class Plan:
    """What the tasks of one switch are made from; ``lots`` holds every lot by its number."""

    planter: Planter
    settings: tuple[Setting, ...]
    before: Setup
    target: Setup
    difference: Difference
    lots: Mapping[str, SeedLot]
    new_lot: SeedLot | None
    parts: Mapping[str, Part]
    words: Words
    minutes: Minutes
    rules: SwitchRules

    def settings_at(self, work_place: WorkPlace) -> tuple[Setting, ...]:
        return tuple(setting for setting in self.settings if setting.work_place is work_place)

    def changes(self, setting: Setting) -> tuple[Change, ...]:
        """Return a setting's changes from the left."""
        return self.difference.by_setting.get(setting.key, ())

    @property
    def row_hoppers(self) -> bool:
        """Whether each row carries its own hopper, the planter having no tanks."""
        return self.planter.scope(Scope.TANK) is Scope.ROW

    @property
    def treated(self) -> bool:
        """Whether treated seed is or will be in the planter."""
        held = [self.lot_before(place) for place in self.planter.places(Scope.TANK)]
        return any(lot and lot.treatment is Treatment.TREATED for lot in [*held, self.new_lot])

    def lot_before(self, tank: Place) -> SeedLot | None:
        return self.lots.get(str(self.before.get(Cell("seed", tank))))

    def lot_after(self, tank: Place) -> SeedLot | None:
        """Return the lot that goes into a tank: the target's, or the next lot where it is open.

        A lot that is not on record counts as one of a crop not known.
        """
        number = self.target.get(Cell("seed", tank))
        if number is None or (self.new_lot is not None and number == self.new_lot.number):
            return self.new_lot
        return self.lots.get(str(number), SeedLot(str(number), "not known"))

    def clean_groups(self) -> tuple[CleanGroup, ...]:
        """Return the tanks in groups that are cleaned alike, those with nothing to clean left out.

        A row that is up before and after is left alone.
        """
        idle = locked_rows(self.planter, self.before) & self.difference.locked
        groups: dict[tuple[str, tuple[str, ...]], CleanGroup] = {}
        for tank in self.planter.places(Scope.TANK):
            rows = tuple(row for row in self.planter.rows_of(tank) if row not in idle)
            clean = clean_out(self.lot_before(tank), self.lot_after(tank), self.rules)
            if not rows or not clean.needed or self._same_number(tank):
                continue
            old = str(self.before.get(Cell("seed", tank)) or "")
            key = (old, clean.levels)
            had = groups.get(key, CleanGroup(clean, old, (), ()))
            groups[key] = CleanGroup(clean, old, (*had.tanks, tank), (*had.rows, *rows))
        return tuple(groups.values())

    def _same_number(self, tank: Place) -> bool:
        before, after = self.before.get(Cell("seed", tank)), self.target.get(Cell("seed", tank))
        return before is not None and before == after

    def task(
        self,
        key: str,
        work_place: WorkPlace,
        title: str,
        places: tuple[Place, ...],
        elements: Iterable[str],
        cautions: Iterable[str] = (),
        **fields: Unpack[TaskFields],
    ) -> Task:
        """Make a task with its minutes from the elements and its cautions from their keys."""
        fixed, each = self.minutes.of_task(key, elements)
        fields.setdefault("changes", {})
        fields.setdefault("state", STATES[work_place])
        if fields.get("kind", TaskKind.SET) is not TaskKind.SET:
            fields["by_tick"] = True
        return Task(
            key=key,
            work_place=work_place,
            title=title,
            places=places,
            minutes_fixed=fixed,
            minutes_each=each,
            cautions=self.rules.cautions.texts(cautions),
            **fields,
        )
