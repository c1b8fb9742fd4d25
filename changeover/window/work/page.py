"""The Work page: the worklist by place, ticked off by row, with the parts beside it."""

from collections.abc import Iterator
from typing import ClassVar

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QLabel,
    QMenu,
    QPushButton,
    QScrollArea,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.desk.edits import TickTask
from changeover.desk.open_kits import shared_work_view
from changeover.desk.plan_switch import WorkView
from changeover.desk.who_does_what import CrewPlan
from changeover.planter.places import Place
from changeover.switch.bags import nobody
from changeover.switch.out_of_order import comes_first, question
from changeover.switch.sections import sections, task_numbers
from changeover.switch.tasks import Task, Worklist
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.caution import CautionBar
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.page import Page, Read
from changeover.window.timetable.panel import TimetablePanel
from changeover.window.words import Elided, button, label, pill
from changeover.window.work.by_person import ByPerson
from changeover.window.work.own_task_list import OwnTaskList
from changeover.window.work.side import WorkSide
from changeover.window.work.signing_off import sign_off
from changeover.window.work.task_card import TaskCard
from changeover.window.work.task_layout import DESK, YARD
from changeover.window.work.task_words import minutes_text, task_words

EIGHT = 8 * 60
"""The minute of the day at which the timetable of the pictures begins."""

NOTHING = "No work. Choose the next seed and field on the Seed page, or set a target on Switch."


class WorkPage(Page):
    """The worklist of the open switch; every tick is an edit and sets the rows as found."""

    wants: ClassVar[frozenset[Changed]] = frozenset(
        {
            Changed.AS_FOUND,
            Changed.TARGET,
            Changed.NEXT,
            Changed.TICKS,
            Changed.SHELF,
            Changed.PARTS,
            Changed.TIMES,
            Changed.SETTINGS,
            Changed.PLANTERS,
            Changed.CREW,
            Changed.PROOFS,
        }
    )

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.view: WorkView | None = None
        self.cards: dict[str, TaskCard] = {}
        self._asked: set[str] = set()
        self.counts: dict[str, QLabel] = {}
        self.left, self.empty = Elided("", "soft"), label(NOTHING, "soft", wrap=True)
        self.yard, self.only_open = pill("yard mode"), pill("only what is left")
        self.by_place, self.by_person = pill("by place"), pill("by person")
        self.persons, self.place_scroll = ByPerson(outlook), QScrollArea()
        self.views = QStackedWidget()
        self.who = TimetablePanel(read, door, outlook, asking)
        self.caution, self.side = CautionBar(outlook), WorkSide(outlook, self.who)
        self._column = QVBoxLayout()
        self._lay_out()
        self.yard.toggled.connect(self._resize_cards)
        self.only_open.toggled.connect(self._show_done)
        self.persons.ticked.connect(self.tick)
        self.who.found.connect(self._share_out)
        self.side.done.connect(self._tick_next)
        self.side.signed.connect(self._sign_off)
        self.side.labels_wanted.connect(self.print_labels)

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        self.view = self.read(shared_work_view, self.outlook.planter, self.outlook.units)
        tasks = self.view.worklist.tasks
        if [task.key for task in tasks] != list(self.cards):
            self._rebuild(self.view.worklist)
        self._show_done()

    def tick(self, key: str, places: tuple[Place, ...], done: bool = True) -> None:
        """Push the tick of a task at some places, or take it back.

        Where others come first it is asked once for each task; those who did the work know.
        """
        if done and not self._in_order(key, places):
            return
        self.door.push(
            TickTask(self.outlook.planter, key, places, done=done, units=self.outlook.units)
        )

    def _in_order(self, key: str, places: tuple[Place, ...]) -> bool:
        """Say whether to tick a task: nothing comes first, or the person says so."""
        view = self.view
        if view is None or key in self._asked or key not in self.cards:
            return True
        task = view.worklist.task(key)
        asked = question(task, comes_first(view.progress, view.board.planter, task, places))
        if asked is None:
            return True
        sure = self.asking.confirm(asked.text, asked.detail, asked.yes)
        if sure:
            self._asked.add(key)
        else:
            self._show_done()
        return sure

    def print_sheets(self) -> None:
        """Write workbook, CSV and printed sheet into a folder of the person's choice."""
        from changeover.desk.export import print_note, write_worklist

        folder = self.asking.choose_folder("Folder for the worklist")
        if folder is None:
            return
        written = attempt(
            self.door,
            lambda: self.read(write_worklist, self.outlook.planter, folder, self.outlook.units),
        )
        if written:
            note = print_note(self.view) if self.view is not None else ""
            lines = [path.name for path in written] + [note] * bool(note)
            self.asking.tell(f"The worklist lies in {folder}.", "\n".join(lines))

    def print_labels(self) -> None:
        """Write a label for each bag of parts, named for who fits them where that is known."""
        from changeover.desk.kit_labels import write_kit_labels

        view, plan = self.view, self.who.plan
        path = self.asking.choose_new_file("Labels for the bags", "labels.pdf", "PDF (*.pdf)")
        if view is None or path is None:
            return
        whose = plan.whose() if plan is not None else nobody
        written = attempt(self.door, lambda: write_kit_labels(view, path, whose=whose))
        if written is not None:
            self.asking.tell(f"The labels lie in {written.parent}.", written.name)

    @override
    def more_to_see(self) -> Iterator[tuple[str, QWidget]]:
        self.who.begin = EIGHT
        self.who.solve()
        self.who.search.wait()
        self.who.begin = None
        for way in (self.by_person, self.by_place):
            way.click()
            yield way.text().replace(" ", "-"), self.window()
        jobs = {
            "crew": self.who.open_crew,
            "own-task": self._open_own_task,
            "flush": self.open_flush,
            "minutes": self.open_minutes,
        }
        yield from self.dialogs_to_see(jobs)

    def _open_own_task(self) -> None:
        self.open_own_tasks()
        for listed in self.findChildren(OwnTaskList)[-1:]:
            listed.add()

    def recolour(self) -> None:
        super().recolour()
        for card in self.cards.values():
            card.update()
        self.persons.recolour()

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(8)
        head.addWidget(label("Work", "page-title"))
        head.addStretch()
        self._add_ways(head)
        head.addWidget(self.only_open)
        head.addWidget(self.yard)
        head.addWidget(button("Write the sheets", clicked=self.print_sheets))
        head.addWidget(self._more())
        inside = QWidget()
        inside.setObjectName("surface")
        inside.setLayout(self._column)
        self._column.setContentsMargins(24, 4, 16, 24)
        self._column.setSpacing(6)
        main = QVBoxLayout()
        main.setContentsMargins(0, 16, 0, 0)
        top = QVBoxLayout()
        top.setContentsMargins(24, 0, 16, 0)
        top.setSpacing(6)
        top.addLayout(head)
        top.addWidget(self.left)
        top.addWidget(self.caution)
        top.addWidget(self.empty)
        main.addLayout(top)
        for scroll, widget in ((self.place_scroll, inside), (QScrollArea(), self.persons)):
            _fill(scroll, widget)
            self.views.addWidget(scroll)
        main.addWidget(self.views, 1)
        both = QHBoxLayout(self)
        both.setContentsMargins(0, 0, 0, 0)
        both.setSpacing(0)
        both.addLayout(main, 1)
        both.addWidget(self.side)

    def _add_ways(self, head: QHBoxLayout) -> None:
        """Add the two ways of looking at the work: by place and by person."""
        self._ways = QButtonGroup(self)
        for number, way in enumerate((self.by_place, self.by_person)):
            self._ways.addButton(way, number)
            head.addWidget(way)
        self.by_place.setChecked(True)
        self._ways.idClicked.connect(self.views.setCurrentIndex)
        head.addSpacing(12)

    def open_own_tasks(self) -> None:
        """Open the list of tasks that were added or split off."""
        if self.view is None or self.view.board.next_job is None:
            self.door.refused.emit("No switch is open; choose the next seed first.")
            return
        OwnTaskList(self.read, self.door, self.outlook, self).open()

    def open_minutes(self) -> None:
        """Open the list of minutes of each kind of work."""
        from changeover.window.work.minutes_dialog import MinutesDialog

        MinutesDialog(self.read, self.door, self.outlook, self).open()

    def open_flush(self) -> None:
        """Open the form that reckons a flush and enters it into the clean-out log."""
        from changeover.desk.flush import flush_case
        from changeover.window.work.flush_form import FlushForm

        if self.view is not None:
            view = self.view
            case = attempt(self.door, lambda: flush_case(view))
            if case is not None:
                FlushForm(case, self.outlook.units, self.door, self).open()

    def _more(self) -> QPushButton:
        made, menu = button("More ▾", "quiet"), QMenu(self)
        menu.addAction("Tasks of your own…", self.open_own_tasks)
        menu.addAction("Minutes…", self.open_minutes)
        menu.addAction("Flush until a purity limit…", self.open_flush)
        made.setMenu(menu)
        return made

    def _share_out(self, plan: CrewPlan | None) -> None:
        self.persons.show_plan(plan, task_numbers(self.view.worklist) if self.view else {})
        if self.view is not None:
            self.persons.show_done(self.view.progress.done, only_open=self.only_open.isChecked())

    def _rebuild(self, worklist: Worklist) -> None:
        while self._column.count():
            item = self._column.takeAt(0)
            if item is not None and (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.cards.clear()
        self._asked.clear()
        self.counts.clear()
        numbers = task_numbers(worklist)
        for task in worklist.tasks:
            self.cards[task.key] = self._card(task, numbers[task.key])
        for section in sections(worklist):
            self._column.addWidget(self._heading(section.name))
            for task in section.tasks:
                self._column.addWidget(self.cards[task.key])
        self._column.addStretch()

    def _heading(self, words: str) -> QWidget:
        whole, line = QWidget(), QHBoxLayout()
        whole.setLayout(line)
        line.setContentsMargins(0, 10, 0, 0)
        line.addWidget(label(words, "title"))
        count = label("", "soft")
        self.counts[words] = count
        line.addWidget(count)
        line.addStretch()
        return whole

    def _card(self, task: Task, number: int) -> TaskCard:
        card = TaskCard(
            task_words(task, number), self.outlook, YARD if self.yard.isChecked() else DESK
        )
        card.ticked.connect(self.tick)
        return card

    def _show_done(self) -> None:
        view = self.view
        if view is None:
            return
        numbers = task_numbers(view.worklist)
        for task in view.worklist.tasks:
            done = view.progress.done[task.key]
            card = self.cards[task.key]
            card.show_task(task_words(task, numbers[task.key]), done)
            card.setVisible(not (self.only_open.isChecked() and view.progress.is_done(task.key)))
        for section in sections(view.worklist):
            ready = sum(view.progress.is_done(task.key) for task in section.tasks)
            self.counts[section.name].setText(f"{ready} of {len(section.tasks)} tasks done")
        minutes = float(view.progress.minutes_left.to("min").magnitude)
        total, ready = view.progress.tasks_total, view.progress.tasks_done
        self.left.setText(
            f"{ready} of {total} tasks done, about {minutes_text(minutes)} of work left"
            if total
            else ""
        )
        self.empty.setVisible(not total)
        self.caution.show_lines(view.worklist.cautions)
        self.side.show_view(view)
        self.who.show_view(view)
        self.persons.show_done(view.progress.done, only_open=self.only_open.isChecked())

    def _resize_cards(self, yard: bool) -> None:
        for card in self.cards.values():
            card.set_sizes(YARD if yard else DESK)
        self.persons.set_sizes(YARD if yard else DESK)
        self.side.set_yard(yard)

    def _tick_next(self) -> None:
        task = self.view.progress.next_task if self.view else None
        if task is not None and self.view is not None:
            self.tick(task.key, self.view.progress.left(task)[:1])

    def _sign_off(self) -> None:
        if self.view is not None:
            sign_off(self.view, self.door, self.asking)


def _fill(scroll: QScrollArea, widget: QWidget) -> None:
    """Let a scroll area show a column of cards."""
    scroll.setWidget(widget)
    scroll.setWidgetResizable(True)
    scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
