"""The few words that the rail says about each step, told from the board alone."""

from collections.abc import Mapping

from changeover.window.marks import Mark
from changeover.window.outlook import Outlook
from changeover.window.rail import RailNote


def rail_notes(outlook: Outlook) -> Mapping[str, RailNote]:
    """Return the note of each step by the key of its page."""
    board, standing = outlook.board, outlook.standing
    rows = board.planter.rows
    unknown = rows - len(standing.rows_known)
    chosen = board.lot is not None
    to_do = standing.to_do
    return {
        "rows": RailNote(
            Mark.ATTENTION if unknown else Mark.READY,
            f"{unknown} not known" if unknown else f"{rows} set",
        ),
        "seed": RailNote(Mark.READY, "lot chosen") if chosen else RailNote(text="none chosen"),
        "switch": _switch_note(chosen, to_do),
        "work": _work_note(chosen, to_do),
        "proof": _proof_note(board.findings),
        "season": RailNote(text="calendar"),
    }


def _switch_note(chosen: bool, to_do: int) -> RailNote:
    if to_do:
        return RailNote(Mark.WORK, f"{to_do} row{'s' if to_do > 1 else ''} to do")
    return RailNote(Mark.READY, "all rows ready") if chosen else RailNote(text="nothing to do")


def _work_note(chosen: bool, to_do: int) -> RailNote:
    if not chosen:
        return RailNote(text="no switch")
    return RailNote(Mark.WORK, "tick off here") if to_do else RailNote(Mark.OPEN, "prove and sign")


def _proof_note(findings: int) -> RailNote:
    if findings:
        return RailNote(Mark.ATTENTION, f"{findings} finding{'s' if findings > 1 else ''}")
    return RailNote(text="nothing open")
