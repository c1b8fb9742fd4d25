"""Tables of readings: headers with units, and refusals that name line and column."""

import pytest

from changeover.files.reading_table import read_table, table_of
from changeover.quantities import Refusal


@pytest.mark.parametrize(
    "header", ["spacing (in)", "Spacing [in]", "spacing_in", "spacing in", " SPACING (in) "]
)
def test_units_in_the_header(header) -> None:
    column = table_of([f"row,{header}", "1,6.5"]).need("spacing")
    assert (column.name, column.unit, column.place) == ("spacing", "in", 2)


def test_the_case_of_a_unit_is_kept() -> None:
    assert table_of(["row,vacuum (kPa)", "1,4"]).need("vacuum").unit == "kPa"


@pytest.mark.parametrize("mark", [",", ";", "\t"])
def test_columns_apart_by_comma_semicolon_or_tab(mark) -> None:
    table = table_of([f"row{mark}depth (in)", f"1{mark}1.75"])
    assert table.lines[0].number_in(table.need("depth"), "depth") == 1.75


def test_empty_lines_and_comments_keep_the_line_numbers() -> None:
    table = table_of(["# field 7", "row,depth (in)", "", "1,2", ",", "# late", "2,x"])
    assert [line.number for line in table.lines] == [4, 7]
    with pytest.raises(Refusal, match=r"line 7, column 2 \(depth\)"):
        table.lines[1].number_in(table.need("depth"), "depth")


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ([], "line 1: the file is empty"),
        (["row,depth (in)"], "line 2: there are no readings"),
        (["row,row", "1,2"], r"line 1, column 2 \(row\): this column stands twice"),
        (["row,12", "1,2"], "line 1, column 2: “12” is no name"),
        (["row,depth (in)", "1,2,3"], "line 2, column 3: a cell without a header"),
    ],
)
def test_tables_that_cannot_be_read(text, message) -> None:
    with pytest.raises(Refusal, match=message):
        table_of(text)


@pytest.mark.parametrize(
    ("cell", "message"),
    [
        ("", "the depth is missing"),
        ("16 cm", "“16 cm” is not a plain number; this column is in in"),
        ('"1,5"', "with a point for decimals"),
        ("nan", "not a figure to reckon with"),
        ("=1+1", "not a plain number"),
    ],
)
def test_cells_that_hold_no_figure(cell, message) -> None:
    table = table_of(["row,depth (in)", f"1,{cell}"])
    with pytest.raises(Refusal, match=r"line 2, column 2 \(depth\)") as refused:
        table.lines[0].number_in(table.need("depth"), "depth")
    assert message.replace("\\", "") in str(refused.value)


@pytest.mark.parametrize("cell", ["1.5", "0", "-3"])
def test_whole_numbers(cell) -> None:
    table = table_of(["row,cells", f"1,{cell}"])
    with pytest.raises(Refusal, match=r"cells .* is not possible; enter 1 or more"):
        table.lines[0].whole(table.need("cells"), "cells", 1)


@pytest.mark.parametrize("header", ["depth", "depth (parsec)", "depth (s)"])
def test_a_unit_that_is_missing_or_wrong(header) -> None:
    table = table_of([f"row,{header}", "1,2"])
    with pytest.raises(Refusal, match=r"line 1, column 2 \(depth\).*depth \(in\)"):
        table.need_unit(table.need("depth"), "in")


def test_a_column_that_is_missing() -> None:
    with pytest.raises(Refusal, match="no column “depth” among row, spacing"):
        table_of(["row,spacing (in)", "1,2"]).need("depth")


def test_a_byte_order_mark_is_no_part_of_the_header(tmp_path) -> None:
    path = tmp_path / "digs.csv"
    path.write_text("row,depth (in)\n1,2\n", encoding="utf-8-sig")
    assert read_table(path).columns[0].name == "row"


def test_files_that_cannot_be_opened(tmp_path) -> None:
    binary = tmp_path / "photo.csv"
    binary.write_bytes(b"\xff\xfe\x00\xd8")
    for path, message in ((tmp_path / "none.csv", "cannot be read"), (binary, "not text in UTF-8")):
        with pytest.raises(Refusal, match=message):
            read_table(path)
