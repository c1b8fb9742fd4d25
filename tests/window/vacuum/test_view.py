"""The vacuum view: gauges typed from row to row, judged at once, plotted and saved."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication

from changeover.desk.gauge import gauges_taken
from changeover.desk.prove.proofs import Proof, findings
from changeover.quantities import Q, Units
from changeover.window.page import EVERYTHING
from changeover.window.vacuum.view import VacuumProof
from tests.window.on_demo import OnDemo, on_demo

PLANTER = "Old Fiddle 24"


@pytest.fixture
def vacuum(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, VacuumProof, PLANTER) as put:
        for panel in put.page.panels.fans:
            panel.set_value.line.setText("18 inH2O")
        yield put


def type_all(vacuum: OnDemo, **other: str) -> None:
    model = vacuum.page.model
    for column, row in enumerate(model.rows):
        assert model.setData(model.index(0, column), other.get(f"r{row}", "18"))


def test_the_model_is_sound(vacuum: OnDemo, qtmodeltester: Any) -> None:
    qtmodeltester.check(vacuum.page.model)


def test_what_is_missing_is_said_until_all_rows_are_read(vacuum: OnDemo) -> None:
    panel = vacuum.page.panels.fans[0]
    assert "Row 1 of fan 1 has no gauge reading" in panel.says.text()
    type_all(vacuum)
    assert panel.verdict.text() == "✓ the far row holds"


def test_a_leak_is_named_and_becomes_a_finding(vacuum: OnDemo) -> None:
    type_all(vacuum, r9="12")
    assert "that row's hose" in vacuum.page.panels.fans[0].says.text()
    vacuum.page.save()
    found = findings(vacuum.store, PLANTER, Proof.VACUUM)
    assert [(one.finding.row, one.finding.part) for one in found] == [(9, "vacuum, fan 1")]


def test_both_fans_are_compared(vacuum: OnDemo) -> None:
    type_all(vacuum, **{f"r{row}": "16" for row in range(13, 25)})
    assert "differ by 11.1 %: not alike" in vacuum.page.panels.beside.text()


def test_typing_is_undone(vacuum: OnDemo) -> None:
    model = vacuum.page.model
    model.setData(model.index(0, 0), "17")
    vacuum.door.stack.undo()
    assert model.index(0, 0).data() == ""


@pytest.mark.parametrize("text", ["61", "-1", "18 in", "lots"])
def test_a_vacuum_that_cannot_be_is_refused_with_its_row(vacuum: OnDemo, text: str) -> None:
    model = vacuum.page.model
    assert not model.setData(model.index(0, 6), text)
    assert vacuum.refused[-1].startswith("Vacuum, row 7")


def test_enter_goes_from_row_to_row_and_a_line_is_pasted(vacuum: OnDemo, qtbot: Any) -> None:
    line, model = vacuum.page.line, vacuum.page.model
    line.choose(3)
    qtbot.keyClick(line, Qt.Key.Key_Return)
    assert line.currentIndex().column() == 3
    QGuiApplication.clipboard().setText("17.1\t17.2\t17.3")
    line.paste()
    assert [model.index(0, c).data() for c in (3, 4, 5)] == ["17.1", "17.2", "17.3"]
    line.choose(23)
    line.paste()
    assert "beyond the last row" in vacuum.refused[-1]
    assert model.index(0, 22).data() == ""


def test_where_a_fan_feeds_is_kept_for_the_next_time(vacuum: OnDemo) -> None:
    vacuum.page.panels.fans[0].near.choose(12)
    type_all(vacuum)
    vacuum.page.save()
    assert gauges_taken(vacuum.store, PLANTER)[0].near["fan 1"] == 12
    assert vacuum.page.panels.fans[0].near.chosen == 12
    assert vacuum.page.model.gauges.cells == {}


def test_nothing_is_saved_while_a_row_is_missing(vacuum: OnDemo) -> None:
    vacuum.page.model.setData(vacuum.page.model.index(0, 0), "18")
    vacuum.page.save()
    assert "no gauge reading" in vacuum.refused[-1]
    assert gauges_taken(vacuum.store, PLANTER) == ()


def test_readings_taken_before_are_shown_and_the_draft_is_kept(vacuum: OnDemo) -> None:
    type_all(vacuum)
    vacuum.page.save()
    model = vacuum.page.model
    model.setData(model.index(0, 0), "15")
    vacuum.page.shown.setCurrentIndex(1)
    assert model.index(0, 0).data() == "18.0"
    assert not model.setData(model.index(0, 0), "14")
    vacuum.page.shown.setCurrentIndex(0)
    assert model.index(0, 0).data() == "15.0"


def test_the_fan_laws_say_how_much_faster(vacuum: OnDemo) -> None:
    laws = vacuum.page.panels.laws
    laws.now.line.setText("16")
    laws.wanted.line.setText("20")
    assert "× 1.118" in laws.says.text()
    laws.speed.line.setText("3000")
    assert "3354 rpm" in laws.says.text()
    laws.now.line.setText("0")
    assert "find out why there is none" in laws.says.text()


def test_the_caution_of_running_fans_stands_on_the_page(vacuum: OnDemo) -> None:
    assert "Keep clear of the fan's inlet" in vacuum.page.caution.words.text()


def test_the_plot_stands_over_the_columns_and_a_click_chooses_a_row(
    vacuum: OnDemo, qtbot: Any
) -> None:
    edges = vacuum.page.line.edges()
    assert [row for row, _, _ in edges] == list(range(1, 25))
    vacuum.page.plot.row_chosen.emit(9)
    assert vacuum.page.line.currentIndex().column() == 8


def test_other_units_keep_the_readings(vacuum: OnDemo) -> None:
    type_all(vacuum)
    vacuum.outlook.units = Units.METRIC
    vacuum.page.refresh(EVERYTHING)
    assert vacuum.page.model.index(0, 0).data() == "4.48"
    assert vacuum.page.model.gauges.cells[1] == Q(18.0, "inH2O")
    assert vacuum.page.day.day() == date.today()  # noqa: DTZ011


def test_undoing_the_save_brings_the_readings_back(vacuum: OnDemo) -> None:
    type_all(vacuum, r9="12")
    vacuum.page.save()
    assert vacuum.page.findings.text() == "findings (1)"
    vacuum.door.stack.undo()
    assert vacuum.page.model.index(0, 8).data() == "12.0"
    assert gauges_taken(vacuum.store, PLANTER) == ()
    assert vacuum.page.findings.text() == "findings (0)"


def test_the_latest_readings_are_shown_until_others_are_begun(qtbot: Any, tmp_path: Path) -> None:
    with on_demo(qtbot, tmp_path, VacuumProof, "Magpie 31") as put:
        assert len(put.page.model.gauges.cells) == 16
        assert put.page.save_button.text() == "Read again"
        put.page.save_button.click()
        assert put.page.model.gauges.cells == {}
        assert put.page.panels.fans[1].wanted() == Q(18.0, "inH2O")
