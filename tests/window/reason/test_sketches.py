"""The small drawings beside a reason: which goes with what, and to scale."""

from dataclasses import replace
from math import pi

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter
from pytestqt.qtbot import QtBot

from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.quantities import Q, Units
from changeover.seed.lots import SeedLot
from changeover.seed.sprockets import pair_rate
from changeover.window.matrix.sheet import Sheet, Shown
from changeover.window.reason.sketch import Sketch
from changeover.window.reason.sketch_band import BandSketch, Scale
from changeover.window.reason.sketch_disc import DiscSketch
from changeover.window.reason.sketch_notches import NotchSketch
from changeover.window.reason.sketch_rates import RatesSketch
from changeover.window.reason.sketch_row_unit import GROUND_AT, ROOM, RowUnitSketch
from changeover.window.reason.sketches import seed_outline, sketches
from changeover.window.standing import Standing
from changeover.window.theme import LIGHT
from tests.window.invented import ground_planter, make_board


@pytest.fixture
def sheet() -> Sheet:
    board = make_board()
    return Sheet(board, Standing(board), board.units, Shown.BOTH)


def painted(sketch: Sketch, qtbot: QtBot) -> QImage:
    image = QImage(260, sketch.height, QImage.Format.Format_RGB32)
    image.fill(QColor(LIGHT.surface))
    painter = QPainter(image)
    sketch.paint(painter, QRectF(0, 0, 260, sketch.height), LIGHT)
    painter.end()
    return image


def level_of(image: QImage, ink: str) -> list[int]:
    colour = QColor(ink).rgb()
    return [y for y in range(image.height()) for x in range(66, 150) if image.pixel(x, y) == colour]


def test_depth_is_drawn_to_the_scale_of_the_last_notch(sheet: Sheet, qtbot: QtBot) -> None:
    main, strip = sketches(sheet, Cell("depth", Place.of_row(14)))
    assert isinstance(main, RowUnitSketch)
    assert main.now == pytest.approx(2.0 / 3.5)
    assert main.wanted == pytest.approx(1.25 / 3.5)
    found = level_of(painted(main, qtbot), LIGHT.accent)
    assert abs(sum(found) / len(found) - (GROUND_AT + ROOM * 1.25 / 3.5)) < 2.5
    assert strip == NotchSketch("notch", tuple(str(n) for n in range(1, 14)), 7, 4)


def test_closing_shows_the_pull_as_a_share_of_its_index(sheet: Sheet) -> None:
    main, strip = sketches(sheet, Cell("closing", Place.of_row(14)))
    assert isinstance(main, RowUnitSketch)
    assert main.press == pytest.approx(0.5)
    assert isinstance(strip, NotchSketch)
    assert strip.says == "position: now 3, wanted 2"


def test_the_disc_is_the_one_wanted_with_seed_and_singulator(sheet: Sheet) -> None:
    main, strip = sketches(sheet, Cell("singulator", Place.of_row(14)))
    assert main == DiscSketch("S56", 56, 3.5, 190.0, (7.5, 6.8), 1.0)
    assert main.gap == pytest.approx(pi * 190 / 56)
    assert isinstance(strip, NotchSketch)


def test_a_disc_without_a_known_hole_is_not_drawn(sheet: Sheet) -> None:
    bare = tuple(replace(part, hole=None) for part in sheet.board.parts)
    board = replace(sheet.board, parts=bare)
    plain = Sheet(board, Standing(board), board.units, Shown.BOTH)
    assert sketches(plain, Cell("disc", Place.of_row(14))) == (None, None)


def test_vacuum_shows_its_band_and_the_fan_limit(sheet: Sheet) -> None:
    main, _ = sketches(sheet, Cell("vacuum", Place(Scope.FAN, "fan 1")))
    assert main == BandSketch(Scale("inH₂O", 1), 6.0, 24.0, 18.0, 12.0, 30.0)
    assert main.says == "now 18.0, wanted 12.0 inH₂O"


def test_a_part_without_figures_has_no_drawing(sheet: Sheet) -> None:
    assert sketches(sheet, Cell("brush", Place.of_row(14))) == (None, None)


def test_the_seed_is_outlined_by_its_two_largest_sizes_or_its_sieve() -> None:
    assert seed_outline(SeedLot("a", "corn", length=Q(12, "mm"), width=Q(8, "mm"))) == (12.0, 8.0)
    assert seed_outline(SeedLot("a", "corn", sieve=(16, 16))) == (6.35, 6.35)
    assert seed_outline(SeedLot("a", "corn")) is None


@pytest.mark.parametrize(
    "sketch",
    [
        RowUnitSketch(None, None, "", "", "last notch 3.50 in"),
        NotchSketch("position", ("float", "1"), None, None),
        DiscSketch("S56", 56, 3.5, None, None, None),
        BandSketch(Scale("in", 3), None, None, 0.02, 0.02, None),
    ],
)
def test_what_is_not_known_is_left_out(sketch: Sketch, qtbot: QtBot) -> None:
    blank = QImage(260, sketch.height, QImage.Format.Format_RGB32)
    blank.fill(QColor(LIGHT.surface))
    assert painted(sketch, qtbot) != blank
    assert sketch.says


def test_the_rates_of_all_pairs_are_those_of_the_drive(qtbot: QtBot) -> None:
    planter = ground_planter()
    board = make_board(planter)
    cell = Cell("sprockets", planter.places(Scope.DRIVE)[0])
    main, _ = sketches(Sheet(board, Standing(board), Units.US, Shown.BOTH), cell)
    assert isinstance(main, RatesSketch)
    drive = next(iter(planter.drives.values()))
    assert (main.driver, main.driven) == (tuple(sorted(drive.driver)), tuple(sorted(drive.driven)))
    first = pair_rate(drive, main.driver[0], main.driven[-1], 56, planter.row_spacing)
    assert main.rates[0][-1] == pytest.approx(first.to("seed/acre").magnitude / 1000)
    painted(main, qtbot)


def test_a_long_table_of_rates_keeps_what_is_wanted_in_view(qtbot: QtBot) -> None:
    teeth = tuple(range(12, 32))
    rates = tuple(tuple(30.0 * a / b for b in teeth) for a in teeth)
    sketch = RatesSketch(teeth, teeth, rates, "thousand seeds/ac", None, (29, 30))
    assert sketch.height < 230
    image, wash = painted(sketch, qtbot), QColor(LIGHT.accent_wash).rgb()
    assert any(image.pixel(x, y) == wash for x in range(260) for y in range(image.height()))
    assert sketch.says == "rates in thousand seeds/ac; wanted 29/30: 29.0"


def test_a_motor_has_no_table_of_rates(sheet: Sheet) -> None:
    drive = sheet.board.planter.places(Scope.DRIVE)[0]
    assert sketches(sheet, Cell("sprockets", drive)) == (None, None)
