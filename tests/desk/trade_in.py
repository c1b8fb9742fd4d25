"""A shop that appraises: two worn planters of the demo, and a price list in a file."""

from dataclasses import replace
from datetime import date
from pathlib import Path

from changeover.desk.appraise import AppraisalView, KeptAppraisal, appraisal_view, import_prices
from changeover.desk.door import apply
from changeover.desk.inspect_wear import Inspection, save, wear_view
from changeover.desk.opening import Store
from changeover.desk.shop_edits import PutAppraisal
from changeover.quantities import Q

DISC, TUBE, WIPER = "opener disc diameter", "seed tube", "wiper"
DAY, INSPECTED = date(2026, 3, 10), date(2026, 3, 1)
PENNY, FIDDLE, MAGPIE = "Penny Twelve", "Old Fiddle 24", "Magpie 31"
ROWS = {PENNY: 12, FIDDLE: 24, MAGPIE: 31}
PRICES = (
    "code,text,price,currency,tax (%),part,each row,minutes",
    "labour,an hour in the shop,90,USD,7,,,",
    "D-15,Opener disc,61.35,USD,7,opener disc diameter,2,25",
    "T-2,Seed tube,33.10,USD,7,seed tube,1,20",
)
KEPT = KeptAppraisal(PENNY, "spring", DAY, prices="shop")


def price_file(folder: Path, *more: str) -> Path:
    path = folder / "shop.csv"
    path.write_text("\n".join((*PRICES, *more)) + "\n", encoding="utf-8")
    return path


def inspect(store: Store, planter: str, *worn: int, extra: bool = False) -> None:
    """Inspect every row's opener discs; those named are worn, and the tube of row 3 if wanted."""
    rows = range(1, ROWS[planter] + 1)
    cells = {(row, DISC): Q(14.2 if row in worn else 14.9, "in") for row in rows}
    if extra:
        cells |= {(3, TUBE): False, (4, WIPER): False}  # type: ignore[dict-item]
    found = Inspection(INSPECTED, cells, {DISC: "15 in new"}, Q(900.0, "acre"))
    apply(store, save(store, planter, found, wear_view(store, planter).limits), "Ada")


def kept(store: Store, folder: Path, **other: object) -> AppraisalView:
    """Import the prices and keep an appraisal of Penny Twelve, which has three worn rows."""
    inspect(store, PENNY, 3, 7, 11)
    apply(store, import_prices(store, price_file(folder), DAY), "Ada")
    apply(store, PutAppraisal(replace(KEPT, **other)), "Ada")  # type: ignore[arg-type]
    return appraisal_view(store, PENNY, "spring")
