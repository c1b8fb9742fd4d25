"""The words of the trade-in page: rows with their work and sums, totals, and two side by side."""

from dataclasses import dataclass

from changeover.desk.appraise import AppraisalView
from changeover.desk.print_appraisal import NO_READING
from changeover.proof.appraisal import Amounts, Appraisal, Repair
from changeover.proof.money import money
from changeover.proof.price_book import PriceBook
from changeover.proof.wear import WearState
from changeover.switch.wording import rows_text


@dataclass(frozen=True)
class RowLine:
    """One row of the list: its condition, what brings it to standard, and what that costs."""

    name: str
    condition: str
    work: str
    parts: str
    labour: str
    total: str
    loud: bool = False


def row_lines(view: AppraisalView) -> tuple[RowLine, ...]:
    """Return the rows of an appraisal from the left, then those that were not inspected."""
    appraised, book = view.appraised, view.book
    if appraised is None or book is None:
        return ()
    lines = [
        RowLine(
            str(one.row) if one.row else "planter",
            f"{one.condition.mark} {one.condition}",
            ", ".join(repair_words(repair, book) for repair in one.repairs),
            _sums(one.amounts, "parts"),
            _sums(one.amounts, "labour"),
            _sums(one.amounts, "total"),
            one.condition is WearState.REPLACE,
        )
        for one in appraised.rows
    ]
    if view.not_read:
        rows = rows_text(view.not_read).partition(" ")[2]
        lines.append(RowLine(rows, f"? {NO_READING}", "", "", "", ""))
    return tuple(lines)


def repair_words(repair: Repair, book: PriceBook) -> str:
    """Say one repair: ``2 × Opener disc (D-15)``; without a price it says so."""
    line = next((one for one in book.lines if one.code == repair.part), None)
    if line is None:
        return f"{repair.part} (no price)"
    return f"{repair.count} × {line.text or line.code} ({line.code})"


def _sums(amounts: tuple[Amounts, ...], name: str) -> str:
    return ", ".join(money(getattr(one, name), one.currency) for one in amounts)


def work_words(appraised: Appraisal | None) -> tuple[str, str]:
    """Return the sum of the work with tax, and what it is made of."""
    if appraised is None:
        return "–", ""
    if not appraised.totals:
        return "none", "nothing needs to be replaced" if appraised.complete else ""
    whole = ", ".join(money(one.total, one.currency) for one in appraised.totals)
    parts = (
        f"parts {money(one.parts)}, labour {money(one.labour)}, tax {money(one.tax)}"
        for one in appraised.totals
    )
    return whole, "; ".join(parts)


def margin_words(appraised: Appraisal | None) -> tuple[str, str]:
    """Return what reconditioning brings, and how it is reckoned or why it is not."""
    if appraised is None:
        return "–", ""
    gain = appraised.margin
    if gain is not None:
        return money(
            gain.amount, gain.currency
        ), "reconditioned less as found less work, before tax"
    if not appraised.complete:
        return "–", "not reckoned while a price is missing"
    if appraised.as_found is None or appraised.reconditioned is None:
        return "–", "enter both values of the planter"
    return "–", "not reckoned across currencies"


def unpriced_words(appraised: Appraisal | None) -> tuple[str, ...]:
    """Say what has no price, in one sentence."""
    if appraised is None or appraised.complete:
        return ()
    parts = [one for one in appraised.unpriced if not one.startswith("labour")]
    labour = [one for one in appraised.unpriced if one.startswith("labour")]
    return (f"Not priced, and not in the sums: {', '.join([*parts, *labour])}.",)
