"""The keys of the window, declared once for the shortcuts and for the help sheet."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtGui import QKeySequence, QShortcut

if TYPE_CHECKING:
    from changeover.window.main_window import MainWindow


@dataclass(frozen=True)
class Key:
    """One key or pair of keys and what it does."""

    keys: str
    does: str


WINDOW_KEYS: tuple[Key, ...] = (
    Key("F1", "this sheet"),
    Key("Ctrl+1 … Ctrl+9", "open a page of the rail"),
    Key("Ctrl+Z, Ctrl+Shift+Z", "undo, redo"),
    Key("Alt+P", "choose another planter"),
    Key("Alt+N", "choose the next seed and field"),
    Key("Alt+U", "inches or metric"),
    Key("Alt+L", "light or dark"),
    Key("F6", "go round: rail, page, reason"),
)
MATRIX_KEYS: tuple[Key, ...] = (
    Key("arrows, Home, End", "move from cell to cell"),
    Key("Shift+arrows, Ctrl+A", "select a block, or all"),
    Key("type, F2 or Enter", "edit the cell; Ctrl+Enter sets all selected cells"),
    Key("Alt+Down", "show the choices"),
    Key("Delete", "empty the selected cells"),
    Key("Ctrl+D", "fill: the first selected cell of each setting goes to the others"),
    Key("Ctrl+E", "keep every other row of the selection"),
    Key("Ctrl+C, Ctrl+V", "copy and paste blocks, to and from a spreadsheet"),
    Key("Alt+1, Alt+2, Alt+3", "as found, target, both"),
    Key("Alt+F", "only rows that differ"),
    Key("Alt+R", "rows across or rows down"),
    Key("Alt+A", "use the proposal for all rows that differ from it"),
    Key("Alt+K", "keep as found"),
)


def install(window: "MainWindow") -> None:
    """Give the window its keys."""
    from changeover.quantities import Units

    outlook = window.outlook

    def turn_units() -> None:
        outlook.show_units(Units.METRIC if outlook.units is Units.US else Units.US)

    jobs = {
        "F1": lambda: show_help(window),
        "Ctrl+Z": window.door.stack.undo,
        "Ctrl+Shift+Z": window.door.stack.redo,
        "Ctrl+Y": window.door.stack.redo,
        "Alt+N": window.header.choose_next.emit,
        "Alt+U": turn_units,
        "Alt+L": outlook.turn_lights,
    }
    for keys, job in jobs.items():
        QShortcut(QKeySequence(keys), window).activated.connect(job)
    for number, page in enumerate(window.page_keys()[:9], start=1):
        shortcut = QShortcut(QKeySequence(f"Ctrl+{number}"), window)
        shortcut.activated.connect(lambda page=page: window.open_page(page))


def show_help(window: "MainWindow") -> None:
    """Show the help sheet over the window, or close it."""
    from changeover.window.help_sheet import HelpSheet

    HelpSheet.turn(window)
