"""Labels for what is left to fit."""

import pytest
from pypdf import PdfReader

from changeover.desk.kit_labels import write_kit_labels
from changeover.desk.plan_switch import work_view
from changeover.quantities import Refusal


def test_rows_that_are_done_get_no_label(demo, tmp_path) -> None:
    view = work_view(demo, "Old Fiddle 24")
    path = write_kit_labels(view, tmp_path / "labels.pdf", whose=lambda _task, _place: "Bram")
    text = "".join(page.extract_text() for page in PdfReader(path).pages)
    left = {
        place.row
        for task in view.worklist.tasks
        if task.parts_in
        for place in view.progress.left(task)
    }
    assert text.count("Old Fiddle 24 · Bram") == len(left) > 0
    assert all(f"row {row}\n" in text for row in left)


def test_without_parts_there_are_no_labels(demo, tmp_path) -> None:
    with pytest.raises(Refusal, match="no labels to print"):
        write_kit_labels(work_view(demo, "Penny Twelve"), tmp_path / "labels.pdf")
