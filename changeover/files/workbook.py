"""A switch as a workbook: tasks, kit, settings before and after, cautions, clean-out log."""

from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, cast

from changeover.files.atomic import write_bytes
from changeover.files.formula_guard import clean_text
from changeover.files.sheet import Shown, WorklistSheet
from changeover.files.tables import (
    Column,
    Table,
    cautions_table,
    kit_table,
    log_table,
    settings_table,
    tasks_table,
)

if TYPE_CHECKING:
    from openpyxl.cell.cell import Cell
    from openpyxl.worksheet.worksheet import Worksheet

HEAD_ROW = 4
A4, LETTER = "9", "1"  # paper sizes of the Office Open XML spreadsheet


def write_workbook(sheet: WorklistSheet, path: Path, *, paper: str = "A4") -> Path:
    """Write the workbook, whole or not at all; ``paper`` is ``A4`` or ``Letter``.

    Raises Refusal when the folder cannot be written.
    """
    from openpyxl import Workbook

    book = Workbook()
    book.remove(book.worksheets[0])
    book.properties.title = clean_text(sheet.title)
    book.properties.creator = "Changeover"
    tables = [tasks_table(sheet), kit_table(sheet), settings_table(sheet), cautions_table(sheet)]
    if sheet.log or sheet.log_missing:
        tables.append(log_table(sheet))
    for table in tables:
        _fill(book.create_sheet(table.name), sheet, table)
        _set_up_print(book[table.name], sheet, table, paper)
    content = BytesIO()  # a full disk would leave the zip file in the middle of its table
    book.save(content)
    return write_bytes(path, content.getvalue())


def put(cell: "Cell", value: Shown | bool) -> None:
    """Set a cell to a value; text stays text even where it looks like a formula."""
    if isinstance(value, bool):
        value = "yes" if value else "no"
    if isinstance(value, str):
        cell.value = clean_text(value)
        cell.data_type = "s"
        cell.quotePrefix = True
    else:
        cell.value = value


def _at(page: "Worksheet", row: int, column: int) -> "Cell":
    return cast("Cell", page.cell(row, column))


def _fill(page: "Worksheet", sheet: WorklistSheet, table: Table) -> None:
    from openpyxl.styles import Font
    from openpyxl.utils import get_column_letter

    put(page["A1"], f"{sheet.title} · {table.name.lower()}")
    page["A1"].font = Font(bold=True, size=14)
    put(page["A2"], " · ".join(text for text in (sheet.field, sheet.units, "made on") if text))
    page["A2"].font = Font(color="555555")
    made = _at(page, 2, 3)
    made.value = sheet.made_on
    made.number_format = "yyyy-mm-dd"
    made.font = Font(color="555555")
    for number, column in enumerate(table.columns, start=1):
        page.column_dimensions[get_column_letter(number)].width = column.width
        _head(_at(page, HEAD_ROW, number), column)
    for row, values in enumerate(table.rows, start=HEAD_ROW + 1):
        for number, value in enumerate(values, start=1):
            _body(_at(page, row, number), value, table.columns[number - 1])
    page.freeze_panes = f"A{HEAD_ROW + 1}"
    last = get_column_letter(len(table.columns))
    page.auto_filter.ref = f"A{HEAD_ROW}:{last}{HEAD_ROW + max(1, len(table.rows))}"


def _head(cell: "Cell", column: Column) -> None:
    from openpyxl.styles import Alignment, Font, PatternFill

    put(cell, column.name)
    cell.font = Font(bold=True)
    cell.fill = PatternFill("solid", fgColor="E8E4DA")
    cell.alignment = Alignment(vertical="center", wrap_text=True)


def _body(cell: "Cell", value: Shown | bool, column: Column) -> None:
    from openpyxl.styles import Alignment, Border, Side

    put(cell, value)
    cell.alignment = Alignment(vertical="top", wrap_text=column.wraps)
    cell.border = Border(bottom=Side("hair", color="999999"))


def _set_up_print(page: "Worksheet", sheet: WorklistSheet, table: Table, paper: str) -> None:
    from openpyxl.worksheet.header_footer import HeaderFooterItem
    from openpyxl.worksheet.properties import PageSetupProperties

    wide = sum(column.width for column in table.columns) > 95  # characters on an upright page
    page.page_setup.orientation = "landscape" if wide else "portrait"
    page.page_setup.paperSize = LETTER if paper == "Letter" else A4
    page.page_setup.fitToWidth = 1
    page.page_setup.fitToHeight = 0
    page.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    page.print_title_rows = f"{HEAD_ROW}:{HEAD_ROW}"
    page.page_margins.left = page.page_margins.right = 0.4
    page.page_margins.top = page.page_margins.bottom = 0.6
    head, foot = HeaderFooterItem(), HeaderFooterItem()
    head.left.text = clean_text(sheet.title).replace("&", "&&")
    head.right.text = table.name
    foot.left.text = "Changeover"
    foot.right.text = "page &P of &N"
    page.oddHeader, page.oddFooter = head, foot
