"""The keys of the window in words, declared once for the help sheet."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Key:
    """One key or pair of keys and what it does."""

    keys: str
    does: str


WINDOW_KEYS: tuple[Key, ...] = (
    Key("F1", "this sheet"),
    Key("Ctrl+1 … Ctrl+9, Ctrl+0", "open a page of the rail, Ctrl+0 the tenth"),
    Key("Ctrl+Z, Ctrl+Shift+Z", "undo, redo"),
    Key("Alt+P", "choose another planter"),
    Key("Alt+N", "choose the next seed and field"),
    Key("Alt+U", "inches or metric"),
    Key("Alt+L", "light or dark"),
    Key("F6", "go round: rail, page, reason"),
)
SEED_KEYS: tuple[Key, ...] = (
    Key("Up, Down, Home, End", "go through the lines of the proposal"),
    Key("Alt+T", "take the proposal over as the target"),
    Key("Alt+M", "enter a value from your manual"),
    Key("Alt+B", "find the vacuum from bench runs, on its line"),
    Key("Alt+C", "reckon a catch test, on the line of the seed rate"),
)
MATRIX_KEYS: tuple[Key, ...] = (
    Key("arrows, Home, End", "move from cell to cell"),
    Key("Shift+arrows, Ctrl+A", "select a block, or all"),
    Key("type, F2 or Enter", "edit the cell; Ctrl+Enter sets all selected cells"),
    Key("Enter, Tab", "while editing: take what is typed, and go down or to the right"),
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
