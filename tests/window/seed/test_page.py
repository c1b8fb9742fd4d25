"""The Seed page forms a proposal as inputs change, says who says so, and takes it over."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt

from changeover.desk.board import read_board
from changeover.desk.door import apply
from changeover.desk.edits import PutLot, TickTask
from changeover.desk.plan_switch import work_view
from changeover.desk.starting import ShortForm, new_store, put_planter
from changeover.quantities import Q, Units
from changeover.seed.lots import SeedLot
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.page import EVERYTHING
from changeover.window.seed.job_form import RateBy
from changeover.window.seed.page import SeedPage
from changeover.window.shots import settle
from tests.window.on_demo import Answers, OnDemo, on_demo


@pytest.fixture
def seed(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, SeedPage) as put:
        yield put


@pytest.fixture
def fresh(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    """A planter with no switch open."""
    with on_demo(qtbot, tmp_path, SeedPage, "Penny Twelve") as put:
        yield put


@pytest.fixture
def bare(qtbot: Any, tmp_path: Path) -> Iterator[SeedPage]:
    """The page on a new store with a planter and nothing else."""
    store = new_store(tmp_path / "bare.sqlite")
    apply(store, put_planter(ShortForm("Bar", 4, Q(30.0, "in"), fans=1)), "tester")
    outlook = Outlook(lambda name, units, *, proposal: read_board(store, name, units), "Bar")
    door = Door(lambda edit: apply(store, edit, "tester"))  # type: ignore[arg-type]
    page = SeedPage(lambda job, *a, **k: job(store, *a, **k), door, outlook, Answers())
    qtbot.addWidget(page)
    page.refresh(EVERYTHING)
    yield page
    store.close()


def value(seed: OnDemo, key: str) -> str:
    return str(seed.page.cards.card(key).words.value)


def wait_for(qtbot: Any, seed: OnDemo, key: str, text: str) -> None:
    qtbot.waitUntil(lambda: value(seed, key) == text)


def test_the_saved_job_is_shown_with_a_line_for_each_setting(seed: OnDemo) -> None:
    inputs = seed.page.choosing.inputs
    assert seed.page.choosing.lot.picked.number == "Y-208"
    assert inputs.rate.quantity() == Q(140000.0, "seed/acre")
    assert value(seed, "disc") == "S56"
    assert value(seed, "depth") == "notch 5 (1.25 to 1.37 in)"
    assert "C30 (rows 10–24)" in seed.page.cards.card("disc").words.beside


def test_typing_a_speed_moves_the_disc_speed_unsaved(seed: OnDemo, qtbot: Any) -> None:
    assert value(seed, "figure:disc_speed") == "63.1 rpm"
    line = seed.page.choosing.inputs.speed.line
    line.selectAll()
    qtbot.keyClicks(line, "2.5")
    wait_for(qtbot, seed, "figure:disc_speed", "31.6 rpm")
    assert read_board(seed.store, "Old Fiddle 24").next_job.speed == Q(5.0, "mph")


def test_another_lot_brings_another_proposal(seed: OnDemo, qtbot: Any) -> None:
    seed.page.choosing.lot.box.choose("M-41")
    wait_for(qtbot, seed, "disc", "C30")
    assert "318.0 g a thousand" in seed.page.choosing.lot.facts.text()


def test_what_is_wrong_is_said_and_cannot_be_taken_over(seed: OnDemo, qtbot: Any) -> None:
    seed.page.choosing.inputs.speed.line.setText("fast")
    qtbot.waitUntil(lambda: not seed.page.take.isEnabled())
    assert "not a number" in seed.page.choosing.inputs.speed.sentence.text()
    assert "Speed" in seed.page.warnings.words.text()
    assert "as they were before" in seed.page.warnings.words.text()
    seed.page.choosing.inputs.speed.line.setText("90")
    qtbot.waitUntil(lambda: "at most 20 mph" in seed.page.warnings.words.text())
    seed.page.take_over()
    assert not seed.door.stack.count()


def test_the_reason_of_the_chosen_line_stands_at_the_side(seed: OnDemo) -> None:
    seed.page.cards.choose("disc")
    side = seed.page.side
    assert side.title.text() == "Disc, rows 1–24"
    assert "C30 now → S56" in side.value.text()
    assert side.main.sketch is not None
    assert side.words.rungs
    assert side.tune.isHidden()
    seed.page.cards.choose("vacuum")
    assert not side.tune.isHidden()


def test_a_derived_figure_has_its_reason_too(seed: OnDemo) -> None:
    seed.page.cards.choose("figure:spacing")
    assert seed.page.side.title.text() == "Spacing in the row"
    assert seed.page.side.manual.isHidden()


def test_rows_with_other_values_can_be_looked_at(seed: OnDemo) -> None:
    seed.page.cards.choose("hub_spacing")
    side = seed.page.side
    assert side.rows.count() == 3
    side.rows.setCurrentIndex(1)
    assert side.rows.currentText() == "0.047 in · 9 rows"
    assert "rows 2, 5" in side.title.text()


def test_arrow_keys_walk_through_the_lines(seed: OnDemo, qtbot: Any) -> None:
    cards = seed.page.cards
    qtbot.keyClick(cards.card("seed"), Qt.Key.Key_Down)
    assert cards.here == "disc"
    qtbot.keyClick(cards.card("disc"), Qt.Key.Key_End)
    assert cards.here.startswith("figure:")
    assert cards.card(cards.here).focusPolicy() is Qt.FocusPolicy.StrongFocus
    assert cards.card("seed").focusPolicy() is Qt.FocusPolicy.ClickFocus


def test_other_units_show_at_once_and_typed_values_keep_their_meaning(seed: OnDemo) -> None:
    seed.page.choosing.inputs.speed.line.setText("6")
    seed.outlook.show_units(Units.METRIC)
    seed.page.refresh(frozenset())
    assert seed.page.choosing.inputs.speed.text == "6 mph"
    assert value(seed, "vacuum") == "3.49 kPa"
    assert seed.page.choosing.inputs.rate.text.endswith("seeds/ha")


def test_taking_over_sets_lot_and_target_and_one_undo_takes_all_back(
    fresh: OnDemo, qtbot: Any
) -> None:
    page, before = fresh.page, read_board(fresh.store, "Penny Twelve", proposal=False)
    assert not page.take.isEnabled()
    page.choosing.lot.box.choose("B-22")
    page.choosing.field.box.choose("Crow Strip")
    qtbot.waitUntil(page.take.isEnabled)
    with qtbot.waitSignal(page.page_wanted) as asked:
        page.take_over()
    board = read_board(fresh.store, "Penny Twelve")
    assert (asked.args, board.lot.number) == (["switch"], "B-22")
    assert board.target.values == board.proposal.values()
    fresh.door.stack.undo()
    after = read_board(fresh.store, "Penny Twelve", proposal=False)
    assert (after.target, after.next_job) == (before.target, None)


def test_another_lot_midway_asks_first_and_keeps_what_is_done(seed: OnDemo) -> None:
    view = work_view(seed.store, "Old Fiddle 24")
    ticked = len(view.ticks)
    assert ticked
    seed.page.choosing.lot.box.choose("M-44")
    seed.answers.yes = False
    seed.page.take_over()
    assert "half done" in seed.answers.told[0]
    assert read_board(seed.store, "Old Fiddle 24").lot.number == "Y-208"
    seed.answers.yes = True
    seed.page.take_over()
    after = work_view(seed.store, "Old Fiddle 24")
    assert (after.board.lot.number, len(after.ticks)) == ("M-44", ticked)
    assert after.board.before == view.board.before


def test_the_same_lot_midway_is_not_asked_about(seed: OnDemo) -> None:
    seed.page.choosing.inputs.speed.line.setText("4 mph")
    seed.page.take_over()
    assert not seed.answers.told
    assert read_board(seed.store, "Old Fiddle 24").next_job.speed == Q(4.0, "mph")


def test_a_tick_elsewhere_leaves_what_is_typed(seed: OnDemo) -> None:
    view = work_view(seed.store, "Old Fiddle 24")
    task = view.progress.next_task
    seed.page.choosing.inputs.speed.line.setText("4 mph")
    seed.door.push(TickTask("Old Fiddle 24", task.key, view.progress.left(task)[:1]))
    assert seed.page.choosing.inputs.speed.text == "4 mph"


def test_a_stand_asks_for_more_seeds_than_plants(seed: OnDemo, qtbot: Any) -> None:
    inputs = seed.page.choosing.inputs
    inputs.rate_by.choose(RateBy.STAND)
    inputs.stand.line.setText("100 000")
    inputs.emergence.line.setText("90")
    assert inputs.rate.isHidden()
    qtbot.waitUntil(lambda: value(seed, "seed_rate").startswith("120\u202f7"))


def test_only_a_split_row_planter_is_asked_for_its_row_spacing(
    seed: OnDemo, qtbot: Any, tmp_path: Path
) -> None:
    assert seed.page.choosing.inputs.spacing.isHidden()
    with on_demo(qtbot, tmp_path, SeedPage, "Magpie 31") as split:
        inputs = split.page.choosing.inputs
        assert [inputs.spacing.itemText(n) for n in range(3)] == [
            "rows as found", "15.0 in", "30.0 in",
        ]  # fmt: skip
        split.page.choosing.lot.box.choose("M-41")
        inputs.spacing.choose("wide")
        split.page.form_proposal()
        assert "locked up" in value(split, "row_lock")


def test_where_nothing_is_known_the_line_says_to_enter_it(fresh: OnDemo) -> None:
    fresh.door.push(PutLot(SeedLot("X-1", "lupin")))
    fresh.page.choosing.lot.box.choose("X-1")
    fresh.page.form_proposal()
    missing = [line for line in fresh.page.lines.values() if line.missing]
    assert missing
    words = fresh.page.cards.card(missing[0].setting.key).words
    assert words.value == "no proposal: enter it from your manual"


def test_removing_a_lot_asks_and_may_be_refused(seed: OnDemo) -> None:
    seed.page.choosing.lot.remove.click()
    assert "Remove lot Y-208?" in seed.answers.told[0]
    assert "is chosen next" in seed.refused[0]
    seed.door.push(PutLot(SeedLot("X-1", "corn")))
    seed.page.choosing.lot.box.choose("X-1")
    seed.page.choosing.lot.remove.click()
    assert "X-1" not in seed.page.choosing.lot.box.values
    seed.door.stack.undo()
    assert "X-1" in seed.page.choosing.lot.box.values


def test_a_store_without_lots_and_fields_says_how_to_begin(bare: SeedPage) -> None:
    assert "No seed lots yet" in bare.choosing.lot.facts.text()
    assert "No fields yet" in bare.choosing.field.facts.text()
    assert "Choose the seed lot" in bare.empty.text()
    assert not bare.take.isEnabled()
    assert not bare.choosing.lot.change.isEnabled()


def test_without_a_planter_the_page_says_where_to_make_one(bare: SeedPage) -> None:
    bare.outlook.show_planter("")
    bare.refresh(EVERYTHING)
    assert "No planter yet" in bare.empty.text()
    assert bare.cards.isHidden()


def test_a_first_lot_goes_all_the_way(bare: SeedPage) -> None:
    bare.door.push(PutLot(SeedLot("N-1", "corn", germination=0.95)))
    bare.outlook.forget()
    bare.refresh(EVERYTHING)
    bare.choosing.lot.box.choose("N-1")
    bare.form_proposal()
    assert bare.take.isEnabled()
    bare.take_over()
    assert bare.read(read_board, "Bar").lot.number == "N-1"


def test_a_tank_may_take_another_lot_and_overlap_asks_for_more_seed(seed: OnDemo) -> None:
    more = seed.page.choosing.inputs.more
    assert more.isHidden()
    seed.page.choosing.inputs.open_more.click()
    assert not more.isHidden()
    before = value(seed, "figure:seeds_needed")
    more.overlap.line.setText("5")
    next(iter(more.tanks.values())).choose("Y-190")
    seed.page.form_proposal()
    assert seed.page.job.overlap == 0.05
    assert [number for _, number in seed.page.job.other_lots] == ["Y-190"]
    assert value(seed, "figure:seeds_needed") != before
    assert "Y-190" in value(seed, "seed")


def test_a_saved_job_comes_back_whole(seed: OnDemo) -> None:
    seed.page.choosing.inputs.more.reserve.line.setText("10 %")
    seed.page.choosing.inputs.temperature.line.setText("55 °F")
    seed.page.choosing.inputs.first.line.setText("2027-05-03")
    seed.page.take_over()
    saved = read_board(seed.store, "Old Fiddle 24", proposal=False).next_job
    assert (saved.reserve, saved.first_day.isoformat()) == (0.1, "2027-05-03")
    seed.page.choosing.show_job(saved)
    assert seed.page.choosing.job() == saved


@pytest.mark.parametrize("share", ["120", "-1"])
def test_an_overlap_that_cannot_be_is_refused(seed: OnDemo, share: str) -> None:
    seed.page.choosing.inputs.more.overlap.line.setText(share)
    seed.page.form_proposal()
    assert "0 to 100 %" in seed.page.warnings.words.text()


@pytest.mark.parametrize("width", [1280, 1100, 1500])
def test_no_line_is_cut_at_any_width(seed: OnDemo, width: int) -> None:
    seed.page.resize(width, 720)
    seed.page.show()
    for lot in ("Y-208", "M-44"):
        seed.page.choosing.lot.box.choose(lot)
        seed.page.form_proposal()
        settle()
        shown = [card for card in seed.page.cards.cards if not card.isHidden()]
        cut = [
            card.words.key for card in shown if card.height() < card.heightForWidth(card.width())
        ]
        assert not cut


def test_an_expected_meter_error_raises_the_rate_for_a_stand(seed: OnDemo) -> None:
    inputs = seed.page.choosing.inputs
    inputs.rate_by.choose(RateBy.STAND)
    inputs.stand.line.setText("30 000")
    seed.page.form_proposal()
    before = value(seed, "seed_rate")
    inputs.more.error.line.setText("4")
    seed.page.form_proposal()
    assert seed.page.job.meter_error == pytest.approx(0.04)
    assert value(seed, "seed_rate") != before
    assert inputs.more.says_something
    inputs.more.error.line.setText("-3 %")
    assert seed.page.choosing.job().meter_error == pytest.approx(-0.03)
    inputs.more.error.line.setText("60")
    seed.page.form_proposal()
    assert "-50 to 50 %" in inputs.more.error.sentence.text()


def test_a_missing_rate_is_asked_for_with_one_that_can_be(seed: OnDemo) -> None:
    inputs = seed.page.choosing.inputs
    inputs.rate_by.choose(RateBy.RATE)
    inputs.rate.line.setText("")
    seed.page.form_proposal()
    assert "enter it, such as 32000 seeds/ac." in seed.page.warnings.words.text()
