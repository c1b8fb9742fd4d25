"""Showing, hiding, reordering and adding settings, as one edit."""

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from changeover.desk.edits import PutSettings
from changeover.planter.settings import Kind
from changeover.window.door import Door
from changeover.window.own_setting_form import new_key
from changeover.window.settings_dialog import SettingsDialog
from tests.window.invented import SETTINGS, MemoryDesk


@pytest.fixture
def dialog(desk: MemoryDesk, qtbot: QtBot) -> SettingsDialog:
    door: Door = desk.door()
    outlook = desk.outlook()
    made = SettingsDialog(desk.board, door, outlook, None)  # type: ignore[arg-type]
    made.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose, on=False)
    qtbot.addWidget(made)
    made.kept = door, outlook  # type: ignore[attr-defined]
    return made


def pushed(desk: MemoryDesk) -> PutSettings:
    (edit,) = desk.edits
    assert isinstance(edit, PutSettings)
    return edit


def test_nothing_changed_pushes_nothing(dialog: SettingsDialog, desk: MemoryDesk) -> None:
    dialog.accept()
    assert desk.edits == []


def test_a_tick_taken_away_hides_the_setting(dialog: SettingsDialog, desk: MemoryDesk) -> None:
    row = [setting.key for setting in SETTINGS].index("brush")
    dialog.list.item(row).setCheckState(Qt.CheckState.Unchecked)
    dialog.accept()
    edit = pushed(desk)
    assert edit.before == SETTINGS
    assert [setting.key for setting in edit.value or () if setting.hidden] == ["seed_left", "brush"]


def test_settings_move_up_and_down(dialog: SettingsDialog) -> None:
    dialog.list.setCurrentRow(2)
    dialog.shift(-1)
    assert [setting.key for setting in dialog.settings][:3] == ["seed", "disc", "seed_left"]
    dialog.list.setCurrentRow(0)
    dialog.shift(-1)
    assert dialog.settings[0].key == "seed"


def test_a_setting_of_ones_own_is_added(dialog: SettingsDialog, desk: MemoryDesk) -> None:
    dialog.form.name.setText("Wiper")
    dialog.form.kind.setCurrentIndex(dialog.form.kind.findData(Kind.CHOICE))
    dialog.form.options.setText("soft, hard")
    dialog.add()
    dialog.accept()
    added = (pushed(desk).value or ())[-1]
    assert (added.key, added.name, added.options, added.own) == (
        "own_wiper", "Wiper", ("soft", "hard"), True,
    )  # fmt: skip


def test_a_choice_without_choices_is_refused_with_a_sentence(dialog: SettingsDialog) -> None:
    dialog.form.name.setText("Wiper")
    dialog.form.kind.setCurrentIndex(dialog.form.kind.findData(Kind.CHOICE))
    dialog.form.options.setText(" ")
    dialog.add()
    assert "has no choices" in dialog.refusal.text()
    assert len(dialog.settings) == len(SETTINGS)


def test_an_own_setting_can_be_renamed_and_removed(dialog: SettingsDialog) -> None:
    row = [setting.key for setting in SETTINGS].index("own_cleaner")
    dialog.list.setCurrentRow(row)
    dialog.form.name.setText("Trash wheel")
    dialog.change()
    assert (dialog.settings[row].key, dialog.settings[row].name) == ("own_cleaner", "Trash wheel")
    dialog.remove()
    assert "own_cleaner" not in {setting.key for setting in dialog.settings}


def test_the_programs_own_cannot_be_removed(dialog: SettingsDialog) -> None:
    dialog.list.setCurrentRow(2)
    assert not dialog.remove_button.isEnabled()
    dialog.remove()
    assert dialog.settings == SETTINGS


@pytest.mark.parametrize(
    ("name", "taken", "key"),
    [
        ("Down pressure", (), "own_down_pressure"),
        ("Wiper", ("own_wiper",), "own_wiper_2"),
        ("ß!", (), "own_ss"),
        ("!!", (), "own_setting"),
    ],
)
def test_keys_are_made_of_names(name: str, taken: tuple[str, ...], key: str) -> None:
    assert new_key(name, frozenset(taken)) == key
