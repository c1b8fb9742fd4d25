"""The crew: who is here, what they can do and when, and how many there are of each shared tool."""

from typing import Any

from PySide6.QtWidgets import QDialog, QHBoxLayout, QVBoxLayout, QWidget

from changeover.desk import crew as desk_crew
from changeover.desk.changed import Changed
from changeover.desk.crew import Crew, crew
from changeover.desk.shop_edits import PutMember, PutTool
from changeover.switch.crew import CrewMember, SharedTool
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.door import Door
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.words import button, label

HINT = (
    "Type in the cells. Skills are the headings of the worklist: tanks, meters, row units; empty "
    "means everything. Hours like 7:00-12:00, 13-18; empty means all day."
)
TOOL_HINT = "Only tools listed here are waited for; others count as enough for everybody."


def member_columns() -> tuple[Column[CrewMember], ...]:
    """Return the columns of the persons."""
    return (
        Column("Who", lambda one: one.name, edit=desk_crew.rename_member),
        Column("Can do", desk_crew.skills_text, edit=desk_crew.set_skills, wide=True),
        Column("Hours", desk_crew.day_text, edit=_hours),
        Column("Today", desk_crew.here_text, edit=desk_crew.set_here),
    )


def tool_columns() -> tuple[Column[SharedTool], ...]:
    """Return the columns of the shared tools."""
    return (
        Column("Shared tool", lambda one: one.name, wide=True),
        Column("How many", lambda one: str(one.count), edit=desk_crew.set_count, number=True),
    )


def _hours(member: CrewMember, text: str) -> PutMember:
    return desk_crew.set_hours(member, text.replace("all day", ""))


class CrewForm(QDialog):
    """Two lists to type in; every change goes through the door at once and can be undone."""

    def __init__(
        self, read: Read, door: Door, outlook: Outlook, asking: Asking, parent: QWidget
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Crew and tools")
        self._read, self._door, self._asking = read, door, asking
        self.members: ListModel[CrewMember] = ListModel(member_columns(), door, outlook)
        self.tools: ListModel[SharedTool] = ListModel(tool_columns(), door, outlook)
        self.member_view = ListView(self.members, "Persons of the crew")
        self.tool_view = ListView(self.tools, "Shared tools")
        self.refusal = label(look="work-text", wrap=True)
        self._lay_out()
        door.changed.connect(self._hear)
        door.refused.connect(self.refusal.setText)
        self._show()

    def add_member(self) -> None:
        """Ask for a name and add the person."""
        name = self._asking.ask_text("Crew", "Name of the person:")
        if name is not None:
            self._push(lambda: desk_crew.add_member(name))

    def add_tool(self) -> None:
        """Ask for a name and add the tool."""
        common = desk_crew.first_tools(self.tools.rows)
        name = self._asking.ask_text("Shared tools", "Name of the tool:", (*common, "")[0])
        if name is not None:
            self._push(lambda: desk_crew.add_tool(name))

    def remove_member(self) -> None:
        """Remove the chosen person."""
        row = self.member_view.chosen
        if row is not None:
            self._door.push(PutMember(None, before=self.members.rows[row]))

    def remove_tool(self) -> None:
        """Remove the chosen tool."""
        row = self.tool_view.chosen
        if row is not None:
            self._door.push(PutTool(None, before=self.tools.rows[row]))

    def turn_here(self) -> None:
        """Send the chosen person away, or bring them back."""
        row = self.member_view.chosen
        if row is not None:
            self._door.push(desk_crew.turn_here(self.members.rows[row]))

    def _push(self, make: Any) -> None:
        edit = attempt(self._door, make)
        if edit is not None:
            self._door.push(edit)

    def _hear(self, changed: frozenset[Changed]) -> None:
        self.refusal.setText("")
        if Changed.CREW in changed:
            self._show()

    def _show(self) -> None:
        there: Crew = self._read(crew)
        self.members.show_rows(there.members)
        self.tools.show_rows(there.tools)

    def _lay_out(self) -> None:
        whole, people, things, ends = QVBoxLayout(self), QHBoxLayout(), QHBoxLayout(), QHBoxLayout()
        whole.setContentsMargins(20, 18, 20, 16)
        whole.setSpacing(8)
        people.addWidget(label("Crew", "title"), 1)
        people.addWidget(button("Here or away", clicked=self.turn_here))
        people.addWidget(button("Remove", clicked=self.remove_member))
        people.addWidget(button("Add a person…", clicked=self.add_member))
        things.addWidget(label("Shared tools", "title"), 1)
        things.addWidget(button("Remove", clicked=self.remove_tool))
        things.addWidget(button("Add a tool…", clicked=self.add_tool))
        ends.addWidget(self.refusal, 1)
        ends.addWidget(button("Close", "main", self.accept))
        whole.addLayout(people)
        whole.addWidget(label(HINT, "soft", wrap=True))
        whole.addWidget(self.member_view, 3)
        whole.addLayout(things)
        whole.addWidget(label(TOOL_HINT, "soft", wrap=True))
        whole.addWidget(self.tool_view, 2)
        whole.addLayout(ends)
        self.resize(640, 520)
