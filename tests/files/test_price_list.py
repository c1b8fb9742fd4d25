"""Price lists: read whole, or refused by line and column."""

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest
from openpyxl import Workbook

from changeover.files.price_list import read_price_list
from changeover.quantities import Refusal

DAY = date(2026, 1, 15)
HEAD = "code,text,price,currency,tax (%),part,each row,minutes"
GOOD = (
    HEAD,
    "labour,an hour in the shop,95,USD,7,,,",
    'D-15,"Opener disc, 15 in",61.35,USD,7,opener disc diameter,2,25',
    "S-1,Vacuum seal,12.1,USD,7%,vacuum seal,,",
)


def write(tmp_path: Path, *lines: str) -> Path:
    path = tmp_path / "shop.csv"
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return path


def test_every_column_is_read(tmp_path: Path) -> None:
    book = read_price_list(write(tmp_path, *GOOD), DAY)
    disc, seal = book.lines[1:]
    assert (book.name, book.on, book.tax) == ("shop", DAY, Decimal("0.07"))
    assert (disc.text, disc.amount, disc.each) == ("Opener disc, 15 in", Decimal("61.35"), 2)
    assert (disc.minutes, seal.minutes, seal.each) == (Decimal(25), None, 1)
    assert book.prices().labour == Decimal(95)


def test_four_columns_are_enough(tmp_path: Path) -> None:
    book = read_price_list(write(tmp_path, "code;text;price;currency", "A-1;x;5;EUR"), DAY)
    assert (book.tax, book.labour, book.currencies) == (Decimal(0), None, ("EUR",))


def test_a_workbook_gives_the_same_as_its_table(tmp_path: Path) -> None:
    book, path = Workbook(), tmp_path / "shop.xlsx"
    sheet = book.active
    sheet.append(HEAD.split(","))
    sheet.append(["labour", "an hour in the shop", 95, "USD", 7, None, None, None])
    sheet.append(["D-15", "Opener disc, 15 in", 61.35, "USD", 7, "opener disc diameter", 2, 25])
    sheet.append(["S-1", "Vacuum\nseal", 12.1, "USD", 7, "vacuum seal"])
    book.save(path)
    assert read_price_list(path, DAY) == read_price_list(write(tmp_path, *GOOD), DAY)


def test_a_workbook_is_refused_by_its_row(tmp_path: Path) -> None:
    book, path = Workbook(), tmp_path / "shop.xlsx"
    for row in (["code", "text", "price", "currency"], [], ["A", "x", "cheap", "USD"]):
        book.active.append(row)
    book.save(path)
    with pytest.raises(Refusal, match=r"shop.xlsx: line 3, column 3 \(price\): “cheap”"):
        read_price_list(path, DAY)


@pytest.mark.parametrize(
    ("line", "message"),
    [
        (",x,1,USD,7,,,", r"line 5, column 1 \(code\): the code is missing"),
        ("A,x,,USD,7,,,", r"line 5, column 3 \(price\): the price is missing"),
        ('A,x,"1,50",USD,7,,,', r"line 5, column 3 \(price\): “1,50” is not a plain number"),
        ("A,x,$5,USD,7,,,", r"column 3 \(price\): “\$5” is not a plain number"),
        ("A,x,-5,USD,7,,,", r"column 3 \(price\): a price of -5 is not possible"),
        ("A,x,nan,USD,7,,,", r"column 3 \(price\): a price of nan is not possible"),
        ("A,x,1e9,USD,7,,,", r"column 3 \(price\): a price of 1e9 is not possible"),
        ("A,x,1.00001,USD,7,,,", r"column 3 \(price\): 1.00001 has more than four decimals"),
        ("A,x,5,dollars,7,,,", r"column 4 \(currency\): “dollars” is not a currency"),
        ("A,x,5,,7,,,", r"column 4 \(currency\): “” is not a currency"),
        ("A,x,5,USD,9,,,", r"line 5, column 5 \(tax\): tax 9 % differs from 7 % above"),
        ("A,x,5,USD,,,,", r"line 5, column 5 \(tax\): the tax is missing"),
        ("A,x,5,USD,100,,,", r"column 5 \(tax\): a tax of 100 is not possible"),
        ("A,x,5,USD,7,opner,,", r"column 6 \(part\): “opner” is no part of the inspection"),
        ("A,x,5,USD,7,brush,1.5,", r"column 7 \(each row\): count 1.5 is not possible"),
        ("A,x,5,USD,7,brush,500,", r"column 7 \(each row\): 500 on one row"),
        ("A,x,5,USD,7,brush,1,long", r"column 8 \(minutes\): “long” is not a plain number"),
        ("d-15,x,5,USD,7,,,", r"line 5, column 1 \(code\): the code d-15 stands on line 3 too"),
        ("A,x,5,USD,7,,,,9", r"line 5, column 9: a cell without a header"),
    ],
)
def test_bad_lines_are_named_and_nothing_is_read(tmp_path: Path, line: str, message: str) -> None:
    with pytest.raises(Refusal, match=message):
        read_price_list(write(tmp_path, *GOOD, line), DAY)


def test_a_file_that_is_no_list(tmp_path: Path) -> None:
    (tmp_path / "bad.xlsx").write_bytes(b"no workbook")
    for name, message in (("bad.xlsx", "not a workbook"), ("none.xlsx", "no such file")):
        with pytest.raises(Refusal, match=message):
            read_price_list(tmp_path / name, DAY)
    with pytest.raises(Refusal, match="no column “currency”"):
        read_price_list(write(tmp_path, "code,text,price", "A,x,5"), DAY)
