"""Tell the solver a timetable to begin with, and read the one it found."""

from collections.abc import Sequence

from changeover.switch.search import Answer
from changeover.switch.timetable.model import Stint
from changeover.switch.timetable.pieces import Piece
from changeover.switch.timetable.rules import Ruled


def read_stints(ruled: Ruled, answer: Answer) -> list[Stint]:
    """Return the stints of the solution that was found."""
    return [stint for piece in ruled.all_pieces if (stint := piece.stint(answer.solver))]


def add_hint(ruled: Ruled, stints: Sequence[Stint]) -> None:
    """Give the solver a timetable to begin with."""
    for key, pieces in ruled.pieces.items():
        given = [stint for stint in stints if stint.activity == key]
        for piece in pieces:
            stint = next((each for each in given if {*each.persons} <= {*piece.persons}), None)
            if piece.activity.shared_out:
                _hint_block(ruled, piece, stint)
            if stint is not None:
                _hint_times(ruled, piece, stint)


def _hint_block(ruled: Ruled, piece: Piece, stint: Stint | None) -> None:
    assert piece.count is not None
    assert piece.first is not None
    ruled.model.add_hint(piece.present, stint is not None)
    ruled.model.add_hint(piece.count, len(stint.rows) if stint else 0)
    if stint is not None:
        ruled.model.add_hint(piece.first, piece.activity.rows.index(min(stint.rows)))


def _hint_times(ruled: Ruled, piece: Piece, stint: Stint) -> None:
    ruled.model.add_hint(piece.start, stint.start)
    ruled.model.add_hint(piece.size, stint.end - stint.start)
    ruled.model.add_hint(piece.end, stint.end)
    for way, chosen in enumerate(piece.ways):
        ruled.model.add_hint(chosen, way == stint.mode)
    if not piece.activity.shared_out:
        for name, chosen in piece.persons.items():
            ruled.model.add_hint(chosen, name in stint.persons)
