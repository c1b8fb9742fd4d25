"""Beside the wear matrix: the cell in view with its limit, source and wear, and what to do."""

from PySide6.QtWidgets import QScrollArea, QVBoxLayout, QWidget

from changeover.desk.inspect_wear import Spot
from changeover.proof.verdict_findings import JACK
from changeover.proof.wear import WearRate, WearState
from changeover.window.wear.model import WearModel
from changeover.window.wear.words import bounds_words, counts_words, rate_words, source_words
from changeover.window.words import label, rule

WIDTH = 236


class WearSide(QScrollArea):
    """Says who says so for the cell in view."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("side")
        self.setFixedWidth(WIDTH)
        self.setWidgetResizable(True)
        inside = QWidget()
        inside.setObjectName("side")
        self.title, self.state = label(look="title", wrap=True), label(look="strong", wrap=True)
        self.says, self.bounds = label(wrap=True), label(wrap=True)
        self.source, self.rate = label(look="source", wrap=True), label(wrap=True)
        self.action, self.counts = label(wrap=True), label(wrap=True)
        column = QVBoxLayout(inside)
        column.setContentsMargins(16, 14, 14, 14)
        column.setSpacing(7)
        for one in (self.title, self.state, self.says, self.bounds, self.source, self.rate):
            column.addWidget(one)
        column.addWidget(self.action)
        column.addWidget(rule())
        column.addWidget(label("This inspection", "heading"))
        column.addWidget(self.counts)
        column.addStretch()
        column.addWidget(label(JACK, "soft", wrap=True))
        self.setWidget(inside)

    def show_cell(self, model: WearModel, spot: Spot | None, rate: WearRate | None) -> None:
        """Show how a cell stands, and the counts of the whole inspection."""
        self.counts.setText(counts_words(model.verdicts.values()))
        if spot is None:
            self.title.setText("Choose a cell")
            for one in (self.state, self.says, self.bounds, self.source, self.rate, self.action):
                one.setText("")
            return
        row, part = spot
        limit, verdict = model.limit(part), model.verdicts.get(spot)
        self.title.setText(f"Row {row}, {part}")
        state = verdict.condition if verdict is not None else None
        self.state.setText(f"{state.mark} {state}" if state is not None else "not read")
        self.says.setText(limit.name if limit is not None else "No limit is known.")
        self.bounds.setText(bounds_words(limit, model.units) if limit is not None else "")
        self.source.setText(source_words(limit) if limit is not None else "")
        beyond = state is WearState.REPLACE
        self.rate.setText("" if beyond else rate_words(rate, model.units))
        mends = limit is not None and state in (WearState.REPLACE, WearState.WATCH)
        self.action.setText(limit.action if limit is not None and mends else "")
