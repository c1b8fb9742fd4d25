"""The appraisal's report for a customer: every figure as a text, and where it comes from."""

import re
from collections.abc import Sequence
from pathlib import Path

from changeover.desk.appraise import AppraisalView, beside
from changeover.files.appraisal_report import write_appraisal
from changeover.files.appraisal_sheet import AppraisalSheet, SheetPhoto, SheetRepair, SheetRow
from changeover.proof.appraisal import Amounts, Appraisal, Repair, RowAppraisal
from changeover.proof.money import minutes_text, money, rate_text
from changeover.proof.price_book import PriceBook
from changeover.proof.wear import WearState
from changeover.quantities import Refusal, Units, how_many, show
from changeover.store.opening import Store
from changeover.switch.wording import rows_text

NO_READING = "not inspected"
PAPERS = ("A4", "Letter")


def write_report(
    store: Store,
    view: AppraisalView,
    folder: Path,
    paper: str = "A4",
    units: Units = Units.US,
    other: AppraisalView | None = None,
) -> Path:
    """Write the report of an appraisal as PDF into a folder and return the file.

    ``other`` is a second planter to set beside it. Raises Refusal while the appraisal lacks its
    inspection or price list, for a photo that cannot be read, and when the folder cannot be
    written.
    """
    sheet = sheet_of(store, view, units, other)
    words = re.findall(r"\w+", f"{view.kept.planter} {view.kept.name}".lower())
    stem = "-".join(words)[:80] or "planter"
    return write_appraisal(sheet, folder / f"appraisal-{stem}-{paper.lower()}.pdf", paper=paper)


def sheet_of(
    store: Store, view: AppraisalView, units: Units = Units.US, other: AppraisalView | None = None
) -> AppraisalSheet:
    """Return what is printed of an appraisal. Raises Refusal while it cannot be reckoned."""
    appraised, book = view.appraised, view.book
    if appraised is None or book is None:
        raise Refusal(view.says)
    return AppraisalSheet(
        view.kept.planter,
        view.kept.on,
        machine_lines(view, units),
        value_lines(appraised),
        total_lines(appraised.totals),
        tuple(_row(one, book) for one in appraised.rows) + _not_read(view),
        appraised.unpriced,
        basis_lines(view),
        view.kept.note,
        _photos(store, view),
        beside_lines(view, other) if other is not None else (),
    )


def machine_lines(view: AppraisalView, units: Units) -> tuple[tuple[str, str], ...]:
    """Say what is appraised."""
    planter, inspection = view.planter, view.inspection
    spacing = show(planter.row_spacing, "row_spacing", units)
    lines = [
        ("Planter", planter.name),
        ("Rows", f"{how_many(planter.rows, 'row')}, {spacing} apart"),
        ("Appraised on", view.kept.on.isoformat()),
    ]
    if inspection is not None:
        lines.append(("Inspected on", inspection.day.isoformat()))
        if inspection.worked is not None:
            lines.append(("Area done by then", show(inspection.worked, "area", units)))
    return tuple(lines)


def value_lines(appraised: Appraisal) -> tuple[tuple[str, str], ...]:
    """Say the dealer's own values, as found and reconditioned, each with its currency."""
    pairs = (("As found", appraised.as_found), ("Reconditioned", appraised.reconditioned))
    return tuple(
        (name, money(one.amount, one.currency) if one is not None else "not stated")
        for name, one in pairs
    )


def total_lines(totals: Sequence[Amounts]) -> tuple[tuple[str, str], ...]:
    """Say the sums of the work, by currency; nothing is converted."""
    lines: list[tuple[str, str]] = []
    for one in totals:
        named = (("Parts", one.parts), ("Labour", one.labour), ("Tax", one.tax))
        lines += [(name, money(amount, one.currency)) for name, amount in named]
        lines.append(("Sum with tax", money(one.total, one.currency)))
    return tuple(lines) or (("Work", "none is needed"),)


def basis_lines(view: AppraisalView) -> tuple[str, ...]:
    """Say what the figures rest on: prices, labour, tax, limits with their sources."""
    book = view.book
    lines: list[str] = []
    if book is not None:
        hour = book.labour
        rate = f"{money(hour.amount, hour.currency)} an hour" if hour else "no rate is stated"
        lines += [
            (
                f"Prices: list “{book.name}” of {book.on.isoformat()}, in "
                f"{' and '.join(book.currencies)}, before tax."
            ),
            f"Labour: {rate}. Tax: {rate_text(book.tax)} on parts and labour.",
            "Tax is reckoned on the sums, so that the rows may add up to a cent more or less.",
        ]
    lines.append("Values as found and reconditioned: the appraiser's own.")
    sources = dict.fromkeys(
        f"{one.limit.name}: {one.limit.source.text}"
        for one in view.verdicts.values()
        if one.limit is not None and one.condition in (WearState.REPLACE, WearState.WATCH)
    )
    lines += [f"Limit of wear, {text}." for text in sources]
    if view.not_read:
        lines.append(f"Not inspected: {rows_text(view.not_read)}.")
    return tuple(lines)


def beside_lines(one: AppraisalView, other: AppraisalView) -> tuple[tuple[str, str, str], ...]:
    """Say two planters side by side, the heads first. Raises Refusal as ``beside`` does."""
    pair = beside(one, other)
    lines = [("", *pair.planters)]
    days = [view.inspection.day.isoformat() if view.inspection else "" for view in (one, other)]
    lines.append(("Inspected on", days[0], days[1]))
    for state, (first, second) in pair.rows.items():
        if first or second:
            lines.append((f"Rows {state}", str(first), str(second)))
    for code, (here, there) in pair.totals.items():
        lines.append(("Work, sum with tax", money(here, code), money(there, code)))
    lines += zip_values(one, other)
    if not pair.fair:
        lines.append(("Sums", _missing_words(one), _missing_words(other)))
    return tuple(lines)


def zip_values(one: AppraisalView, other: AppraisalView) -> list[tuple[str, str, str]]:
    """Say both dealers' values of two planters that can be reckoned."""
    if one.appraised is None or other.appraised is None:
        return []
    pairs = zip(value_lines(one.appraised), value_lines(other.appraised), strict=True)
    return [(name, first, second) for (name, first), (_, second) in pairs]


def _missing_words(view: AppraisalView) -> str:
    missing = view.appraised.unpriced if view.appraised is not None else ()
    return f"without {', '.join(missing)}" if missing else "complete"


def _row(one: RowAppraisal, book: PriceBook) -> SheetRow:
    return SheetRow(
        str(one.row) if one.row else "planter",
        one.condition.mark,
        str(one.condition),
        tuple(_repair(repair, book) for repair in one.repairs),
        "\n".join(money(a.total, a.currency) for a in one.amounts),
    )


def _repair(repair: Repair, book: PriceBook) -> SheetRepair:
    line = next((one for one in book.lines if one.code == repair.part), None)
    what = repair.part if line is None or not line.text else f"{line.text} ({line.code})"
    price = "" if line is None else money(line.amount, line.currency)
    return SheetRepair(what, repair.why, str(repair.count), price, minutes_text(repair.minutes))


def _not_read(view: AppraisalView) -> tuple[SheetRow, ...]:
    if not view.not_read:
        return ()
    text = rows_text(view.not_read).partition(" ")[2]
    return (SheetRow(text, "?", NO_READING, (), ""),)


def _photos(store: Store, view: AppraisalView) -> tuple[SheetPhoto, ...]:
    with store.read() as work:
        found = [
            work.photos.get(view.kept.planter, view.kept.name, one.digest) for one in view.photos
        ]
    return tuple(SheetPhoto(one.caption, one.content) for one in found)
