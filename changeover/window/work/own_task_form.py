"""The forms of a task that a person adds, and of places of a task that are done apart."""

from typing import Any

from PySide6.QtWidgets import QLineEdit, QWidget

from changeover.desk import own_work as desk
from changeover.desk.edits import PutOwnWork
from changeover.desk.plan_switch import WorkView
from changeover.planter.settings import WorkPlace
from changeover.quantities import Q, Refusal
from changeover.switch.own_tasks import OwnTask, Split
from changeover.switch.tasks import MachineState
from changeover.window.door import Door
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.form_dialog import FormDialog
from changeover.window.entry.quantity_field import QuantityField


class OwnTaskForm(FormDialog):
    """Adds a task to the open switch; it survives a new plan of the work."""

    wanted = "Write what is to be done, and where."

    def __init__(
        self, view: WorkView, there: tuple[desk.OwnWork, ...], door: Door, parent: QWidget
    ) -> None:
        super().__init__("A task of your own", door, parent)
        self._view, self._taken = view, [one.name for one in there if isinstance(one, OwnTask)]
        units = view.board.units
        self.title, self.places, self.tools = QLineEdit(), QLineEdit(), QLineEdit()
        self.persons = QLineEdit("1")
        self.at = ChoiceBox("At", [(place.value, place) for place in WorkPlace])
        self.state = ChoiceBox("Machine", [(state.value, state) for state in MachineState])
        self.fixed = QuantityField("Minutes once", "time", units, hint="0 min")
        self.each = QuantityField("Minutes at each", "time", units, hint="0 min")
        tasks = [(task.title, task.family) for task in desk.families(view)]
        self.after = ChoiceBox("After", [("anything", ""), *tasks])
        self.before = ChoiceBox("Before", [("nothing", ""), *tasks])
        self.at.choose(WorkPlace.ROW_UNIT)
        self._lay_out()
        for line in (self.title, self.places, self.tools, self.persons):
            line.textChanged.connect(self.check)
        for field in (self.fixed, self.each):
            field.changed.connect(self.check)
        for box in (self.at, self.state, self.after, self.before):
            box.currentIndexChanged.connect(self.check)
        self.check()

    def edit(self) -> PutOwnWork:
        planter = self._view.board.planter
        if not self.title.text().strip():
            raise Refusal("Write what is to be done.")
        if not self.persons.text().strip().isdecimal():
            raise Refusal("Write how many persons it takes, such as 1.")
        none = Q(0.0, "min")
        task = OwnTask(
            name=desk.name_for(self.title.text(), self._taken),
            title=self.title.text().strip(),
            work_place=self.at.chosen or WorkPlace.ROW_UNIT,
            places=desk.read_places(planter, self.places.text()),
            minutes_fixed=self.fixed.quantity() or none,
            minutes_each=self.each.quantity() or none,
            state=self.state.chosen or MachineState.ANY,
            tools=tuple(tool.strip() for tool in self.tools.text().split(",") if tool.strip()),
            persons=int(self.persons.text()),
            after=tuple(filter(None, [self.after.chosen])),
            before=tuple(filter(None, [self.before.chosen])),
        )
        return PutOwnWork(planter.name, desk.check_own_task(task))

    def _lay_out(self) -> None:
        hints = {
            self.title: "what is to be done",
            self.places: "rows like 1-8, names like tank 1; empty: the planter",
            self.tools: "separated by commas",
        }
        for line, hint in hints.items():
            line.setPlaceholderText(hint)
        rows: tuple[tuple[str, Any], ...] = (
            ("Task", self.title), ("At", self.at), ("Where", self.places),
            ("Minutes once", self.fixed), ("Minutes at each", self.each),
            ("Machine", self.state), ("Tools", self.tools), ("Persons", self.persons),
            ("After", self.after), ("Before", self.before),
        )  # fmt: skip
        for words, widget in rows:
            self.form.addRow(words, widget)


class SplitForm(FormDialog):
    """Sets places of a task apart, such as one person's rows."""

    wanted = "Choose the work, who does it, and on which rows."

    def __init__(self, view: WorkView, door: Door, parent: QWidget) -> None:
        super().__init__("Split a task", door, parent)
        self._view = view
        self.task = ChoiceBox("Task", [(task.title, task) for task in desk.splittable(view)])
        self.name, self.places = QLineEdit(), QLineEdit()
        self.name.setPlaceholderText("for whom, or why")
        self.places.setPlaceholderText("rows like 1-8, or names like tank 1")
        for words, widget in (("Task", self.task), ("Name", self.name), ("Apart", self.places)):
            self.form.addRow(words, widget)
        self.task.currentIndexChanged.connect(self.check)
        for line in (self.name, self.places):
            line.textChanged.connect(self.check)
        self.check()

    def edit(self) -> PutOwnWork:
        task = self.task.chosen
        if task is None:
            raise Refusal("No task is done at several places, so none can be split.")
        planter = self._view.board.planter
        if not self.places.text().strip():
            raise Refusal("Write which rows or groups are done apart, such as 1-8.")
        places = frozenset(desk.read_places(planter, self.places.text()))
        family = [one for one in self._view.worklist.tasks if one.family == task.family]
        strange = places - {place for one in family for place in one.places}
        if strange:
            named = desk.typed_places(sorted(strange, key=str))
            raise Refusal(f"“{task.title}” is not done at {named}; leave that out.")
        return PutOwnWork(planter.name, Split(task.family, self.name.text().strip(), places))
