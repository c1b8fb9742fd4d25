"""Labels for the bags of a kit, one a row, of what is left to fit."""

from pathlib import Path

from changeover.desk.plan_switch import WorkView
from changeover.files.filling import labels_of
from changeover.files.printed_labels import write_labels
from changeover.switch.bags import Whose, bags, nobody


def write_kit_labels(
    view: WorkView, path: Path, *, paper: str = "A4", whose: Whose = nobody
) -> Path:
    """Write the labels as PDF; ``whose`` says who does a task at a place, for the persons' names.

    Raises Refusal when no parts are left to fit, for another paper, or an unwritable folder.
    """
    made = labels_of(view.board.planter.name, bags(view.progress, whose), view.board.parts)
    return write_labels(made, path, paper=paper)
