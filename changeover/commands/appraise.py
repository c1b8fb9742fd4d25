"""``changeover appraise``: what it takes to bring a planter to standard, by a price list."""

import argparse
import sys
from collections.abc import Sequence
from datetime import date
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import TYPE_CHECKING, Any

from changeover.commands.answers import write_json, write_pairs
from changeover.commands.arguments import Parsers, add_job, add_json, add_units
from changeover.commands.figures import write_notes
from changeover.commands.folders import made_folder
from changeover.commands.job_arguments import opened
from changeover.commands.proof_words import lines_of

if TYPE_CHECKING:
    from changeover.desk.appraise import AppraisalView
    from changeover.proof.appraisal import Amounts, Price, RowAppraisal


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(
        parsers, "appraise", "Appraise a planter from its wear inspection and prices.", run
    )
    parser.add_argument("store", metavar="STORE", help="the store: a file, or a PostgreSQL address")
    parser.add_argument("--planter", required=True, metavar="NAME", help="planter in the store")
    parser.add_argument(
        "--prices",
        required=True,
        type=Path,
        metavar="FILE",
        help="CSV or XLSX: code, text, price, currency, tax (%%), part, each row, minutes",
    )
    parser.add_argument("--on", metavar="DAY", help="day of the appraisal, as 2026-03-01 (today)")
    parser.add_argument("--as-found", metavar="AMOUNT", help="your value of it as found")
    parser.add_argument("--reconditioned", metavar="AMOUNT", help="your value when reconditioned")
    parser.add_argument("--beside", metavar="NAME", help="a second planter to set beside it")
    parser.add_argument("--out", type=Path, metavar="DIR", help="folder for the printed report")
    add_units(parser)
    add_json(parser)


def run(args: argparse.Namespace) -> int:
    """Write the appraisal; raises Refusal for a bad price list or without an inspection."""
    from changeover.desk.appraise import appraise_now
    from changeover.desk.print_appraisal import PAPERS, write_report
    from changeover.quantities import Units

    values = {name: _amount(args, name) for name in ("as_found", "reconditioned")}
    day, files = _day(args.on), []
    with opened(args) as store:
        view = appraise_now(store, args.planter, args.prices, day, **values)
        other = appraise_now(store, args.beside, args.prices, day) if args.beside else None
        if args.out is not None:
            folder = made_folder(args.out)
            units = Units(args.units)
            files = [write_report(store, view, folder, one, units, other) for one in PAPERS]
    if args.json:
        write_json({**answer(view, other), "files": [str(path) for path in files]})
    else:
        _write_text(view, other, files)
    return 0


def answer(view: "AppraisalView", other: "AppraisalView | None" = None) -> dict[str, Any]:
    """Return the JSON answer; amounts are texts of digits, so that no cent is lost."""
    appraised, book, inspection = view.appraised, view.book, view.inspection
    assert appraised is not None
    assert book is not None
    assert inspection is not None
    margin = appraised.margin
    return {
        "planter": view.kept.planter,
        "on": view.kept.on.isoformat(),
        "inspected": inspection.day.isoformat(),
        "prices": {
            "name": book.name,
            "on": book.on.isoformat(),
            "currencies": list(book.currencies),
            "tax": f"{100 * book.tax:f}",
            "labour": None if book.labour is None else str(book.labour.amount),
        },
        "rows": [_row(one) for one in appraised.rows],
        "not_inspected": list(view.not_read),
        "totals": [_amounts(one) for one in appraised.totals],
        "unpriced": list(appraised.unpriced),
        "complete": appraised.complete,
        "as_found": _price(appraised.as_found),
        "reconditioned": _price(appraised.reconditioned),
        "margin": None if margin is None else _priced(margin.amount, margin.currency),
        **_beside(view, other),
    }


def _row(one: "RowAppraisal") -> dict[str, Any]:
    return {
        "row": one.row,
        "condition": str(one.condition),
        "repairs": [
            {
                "part": repair.part,
                "count": repair.count,
                "minutes": None if repair.minutes is None else str(repair.minutes),
                "why": repair.why,
            }
            for repair in one.repairs
        ],
        "amounts": [_amounts(amounts) for amounts in one.amounts],
    }


def _amounts(one: "Amounts") -> dict[str, str]:
    return {
        "currency": one.currency,
        "parts": str(one.parts),
        "labour": str(one.labour),
        "tax": str(one.tax),
        "total": str(one.total),
    }


def _price(price: "Price | None") -> dict[str, str] | None:
    return None if price is None else _priced(price.amount, price.currency)


def _priced(amount: Decimal, currency: str) -> dict[str, str]:
    return {"amount": str(amount), "currency": currency}


def _beside(view: "AppraisalView", other: "AppraisalView | None") -> dict[str, Any]:
    if other is None:
        return {}
    from changeover.desk.appraise import beside

    pair = beside(view, other)
    return {
        "beside": {
            "planters": list(pair.planters),
            "rows": {str(state): list(counts) for state, counts in pair.rows.items()},
            "totals": {code: [str(a), str(b)] for code, (a, b) in pair.totals.items()},
            "dearer": dict(pair.dearer),
            "fair": pair.fair,
        }
    }


def _amount(args: argparse.Namespace, name: str) -> Decimal | None:
    from changeover.quantities import Refusal

    text = getattr(args, name)
    if text is None:
        return None
    try:
        value = Decimal(text)
    except InvalidOperation:
        value = Decimal("NaN")
    if not value.is_finite() or value < 0:
        what = name.replace("_", "-")
        raise Refusal(f"--{what} “{text}” is not an amount; write it like 41000.50.")
    return value


def _day(text: str | None) -> date:
    from changeover.quantities import Refusal

    if text is None:
        return date.today()  # noqa: DTZ011
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise Refusal(f"--on “{text}” is not a day; write it like 2026-03-01.") from None


def _write_text(view: "AppraisalView", other: "AppraisalView | None", files: list[Path]) -> None:
    from changeover.desk.print_appraisal import basis_lines, beside_lines, total_lines, value_lines

    appraised = view.appraised
    assert appraised is not None
    rows = [
        (str(one.row), str(one.condition), ", ".join(f"{r.count} × {r.part}" for r in one.repairs))
        for one in appraised.rows
    ]
    sys.stdout.write(lines_of(("row", "condition", "work"), rows))
    write_pairs([*value_lines(appraised), *total_lines(appraised.totals)])
    write_notes(f"No price for {name}; it is not in the sums." for name in appraised.unpriced)
    if other is not None:
        sys.stdout.write(lines_of(*_table(beside_lines(view, other))))
    write_notes(basis_lines(view))
    write_notes(f"Written: {path}" for path in files)


def _table(
    lines: Sequence[tuple[str, str, str]],
) -> tuple[tuple[str, ...], list[tuple[str, ...]]]:
    return lines[0], list(lines[1:])
