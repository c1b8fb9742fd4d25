"""Beside the season: what is proved of the plan, the orders compared, and what it goes by."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFormLayout, QLineEdit, QScrollArea, QVBoxLayout, QWidget

from changeover.desk.season.lines import order_text, proof_text
from changeover.desk.season.plan import SeasonAnswer
from changeover.desk.season.rules import SeasonRules, read_rules, rules_texts
from changeover.quantities import Refusal
from changeover.window.words import button, label

WIDTH = 320
NO_PLAN = "No plan yet."


class SeasonSide(QWidget):
    """The column at the right; emits ``ruled`` with other rules when they are taken over."""

    ruled = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("side")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setFixedWidth(WIDTH)
        self.rules = SeasonRules()
        self.proof, self.refusal = label("", wrap=True), label("", "work-text", wrap=True)
        self.orders, self.costs, self.short = QVBoxLayout(), QVBoxLayout(), QVBoxLayout()
        self.short_title = label("What will be short", "title")
        self.fields: dict[str, QLineEdit] = {}
        self.take = button("Take over", clicked=self._take)
        self._lay_out()
        self.show_rules(self.rules)

    def show_answer(self, answer: SeasonAnswer | None) -> None:
        """Show what is proved of a plan, and what each order would cost."""
        self.proof.setText(NO_PLAN if answer is None else proof_text(answer))
        _empty(self.orders)
        for name, order in (answer.orders() if answer is not None else {}).items():
            self.orders.addWidget(label(name, "strong"))
            self.orders.addWidget(label(order_text(order), "soft", wrap=True))

    def show_costs(self, lines: tuple[str, ...]) -> None:
        """Show what the switches cost, and whether to finish first or change now."""
        _empty(self.costs)
        for line in lines:
            self.costs.addWidget(label(line, "soft", wrap=True))

    def show_short(self, lines: tuple[str, ...]) -> None:
        """Show which parts are short on which day, and until when to order them."""
        self.short_title.setVisible(bool(lines))
        _empty(self.short)
        for line in lines:
            self.short.addWidget(label(f"! {line}", "work-text", wrap=True))

    def show_rules(self, rules: SeasonRules) -> None:
        """Fill the fields with what the season goes by."""
        self.rules = rules
        for key, text in rules_texts(rules).items():
            self.fields[key].setText(text)
        self._check()

    def _read(self) -> SeasonRules:
        return read_rules(self.rules, {key: line.text() for key, line in self.fields.items()})

    def _check(self) -> None:
        try:
            same = self._read() == self.rules
            self.refusal.setText("")
            self.take.setEnabled(not same)
        except Refusal as refusal:
            self.refusal.setText(str(refusal))
            self.take.setEnabled(False)

    def _take(self) -> None:
        self.ruled.emit(self._read())

    def _lay_out(self) -> None:
        form = QFormLayout()
        form.setHorizontalSpacing(12)
        form.setVerticalSpacing(6)
        for key, text in rules_texts(self.rules).items():
            line = QLineEdit(text)
            line.setAccessibleName(key)
            line.textChanged.connect(self._check)
            self.fields[key] = line
            form.addRow(key, line)
        self.fields["Plan from"].setPlaceholderText("today")
        inside, scroll, column = QWidget(), QScrollArea(), QVBoxLayout()
        inside.setLayout(column)
        column.setContentsMargins(20, 16, 16, 16)
        column.setSpacing(8)
        column.addWidget(label("The plan", "title"))
        column.addWidget(self.proof)
        column.addLayout(self.orders)
        column.addSpacing(8)
        column.addWidget(label("What a switch costs", "title"))
        column.addLayout(self.costs)
        column.addSpacing(8)
        column.addWidget(self.short_title)
        column.addLayout(self.short)
        column.addSpacing(8)
        column.addWidget(label("Reckoned with", "title"))
        column.addLayout(form)
        column.addWidget(self.refusal)
        column.addWidget(self.take)
        column.addStretch()
        scroll.setWidget(inside)
        scroll.setWidgetResizable(True)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(scroll)


def _empty(column: QVBoxLayout) -> None:
    while column.count():
        item = column.takeAt(0)
        if item is not None and (widget := item.widget()) is not None:
            widget.hide()
            widget.deleteLater()
