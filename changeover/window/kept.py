"""Where the window keeps what it remembers, and the look it had last."""

from pathlib import Path

from PySide6.QtCore import QSettings, Qt
from PySide6.QtGui import QGuiApplication

from changeover.window.theme import DARK, LIGHT, Tokens


def kept_file(path: Path) -> QSettings:
    """Return the small file of the user's in which the window remembers things."""
    return QSettings(str(path), QSettings.Format.IniFormat)


def kept_look(file: QSettings) -> Tokens:
    """Return the look chosen last, else the one that the desktop asks for."""
    name = str(file.value("look", ""))
    if name in (LIGHT.name, DARK.name):
        return DARK if name == DARK.name else LIGHT
    dark = QGuiApplication.styleHints().colorScheme() == Qt.ColorScheme.Dark
    return DARK if dark else LIGHT
