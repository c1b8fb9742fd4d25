"""From a worn brush to a finding, a task with its part, a new reading, and the trade-in."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from changeover.desk.appraise import appraise_now
from changeover.desk.demo.working_copy import start_again
from changeover.desk.door import apply
from changeover.desk.inspect_wear import Inspection, save, wear_view
from changeover.desk.opening import Store, open_store
from changeover.desk.plan_switch import work_view
from changeover.desk.prove.proofs import MakeTask, Proof, findings
from changeover.proof.wear import WearState

FIDDLE, BRUSH = "Old Fiddle 24", "brush"
PRICES = "code,text,price,currency,part,each row,minutes\nBR,Brush,8.95,USD,brush,1,10\n"


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = open_store(start_again(tmp_path / "demo.sqlite"))
    yield opened
    opened.close()


def read(store: Store, day: int, *, fine: bool) -> None:
    found = Inspection(date(2026, 5, day), {(3, BRUSH): fine})
    apply(store, save(store, FIDDLE, found, wear_view(store, FIDDLE).limits), "Ada")


def test_only_a_new_reading_closes_it(store: Store, tmp_path: Path) -> None:
    read(store, 2, fine=False)
    (found,) = findings(store, FIDDLE, Proof.WEAR)
    apply(store, MakeTask(FIDDLE, found.number), "Ada")
    task = next(one for one in work_view(store, FIDDLE).worklist.tasks if "Brush" in one.title)
    assert [one.part for one in task.parts_in] == [one.part for one in found.parts] != []
    (prices := tmp_path / "prices.csv").write_text(PRICES, encoding="utf-8")
    worn = appraise_now(store, FIDDLE, prices, date(2026, 5, 3)).appraised
    assert str(worn.totals[0].parts) == "8.95"
    read(store, 4, fine=True)
    assert findings(store, FIDDLE, Proof.WEAR) == ()
    mended = appraise_now(store, FIDDLE, prices, date(2026, 5, 5)).appraised
    assert (mended.rows[0].condition, mended.totals) == (WearState.GOOD, ())
    assert appraise_now(store, FIDDLE, prices, date(2026, 5, 3)).appraised == worn
