"""Every proof of a planter that stands, and withdrawing one that was taken wrongly."""

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.desk.prove.proofs import TakenProof, WithdrawProof, proofs
from changeover.window.asking import Asking
from changeover.window.dates import moment_text
from changeover.window.door import Door
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.proof.view import ProofView
from changeover.window.words import button, label

EMPTY = "Nothing proved yet. Choose a sort of proof above and enter what was read."


def taken_columns() -> tuple[Column[TakenProof], ...]:
    """Return the columns of the list of proofs."""
    return (
        Column("Proof", lambda one: str(one.kind)),
        Column("Taken", lambda one: moment_text(one.taken)),
        Column("By", lambda one: one.who),
        Column("Lot", lambda one: one.lot or ""),
        Column("Note", lambda one: one.note, wide=True),
    )


class TakenView(ProofView):
    """The list of proofs, latest first."""

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.model: ListModel[TakenProof] = ListModel(taken_columns(), door, outlook)
        self.view = ListView(self.model, "Proofs taken")
        self.empty = label(EMPTY, "soft", wrap=True)
        line, column = QHBoxLayout(), QVBoxLayout(self)
        line.addStretch()
        line.addWidget(button("Withdraw", clicked=self.withdraw))
        column.setContentsMargins(0, 0, 24, 16)
        column.addWidget(self.empty)
        column.addWidget(self.view, 1)
        column.addLayout(line)

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        rows = self.read(proofs, self.outlook.planter)
        self.model.show_rows(rows)
        self.empty.setVisible(not rows)
        self.say_about(f"{len(rows)} taken on {self.outlook.planter}" if rows else "")

    def withdraw(self) -> None:
        """Withdraw the chosen proof; it is kept, and what it closed is open again."""
        row = self.view.chosen
        if row is None or row >= len(self.model.rows):
            return
        one = self.model.rows[row]
        if self.asking.confirm(
            f"Withdraw the {one.kind} of {moment_text(one.taken)}?",
            "It leaves the lists and stays in the history; findings that it closed are open again.",
        ):
            self.door.push(WithdrawProof(self.outlook.planter, one.number))
