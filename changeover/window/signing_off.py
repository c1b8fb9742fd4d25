"""Signing a switch off: the setup gets a name, and says how it proved."""

from changeover.desk.edits import CloseSwitch
from changeover.desk.plan_switch import WorkView
from changeover.window.asking import Asking
from changeover.window.door import Door


def sign_off(view: WorkView, door: Door, asking: Asking) -> None:
    """Ask for a name and how the setup proved, then push the signing-off."""
    board = view.board
    name = asking.ask_text(
        "Sign the switch off",
        "Name under which this setup is saved:",
        board.label_next or board.planter.name,
    )
    if name is None:
        return
    proved = asking.ask_text(
        "Sign the switch off",
        "How did it prove? Leave empty when it has not been proved yet.",
    )
    if proved is None:
        return
    door.push(CloseSwitch(board.planter.name, name, proved=proved, units=board.units))
