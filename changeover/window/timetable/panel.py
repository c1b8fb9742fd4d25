"""Who does what: the crew's timetable beside the worklist, found anew from what is done."""

from functools import partial

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QVBoxLayout, QWidget

from changeover.desk import who_does_what as desk
from changeover.desk.crew import Crew, crew
from changeover.desk.plan_switch import WorkView
from changeover.desk.who_does_what import CrewPlan, Question
from changeover.switch.search import Limits, Progress
from changeover.switch.sections import task_numbers
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.background import Background, Pool, Report, Stop
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.timetable.crew_form import CrewForm
from changeover.window.timetable.drawing import crew_lanes
from changeover.window.timetable.lanes import LanesChart
from changeover.window.timetable.legend import LanesLegend
from changeover.window.words import button, label

NOBODY = "Enter who is here, and the work is shared out among them."
OLD = "Work has been ticked off since; find it again from now."
MORE = "Work has come up since that nobody has in it; find it again from now."
OTHER = "The work is another than when it was shared out; share it out again."
NOW_MS = 30_000


class TimetablePanel(QWidget):
    """Chart, what is proved, and what-if; ``found`` carries the plan, None when there is none."""

    found = Signal(object)

    def __init__(
        self, read: Read, door: Door, outlook: Outlook, asking: Asking, pool: Pool | None = None
    ) -> None:
        super().__init__()
        self._read, self._door, self._outlook, self._asking = read, door, outlook, asking
        self.view: WorkView | None = None
        self.crew = Crew()
        self.plan: CrewPlan | None = None
        self._plans: dict[str, CrewPlan] = {}
        self._searched = self._asked = ""
        self.seconds, self._what = desk.SECONDS, ""
        self.begin: int | None = None
        self.search, self.asking_if = Background(self, pool), Background(self, pool)
        self.chart = LanesChart(outlook, "Who does what, by person")
        self.legend = LanesLegend(self.chart)
        self.says, self.what_if = label("", "soft", wrap=True), label("", "soft", wrap=True)
        self.bar = QProgressBar()
        self.go = button("Share the work out", clicked=self.solve)
        self.stop = button("Stop", clicked=self._stop)
        self.person = button("One more person?", "quiet", self.ask_person)
        self.tool = button("", "quiet", self.ask_tool)
        self.sheets = button("Print…", clicked=self.print_sheets)
        self.sheets.setToolTip("Print an overview and a sheet for each person")
        self.people = button("Crew…", clicked=self.open_crew)
        self._now = QTimer(self, interval=NOW_MS)
        self._now.timeout.connect(self._draw)
        self._lay_out()
        self._listen()

    def show_view(self, view: WorkView) -> None:
        """Take on the work as it is now; the plan last made for its planter is shown again."""
        before = self._planter
        self.view, self.crew = view, self._read(crew)
        plan = self._plans.get(self._planter)
        if plan is not None and self._strange(plan):
            plan = None
        if plan is not self.plan or before != self._planter:
            self._bring(plan)
        self._show()

    @property
    def _planter(self) -> str:
        return self.view.board.planter.name if self.view is not None else ""

    def solve(self) -> None:
        """Look for the shortest timetable of what is left, from now on."""
        question = self._question()
        if question is not None:
            self._searched = self._planter
            self.search.start(partial(_solve, question, self.seconds))

    def ask_person(self) -> None:
        """Ask what one more person would save."""
        self._ask("One more person", lambda question: desk.with_more(question, persons=1))

    def ask_tool(self) -> None:
        """Ask what one more of the tool waited for most would save."""
        tool = self._tool()
        if tool:
            self._ask(f"One more {tool}", lambda question: desk.with_more(question, tool=tool))

    def open_crew(self) -> None:
        """Open the lists of persons and tools."""
        CrewForm(self._read, self._door, self._outlook, self._asking, self).open()

    def print_sheets(self) -> None:
        """Write the timetable for each person into a file of the person's choice."""
        from changeover.desk.timetable_export import timetable_note, write_timetable

        if self.plan is None or self.view is None:
            return
        plan, view = self.plan, self.view
        name = f"timetable-{view.board.planter.name}.pdf".lower().replace(" ", "-")
        path = self._asking.choose_new_file("Timetable for each person", name, "PDF (*.pdf)")
        if path is not None:
            written = attempt(self._door, lambda: write_timetable(view, plan, path))
            if written is not None:
                lines = written.name, timetable_note(view, plan)
                self._asking.tell(f"The timetable lies in {written.parent}.", "\n".join(lines))

    def _strange(self, plan: CrewPlan) -> bool:
        """Say whether a plan holds tasks that the worklist no longer has."""
        assert self.view is not None
        there = {task.key: frozenset(task.places) for task in self.view.worklist.tasks}
        places = plan.question.crew_work.places
        return any(not set(at.values()) <= there.get(key, set()) for key, at in places.items())

    def _aged(self) -> str:
        """Say what has come about since the plan was made, nothing when it still holds."""
        if self.plan is None or self.view is None:
            return ""
        done, places = self.view.progress.done, self.plan.question.crew_work.places
        planned = {key: frozenset(at.values()) for key, at in places.items()}
        if any(not done[key].isdisjoint(at) for key, at in planned.items()):
            return OLD
        left = {
            task.key: frozenset(task.places) - done[task.key] for task in self.view.worklist.tasks
        }
        more = any(not at <= planned.get(key, frozenset()) for key, at in left.items())
        return MORE if more else ""

    def _question(self) -> Question | None:
        if self.view is None:
            return None
        view = self.view
        return attempt(self._door, lambda: desk.question_of(view, self.crew, self.begin))

    def _ask(self, what: str, widen: desk.Widen) -> None:
        if self.plan is not None:
            self._what, self._asked = what, self._planter
            self.what_if.setText(f"{what}: looking …")
            self.asking_if.start(partial(_solve, widen(self.plan.question), self.seconds))

    def _tool(self) -> str:
        waited = desk.tools_waited_for(self.plan.question) if self.plan is not None else ()
        return next(iter(waited), "")

    def _stop(self) -> None:
        self.search.stop()
        self.asking_if.stop()

    def _keep(self, plan: CrewPlan) -> None:
        """Keep a plan for the planter that it was asked for, and show it if that is in view."""
        self._plans[self._searched] = plan
        if self._searched == self._planter:
            self._bring(plan)

    def _bring(self, plan: CrewPlan | None) -> None:
        self.plan = plan
        self.what_if.setText("")
        self._show()
        self.found.emit(plan)

    def _hear_if(self, then: CrewPlan) -> None:
        if self.plan is not None and self._asked == self._planter:
            said = desk.saved_text(self.plan.timetable, then.timetable, self._what)
            self.what_if.setText(said)

    def _hear_progress(self, told: Progress) -> None:
        self.bar.setValue(round(100 * told.fraction))

    def _fail(self, sentence: str) -> None:
        self.what_if.setText("")
        self._door.refused.emit(sentence)

    def _show(self) -> None:
        plan, busy = self.plan, self.search.busy or self.asking_if.busy
        work = self.view is not None and not self.view.progress.finished
        here = any(one.here for one in self.crew.members)
        self.chart.setVisible(plan is not None)
        self.bar.setVisible(busy)
        self.stop.setVisible(busy)
        self.go.setVisible(not busy)
        self.go.setEnabled(work and here)
        self.go.setText("Again from now" if plan is not None else "Share the work out")
        for made in (self.person, self.sheets):
            made.setVisible(plan is not None)
        tool = self._tool()
        self.tool.setVisible(bool(tool))
        self.tool.setText(f"One more {tool}?")
        self.says.setText(self._said(here))
        self._draw()
        self.legend.follow()

    def _said(self, here: bool) -> str:
        if not here:
            return NOBODY
        lost = self.plan is None and self._planter in self._plans
        if lost and self.view is not None and not self.view.progress.finished:
            return OTHER
        if self.plan is None:
            names = ", ".join(one.name for one in self.crew.members if one.here)
            return f"{names}."
        said, aged = self.plan.says, self._aged()
        return f"{said.removesuffix('.')}. {aged}" if aged else said

    def _draw(self) -> None:
        if self.plan is not None and self.view is not None:
            done = self.view.progress.done
            numbers = task_numbers(self.view.worklist)
            self.chart.show_lanes(crew_lanes(self.plan, done, desk.minute_of_day(), numbers))

    def _listen(self) -> None:
        self.search.done.connect(self._keep)
        self.asking_if.done.connect(self._hear_if)
        for search in (self.search, self.asking_if):
            search.failed.connect(self._fail)
            search.progressed.connect(self._hear_progress)
            search.busy_changed.connect(self._show)
        self._now.start()

    def _lay_out(self) -> None:
        self.bar.setTextVisible(False)
        self.bar.setMaximumHeight(8)
        self.bar.setAccessibleName("How far the search is")
        head, foot, ifs = QHBoxLayout(), QHBoxLayout(), QVBoxLayout()
        head.addWidget(label("Who does what", "title"), 1)
        head.addWidget(self.people)
        foot.addWidget(self.go, 1)
        foot.addWidget(self.bar, 1)
        foot.addWidget(self.stop)
        foot.addWidget(self.sheets)
        ifs.setSpacing(0)
        for made in (self.person, self.tool):
            ifs.addWidget(made, 0, Qt.AlignmentFlag.AlignLeft)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addLayout(head)
        column.addWidget(self.says)
        column.addWidget(self.chart)
        column.addWidget(self.legend)
        column.addLayout(foot)
        column.addLayout(ifs)
        column.addWidget(self.what_if)


def _solve(question: Question, seconds: float, stop: Stop, report: Report) -> CrewPlan:
    return desk.solve(question, Limits(seconds, stop=stop, report=report))
