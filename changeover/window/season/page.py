"""The Season page: the jobs over the planters as a calendar, planned behind the window."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from functools import partial
from typing import Any, ClassVar

from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QProgressBar,
    QPushButton,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.desk.fields import remove_job
from changeover.desk.fleet import planter_names
from changeover.desk.lots import lots
from changeover.desk.season import fixed as season_fixed
from changeover.desk.season import lines
from changeover.desk.season import plan as desk
from changeover.desk.season import rules as season_rules
from changeover.desk.season.costs import cost_lines
from changeover.desk.season.lines import JobLine
from changeover.desk.season.plan import SeasonAnswer
from changeover.desk.season.rules import SeasonRules
from changeover.desk.season.seed import seed_lines, short_seed
from changeover.desk.supply_list import read_lead_days, season_supplies, short_lines
from changeover.desk.switch_times import SwitchTimes
from changeover.quantities import Units
from changeover.switch.search import Limits, Progress
from changeover.switch.season.model import Order
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.background import Background, Report, Stop
from changeover.window.door import Door
from changeover.window.entry.list_table import ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Page, Read
from changeover.window.season.columns import job_columns
from changeover.window.season.drawing import season_lanes
from changeover.window.season.job_form import SeasonJobForm
from changeover.window.season.side import SeasonSide
from changeover.window.timetable.lanes import LanesChart
from changeover.window.timetable.legend import LanesLegend
from changeover.window.words import Elided, button, label, pill

EMPTY = "No jobs yet. Enter the fields to be planted, and the planters are shared out among them."
HINT = (
    "Drag a job to another planter or day to fix it there, or move it with Shift and an arrow key; "
    "the rest is planned around it."
)
WAYS = ("best found", "as entered", "nearest due date")
QUICK_SECONDS = 2.0


@dataclass(frozen=True)
class Found:
    """What a search brings: a plan, the switch times to go on with, and what switches cost."""

    answer: SeasonAnswer
    times: SwitchTimes
    costs: tuple[str, ...]
    short: tuple[str, ...]


class SeasonPage(Page):
    """Jobs, calendar and plan; every change of a job is an edit, and so is fixing one."""

    wants: ClassVar[frozenset[Changed]] = frozenset(
        {
            Changed.JOBS,
            Changed.FIELDS,
            Changed.LOTS,
            Changed.SEASON,
            Changed.CREW,
            Changed.PLANTERS,
            Changed.SHELF,
            Changed.PARTS,
            Changed.TIMES,
        }
    )

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.answer: SeasonAnswer | None = None
        self.times: SwitchTimes | None = None
        self.quick, self.seconds = QUICK_SECONDS, desk.SECONDS
        self.search = Background(self)
        self.chart = LanesChart(outlook, "Calendar of jobs by planter", 104.0)
        self.legend = LanesLegend(self.chart)
        self.model: ListModel[JobLine] = ListModel(job_columns(outlook), door, outlook)
        self.view = ListView(self.model, "Jobs of the season")
        self.left = label("", "work-text", wrap=True)
        self.said, self.empty = Elided("", "soft"), label(EMPTY, "soft", wrap=True)
        self.hint, self.bar, self.side = (
            label(HINT, "soft", wrap=True),
            QProgressBar(),
            SeasonSide(),
        )
        self.go = button("Find the best plan", "main", self.solve)
        self.stop = button("Stop", clicked=self.search.stop)
        self.loose = button("Let it go", clicked=self.let_go)
        self.of_one: list[QPushButton] = []
        self.ways = QButtonGroup(self)
        self._lay_out()
        self._listen()

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        self.side.show_rules(self.read(season_rules.rules_of))
        self._show()
        if changed - {Changed.SEASON} or self.times is None:
            self.times = None
        if any(not line.job.done for line in self.model.rows):
            self._plan(self.quick)
        else:
            self._keep(None)

    def solve(self) -> None:
        """Look for the best plan with all the time allowed."""
        self._plan(self.seconds)

    def add(self) -> None:
        """Open the form for a new job."""
        self._form(None)

    def change(self, number: int | None = None) -> None:
        """Open the form of the chosen job."""
        line = self._chosen(number)
        if line is not None:
            self._form(line)

    def remove(self) -> None:
        """Remove the chosen job."""
        line = self._chosen()
        if line is not None:
            self._push(lambda: self.read(remove_job, line.job.name))

    def mark_done(self) -> None:
        """Mark the chosen job planted, or take that back."""
        line = self._chosen()
        if line is not None:
            self.door.push(lines.mark_done(line.job))

    def fix(self, job: str, planter: str, day: float) -> None:
        """Fix a job on a planter from a day on, and plan around it."""
        when = date.fromordinal(int(day + 0.25)) if day >= 1 else None
        self._push(lambda: self.read(season_fixed.fix_job, job, planter, when))

    def let_go(self) -> None:
        """Let the chosen fixed job go."""
        line = self._chosen()
        if line is not None:
            self._push(lambda: self.read(season_fixed.let_go, line.job.name))

    def set_rules(self, rules: SeasonRules) -> None:
        """Take over what the season is reckoned with."""
        self._push(lambda: self.read(season_rules.set_rules, rules))

    @override
    def more_to_see(self) -> Iterator[tuple[str, QWidget]]:
        self.search.wait()
        yield "planned", self.window()
        self.view.selectRow(0)
        yield from self.dialogs_to_see({"job": self.change, "new-job": self.add})

    def recolour(self) -> None:
        super().recolour()
        self.chart.update()

    @property
    def order(self) -> Order | None:
        """The order that is looked at: the plan, or a simple one beside it."""
        if self.answer is None:
            return None
        return self.answer.orders()[WAYS[max(0, self.ways.checkedId())]]

    def _plan(self, seconds: float) -> None:
        self.search.start(partial(_solve, self.read, self.outlook.units, seconds, self.times))
        self._show_busy()

    def _keep(self, found: Found | None) -> None:
        self.answer = found.answer if found is not None else None
        if found is not None:
            self.times = found.times
        self.side.show_costs(found.costs if found is not None else ())
        self.side.show_short(found.short if found is not None else ())
        left = found.answer.left_out if found is not None else {}
        self.left.setText("\n".join(f"! {why}" for why in left.values()))
        self._show()

    def _fail(self, sentence: str) -> None:
        """Drop the plan with all that was said of it, and say why there is none."""
        self._keep(None)
        self.left.setText(f"! {sentence}")
        self.left.show()
        self.door.refused.emit(sentence)

    def _push(self, make: Callable[[], Any]) -> None:
        edit = attempt(self.door, make)
        if edit is not None:
            self.door.push(edit)

    def _chosen(self, number: int | None = None) -> JobLine | None:
        row = self.view.chosen if number is None else number
        return self.model.rows[row] if row is not None and row < len(self.model.rows) else None

    def _form(self, line: JobLine | None) -> None:
        _, places = self.read(lines.jobs_entered)
        choices = (self.read(lots), places, self.read(planter_names))
        job = line.job if line is not None else None
        SeasonJobForm(job, choices, self.outlook.units, self.door, self).open()

    def _choose(self, key: str) -> None:
        names = [line.job.name for line in self.model.rows]
        if key in names:
            self.view.selectRow(names.index(key))

    def _show(self) -> None:
        jobs, places = self.read(lines.jobs_entered)
        self.model.show_rows(lines.job_lines(jobs, places, self.answer, self.order))
        self.empty.setVisible(not jobs)
        self.left.setVisible(bool(self.left.text()))
        self._show_order()
        self._show_busy()
        self.side.show_answer(self.answer)

    def _show_order(self) -> None:
        order = self.order
        for widget in (self.chart, self.hint):
            widget.setVisible(order is not None)
        self.said.setText(lines.order_text(order) if self.answer is not None else "")
        if self.answer is not None and order is not None:
            shown = season_lanes(self.answer, order, date.today())  # noqa: DTZ011
            if order is not self.answer.plan.best:
                shown = replace(shown, lanes=tuple(replace(lane) for lane in shown.lanes))
            self.chart.show_lanes(shown)
        self.legend.follow()

    def _show_busy(self) -> None:
        busy = self.search.busy
        self.bar.setVisible(busy)
        self.stop.setVisible(busy)
        self.go.setVisible(not busy)
        self.go.setEnabled(any(not line.job.done for line in self.model.rows))
        self._show_chosen()

    def _show_chosen(self) -> None:
        """Offer only what can be done with the job that is chosen."""
        line = self._chosen()
        for made in self.of_one:
            made.setEnabled(line is not None)
        self.loose.setEnabled(line is not None and line.fixed)

    def _hear_progress(self, told: Progress | float) -> None:
        self.bar.setValue(round(100 * (told if isinstance(told, float) else told.fraction)))

    def _listen(self) -> None:
        self.view.opened.connect(self.change)
        self.view.selectionModel().currentChanged.connect(self._show_chosen)
        self.chart.chosen.connect(self._choose)
        self.chart.dropped.connect(self.fix)
        self.ways.idClicked.connect(lambda _number: self._show())
        self.side.ruled.connect(self.set_rules)
        self.search.done.connect(self._keep)
        self.search.failed.connect(self._fail)
        self.search.progressed.connect(self._hear_progress)
        self.search.busy_changed.connect(self._show_busy)

    def _lay_out(self) -> None:
        head, foot = QHBoxLayout(), QHBoxLayout()
        head.setSpacing(8)
        head.addWidget(label("Season", "page-title"))
        head.addWidget(self.said, 1)
        for number, way in enumerate(WAYS):
            made = pill(way)
            made.setChecked(number == 0)
            self.ways.addButton(made, number)
            head.addWidget(made)
        self.bar.setTextVisible(False)
        self.bar.setMaximumHeight(8)
        self.bar.setMaximumWidth(120)
        self.bar.setAccessibleName("How far the search is")
        for widget in (self.bar, self.stop, self.go):
            head.addWidget(widget)
        foot.addWidget(label("Jobs", "title"), 1)
        for words, what in (
            ("Planted", self.mark_done),
            ("Remove", self.remove),
            ("Change…", self.change),
            ("New job…", self.add),
        ):
            foot.addWidget(made := button(words, clicked=what))
            self.of_one += [made] if what != self.add else []
        foot.insertWidget(1, self.loose)
        main = QVBoxLayout()
        main.setContentsMargins(24, 16, 16, 16)
        main.setSpacing(10)
        main.addLayout(head)
        main.addWidget(self.empty)
        main.addWidget(self.left)
        main.addWidget(self.chart)
        main.addWidget(self.legend)
        main.addWidget(self.hint)
        main.addLayout(foot)
        main.addWidget(self.view, 1)
        both = QHBoxLayout(self)
        both.setContentsMargins(0, 0, 0, 0)
        both.setSpacing(0)
        both.addLayout(main, 1)
        both.addWidget(self.side)


def _solve(
    read: Read,
    units: Units,
    seconds: float,
    times: SwitchTimes | None,
    stop: Stop,
    report: Report,
) -> Found:
    """Read, reckon the switch times and plan; the store is read in the thread that asks."""
    inputs = read(desk.read_inputs)
    known = times if times is not None else desk.times_of(inputs)
    limits = Limits(seconds, stop=stop, report=report)
    answer = desk.solve_season(inputs, limits, known, tell=report)
    met = season_supplies(answer, known, read(read_lead_days))
    short = (*short_lines(met, inputs.begins), *seed_lines(short_seed(answer, known)))
    return Found(answer, known, cost_lines(answer, known, units), short)
