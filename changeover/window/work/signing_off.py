"""Signing a switch off: the setup gets a name, and says how it proved."""

from changeover.desk.edits import CloseSwitch
from changeover.desk.plan_switch import WorkView
from changeover.desk.prove.tasks import place_of, title_of
from changeover.window.asking import Asking
from changeover.window.door import Door


def sign_off(view: WorkView, door: Door, asking: Asking) -> None:
    """Ask for a name, for words on open findings, and how the setup proved; then sign it off."""
    board = view.board
    name = asking.ask_text(
        "Sign the switch off",
        "Name under which this setup is saved:",
        board.label_next or board.planter.name,
    )
    if name is None:
        return
    words = _words_for_findings(view, asking)
    proved = "" if words else _how_it_proved(view, asking)
    if words is None or proved is None:
        return
    door.push(
        CloseSwitch(board.planter.name, name, proved=proved, units=board.units, acknowledged=words)
    )


def _words_for_findings(view: WorkView, asking: Asking) -> tuple[tuple[int, str], ...] | None:
    """Ask why each open finding may stay; None when someone backed out."""
    words = []
    for one in view.findings:
        where = place_of(view.board.planter, one).label
        said = asking.ask_text(
            "Sign the switch off",
            f"{title_of(one)} ({where}) is open: {one.finding.evidence}.\n"
            "Why may it stay? The words are kept with the setup.",
        )
        if said is None:
            return None
        words.append((one.number, said))
    return tuple(words)


def _how_it_proved(view: WorkView, asking: Asking) -> str | None:
    return asking.ask_text(
        "Sign the switch off",
        "How did it prove? Leave empty when it has not been proved yet.",
        view.proved,
    )
