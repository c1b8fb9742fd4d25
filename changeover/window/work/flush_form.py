"""The form of a flush: what is left in a row and the limit give row length and area to plant."""

import getpass

from PySide6.QtWidgets import QCheckBox, QLineEdit, QWidget

from changeover.desk import flush as desk
from changeover.desk.flush import FlushCase
from changeover.desk.shop_edits import PutFlush
from changeover.quantities import Refusal, Units, how_many
from changeover.window.door import Door
from changeover.window.entry.form_dialog import FormDialog
from changeover.window.words import label


class FlushForm(FormDialog):
    """Reckons while it is typed; taking it over enters the flush into the clean-out log."""

    wanted = "Enter the old seed left, the seed in a row and the purity limit."

    def __init__(self, case: FlushCase, units: Units, door: Door, parent: QWidget) -> None:
        super().__init__("Flush until a purity limit is met", door, parent)
        self._case, self._units = case, units
        self.left, self.pool, self.limit = QLineEdit(), QLineEdit(), QLineEdit()
        self.who = QLineEdit(getpass.getuser())
        self.counted = QCheckBox("counted, not guessed")
        self.answer = label("", "strong", wrap=True)
        self.take.setText("Enter into the log")
        self._lay_out()
        for line in (self.left, self.pool, self.limit, self.who):
            line.textChanged.connect(self.check)
        self.check()

    def edit(self) -> PutFlush:
        return desk.log_flush(
            self._case, self._figures(), self.who.text(), measured=self.counted.isChecked()
        )

    def check(self) -> None:
        super().check()
        try:
            found = desk.reckon(self._case, *self._figures())
            self.answer.setText(desk.flush_text(found, self._case, self._units))
        except Refusal:
            self.answer.setText("")

    def _figures(self) -> tuple[float, float, float]:
        return (
            desk.read_seeds(self.left.text(), "Old seed left"),
            desk.read_seeds(self.pool.text(), "Seed in a row"),
            desk.read_limit(self.limit.text()),
        )

    def _lay_out(self) -> None:
        case = self._case
        hints = {
            self.left: "old seeds left in one row after cleaning",
            self.pool: "seeds in meter and hopper of one row",
            self.limit: "such as 0.1 % or 1 in 400",
        }
        for line, hint in hints.items():
            line.setPlaceholderText(hint)
        rows = how_many(case.rows, "row")
        self.form.addRow(
            label(f"From lot {case.old} to lot {case.new}, {rows}.", "soft", wrap=True)
        )
        for words, widget in (
            ("Old seed left", self.left),
            ("", self.counted),
            ("Seed in a row", self.pool),
            ("Purity limit", self.limit),
        ):
            self.form.addRow(words, widget)
        for limit in case.limits:
            self.form.addRow("", label(f"Printed: {desk.limit_text(limit)}", "soft", wrap=True))
        self.form.addRow("By", self.who)
        self.form.addRow(self.answer)
        self.form.addRow(label(desk.ASSUMED, "soft", wrap=True))
