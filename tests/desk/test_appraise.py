"""Trade-ins: reckoned from inspection and prices, nothing invented, photos, two side by side."""

from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from changeover.desk.appraise import (
    AppraisalView,
    appraisal_view,
    appraisals,
    appraise_now,
    attach,
    beside,
    import_prices,
    photo,
    price_books,
    remove,
    two_views,
)
from changeover.desk.door import apply
from changeover.desk.edits import PutPlanter
from changeover.desk.opening import Store
from changeover.desk.shop_edits import PutAppraisal, PutPrices
from changeover.proof.wear import WearState
from changeover.quantities import Refusal
from tests.desk.trade_in import DAY, KEPT, MAGPIE, PENNY, inspect, kept, price_file

JPEG = b"\xff\xd8\xff" + b"picture" * 20


def lines_kept(demo: Store) -> int:
    """Count the lines of the price list “shop”."""
    (book,) = (one for one in price_books(demo) if one.name == "shop")
    return len(book.lines)


def test_worn_rows_are_reckoned_to_the_cent(demo: Store, tmp_path: Path) -> None:
    view = kept(demo, tmp_path)
    (total,) = view.appraised.totals
    assert (total.parts, total.labour) == (Decimal("368.10"), Decimal("112.50"))
    assert total.total == Decimal("514.24")
    worn = [one.row for one in view.appraised.rows if one.condition is WearState.REPLACE]
    assert (worn, view.not_read, view.appraised.unpriced) == ([3, 7, 11], (), ())


def test_what_has_no_price_is_named_and_not_in_the_sums(demo: Store, tmp_path: Path) -> None:
    inspect(demo, PENNY, 7, extra=True)
    view = appraise_now(demo, PENNY, price_file(tmp_path), DAY)
    assert view.appraised.unpriced == ("labour for wiper", "wiper")
    assert view.appraised.totals[0].parts == Decimal("155.80")


def test_values_are_the_dealers_own_and_give_the_margin(demo: Store, tmp_path: Path) -> None:
    values = {"as_found": Decimal(40_000), "reconditioned": Decimal(42_000)}
    view = kept(demo, tmp_path, **values)
    assert view.appraised.margin.amount == Decimal("1519.40")
    assert kept_without_values(demo).appraised.margin is None


def kept_without_values(demo: Store) -> AppraisalView:
    apply(demo, PutAppraisal(replace(KEPT, name="plain")), "Ada")
    return appraisal_view(demo, PENNY, "plain")


def test_without_an_inspection_or_prices_it_says_so(demo: Store, tmp_path: Path) -> None:
    with pytest.raises(Refusal, match="Penny Twelve has no wear inspection"):
        appraise_now(demo, PENNY, price_file(tmp_path), DAY)
    inspect(demo, PENNY)
    apply(demo, PutAppraisal(replace(KEPT, prices="")), "Ada")
    view = appraisal_view(demo, PENNY, "spring")
    assert (view.appraised, view.says) == (None, "spring: no price list is chosen; import one.")


def test_an_inspection_after_the_day_is_not_used(demo: Store, tmp_path: Path) -> None:
    inspect(demo, PENNY)
    with pytest.raises(Refusal, match="up to 2026-02-01"):
        appraise_now(demo, PENNY, price_file(tmp_path), date(2026, 2, 1))


def test_a_bad_price_list_leaves_the_one_before(demo: Store, tmp_path: Path) -> None:
    apply(demo, import_prices(demo, price_file(tmp_path), DAY), "Ada")
    with pytest.raises(Refusal, match=r"shop.csv: line 5, column 3 \(price\)"):
        import_prices(demo, price_file(tmp_path, "X,x,much,USD,7,,,"), DAY)
    assert lines_kept(demo) == 3


def test_a_list_imported_again_takes_the_place_of_the_old_and_is_undone(
    demo: Store, tmp_path: Path
) -> None:
    apply(demo, import_prices(demo, price_file(tmp_path), DAY), "Ada")
    done = apply(demo, import_prices(demo, price_file(tmp_path, "X,x,1,USD,7,,,"), DAY), "Ada")
    assert lines_kept(demo) == 4
    apply(demo, done.inverse, "Ada")
    assert lines_kept(demo) == 3


def test_a_list_in_use_stays(demo: Store, tmp_path: Path) -> None:
    view = kept(demo, tmp_path)
    with pytest.raises(Refusal, match="used in the appraisal spring of Penny Twelve"):
        apply(demo, PutPrices(None, before=view.book), "Ada")


def test_photos_go_with_their_appraisal_and_come_back(demo: Store, tmp_path: Path) -> None:
    view = kept(demo, tmp_path)
    apply(demo, attach(view, "row 3", JPEG), "Ada")
    view = appraisal_view(demo, PENNY, "spring")
    assert [one.caption for one in view.photos] == ["row 3"]
    assert photo(demo, view.kept, view.photos[0].digest).content == JPEG
    with pytest.raises(Refusal, match="attached already"):
        attach(view, "again", JPEG)
    with pytest.raises(Refusal, match="has photos"):
        apply(demo, PutAppraisal(None, before=view.kept), "Ada")
    done = apply(demo, remove(demo, view.kept), "Ada")
    assert "spring" not in [one.name for one in appraisals(demo, PENNY)]
    apply(demo, done.inverse, "Ada")
    assert len(appraisal_view(demo, PENNY, "spring").photos) == 1


def test_two_planters_side_by_side(demo: Store, tmp_path: Path) -> None:
    first = kept(demo, tmp_path).kept
    inspect(demo, MAGPIE, 2)
    second = replace(first, planter=MAGPIE)
    pair = beside(*two_views(demo, first, second))
    assert pair.planters == (PENNY, MAGPIE)
    assert pair.rows[WearState.REPLACE] == (3, 1)
    assert pair.totals["USD"] == (Decimal("514.24"), Decimal("171.41"))
    assert (pair.dearer, pair.fair) == ({"USD": PENNY}, True)


def test_an_appraisal_follows_a_planter_that_is_renamed(demo: Store, tmp_path: Path) -> None:
    view = kept(demo, tmp_path)
    apply(demo, attach(view, "row 3", JPEG), "Ada")
    new = replace(view.planter, name="Penny Dozen")
    apply(demo, PutPlanter(new, before=view.planter), "Ada")
    view = appraisal_view(demo, "Penny Dozen", "spring")
    assert len(view.photos) == 1
    assert view.appraised.totals[0].total == Decimal("514.24")
