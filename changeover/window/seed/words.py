"""The cards of the Seed page: the lines of a proposal and its derived figures as they are shown."""

from changeover.quantities import Units
from changeover.seed.reasons import Figure
from changeover.window.marks import Mark
from changeover.window.reason.words import ReasonWords, Rung
from changeover.window.seed.cards import CardWords
from changeover.window.seed.lines import ProposalLine, figure_text

FIGURE = "figure:"


def line_card(line: ProposalLine) -> CardWords:
    """Return the card of one setting."""
    mark = Mark.WORK if line.differs else Mark.READY
    return CardWords(
        key=line.setting.key,
        name=line.setting.name,
        value=line.proposed,
        beside=line.now if line.differs or line.missing else "as now",
        below=" · ".join(part for part in (line.band, line.why) if part),
        side=line.trust,
        mark=Mark.ATTENTION if line.missing else mark,
        loud=line.differs,
        missing=line.missing,
        says=line.says,
    )


def figure_card(figure: Figure, units: Units) -> CardWords:
    """Return the card of one derived figure."""
    return CardWords(
        key=FIGURE + figure.key,
        name=figure.name,
        value=figure_text(figure, units),
        below=figure.reason.why,
        side=figure.reason.trust.value,
    )


def figure_reason(figure: Figure, units: Units) -> ReasonWords:
    """Return what the reason panel says of a derived figure."""
    reason = figure.reason
    inputs = "; ".join(f"{one.name}: {one.text}" for one in reason.inputs)
    how = "\n".join(part for part in (reason.how, f"From {inputs}." if inputs else "") if part)
    return ReasonWords(
        figure.name,
        figure_text(figure, units),
        why=reason.why,
        how=how,
        source=f"{reason.source} · {reason.trust.value}",
        rungs=tuple(Rung(f"{one.trust.value} — {one.says}", one.used) for one in reason.evidence),
        cautions=reason.cautions,
    )
