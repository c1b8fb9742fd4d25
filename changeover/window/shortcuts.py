"""The shortcuts of the window and what each does."""

from typing import TYPE_CHECKING

from PySide6.QtGui import QKeySequence, QShortcut

if TYPE_CHECKING:
    from changeover.window.main_window import MainWindow

PAGE_NUMBERS = "1234567890"  # as they lie on the keyboard: the tenth page has the nought


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
        "F6": window.go_round,
        "Alt+N": window.header.choose_next.emit,
        "Alt+U": turn_units,
        "Alt+L": outlook.turn_lights,
    }
    for keys, job in jobs.items():
        QShortcut(QKeySequence(keys), window).activated.connect(job)
    for number, page in zip(PAGE_NUMBERS, window.page_keys(), strict=False):
        shortcut = QShortcut(QKeySequence(f"Ctrl+{number}"), window)
        shortcut.activated.connect(lambda page=page: window.open_page(page))


def show_help(window: "MainWindow") -> None:
    """Show the help sheet over the window, or close it."""
    from changeover.window.help_sheet import HelpSheet

    HelpSheet.turn(window)
