"""Constraints that follow from the rules of a timetable and only quicken the proof."""

from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from functools import partial
from typing import TYPE_CHECKING

from changeover.switch.timetable.closure import within
from changeover.switch.timetable.model import Activity, Mode
from changeover.switch.timetable.pieces import Piece
from changeover.switch.timetable.rest import Rest
from changeover.switch.timetable.rules import Ruled
from changeover.switch.timetable.runs import least_changes

if TYPE_CHECKING:
    from ortools.sat.python import cp_model


def add_least_time(ruled: Ruled, least: Mapping[str, int]) -> None:
    """Say how long the work must take: states take turns, and each has its work to hold.

    The time in one state is at least its work divided among the crew, at least the use of each
    shared tool divided by how many there are, at least each piece, and at least the proven
    ``least`` minutes for the work of that state alone; the times of the states and the minutes
    between them add up.
    """
    model, rest = ruled.model, ruled.rest
    groups: dict[str | None, list[Piece]] = defaultdict(list)
    for piece in ruled.all_pieces:
        groups[piece.activity.state].append(piece)
    spans = []
    for state, pieces in groups.items():
        if state is not None:
            spans.append(model.new_int_var(least.get(state, 0), ruled.horizon, f"in {state}"))
            _hold_work(ruled, spans[-1], pieces)
    if spans:
        waits = rest.work.state_minutes * least_changes(rest)
        model.add(ruled.length >= rest.now + waits + sum(spans))
    whole = model.new_int_var(0, ruled.horizon, "whole")
    model.add(ruled.length >= rest.now + whole)
    _hold_work(ruled, whole, ruled.all_pieces)


def add_heads_and_tails(ruled: Ruled) -> None:
    """Say that work which waits for a chain before it, or has one after it, leaves that time free.

    For each length of chain before (head) and after (tail), the work with at least such chains
    fits between them, divided among the crew and the shared tools.
    """
    heads = _chains(ruled.rest, forward=True)
    tails = _chains(ruled.rest, forward=False)
    for head in {*heads.values()}:
        for tail in {*tails.values()}:
            inside = [
                piece
                for piece in ruled.all_pieces
                if heads[piece.activity.key] >= head and tails[piece.activity.key] >= tail
            ]
            if inside and head + tail:
                span = ruled.model.new_int_var(0, ruled.horizon, "between")
                ruled.model.add(ruled.length >= ruled.rest.now + head + tail + span)
                _hold_work(ruled, span, inside)


def _chains(rest: Rest, *, forward: bool) -> dict[str, int]:
    """Return for each activity the least minutes of the chains before it, or after it.

    By row, a chain holds only for work all of whose rows the other work has.
    """
    chains: dict[str, int] = {}
    own = {activity.key: activity for activity in rest.todo}

    def chain(key: str) -> int:
        if key not in chains:
            chains[key] = max((link(*pair) for pair in pairs if pair[1].key == key), default=0)
        return chains[key]

    def link(near: Activity, activity: Activity, whole: bool) -> int:
        rows = len(near.rows) if whole or not near.shared_out else 1
        least = min(mode.duration(rows) for mode in near.modes)
        if near.shared_out and whole:
            least = -(-least // len(rest.work.crew))
        return chain(near.key) + least + (rest.gap(near, activity) or 0)

    pairs = [
        (own[key], activity, whole) if forward else (activity, own[key], whole)
        for activity in rest.todo
        for keys, whole in ((activity.after, True), (activity.after_by_row, False))
        for key in keys
        if key in own and (whole or _held(own[key], activity, forward=forward))
    ]
    for key in own:
        chain(key)
    return chains


def _held(before: Activity, after: Activity, *, forward: bool) -> bool:
    """Tell whether by row all work after waits for some before, or all before is waited for."""
    return within(after, before) if forward else within(before, after)


def _hold_work(ruled: Ruled, span: "cp_model.IntVar", pieces: Sequence[Piece]) -> None:
    """Make a span of time long enough for the work of pieces, by crew and by shared tool."""
    model, work = ruled.model, ruled.rest.work
    activities = {piece.activity.key: piece.activity for piece in pieces}.values()
    for piece in pieces:
        model.add(span >= piece.size)
    if work.crew:
        model.add(len(work.crew) * span >= sum(_person_minutes(piece) for piece in pieces))
        least = sum(_least(each, _persons) for each in activities)
        model.add(span >= -(-least // len(work.crew)))
    for tool, capacity in work.tools.items():
        if capacity:
            load = sum(_tool_minutes(piece, tool) for piece in pieces)
            model.add(capacity * span >= load)
            least = sum(_least(each, partial(_held_by, tool)) for each in activities)
            model.add(span >= -(-least // capacity))


def _persons(mode: Mode) -> int:
    return mode.persons


def _held_by(tool: str, mode: Mode) -> int:
    return mode.uses.get(tool, 0)


def _least(activity: Activity, amount: Callable[[Mode], int]) -> int:
    """Return the least minutes, times persons or tools held, that an activity can take."""
    return min(amount(mode) * mode.duration(len(activity.rows)) for mode in activity.modes)


def _person_minutes(piece: Piece) -> "cp_model.LinearExprT":
    """Return the person minutes of a piece."""
    if piece.activity.shared_out:
        return piece.size
    return _by_way(piece, [mode.persons for mode in piece.activity.modes])


def _tool_minutes(piece: Piece, tool: str) -> "cp_model.LinearExprT":
    """Return the tool minutes of a piece, for a block at least as many as every way holds."""
    amounts = [mode.uses.get(tool, 0) for mode in piece.activity.modes]
    if piece.activity.shared_out:
        return min(amounts) * piece.size
    return _by_way(piece, amounts)


def _by_way(piece: Piece, amounts: Sequence[int]) -> "cp_model.LinearExprT":
    rows = len(piece.activity.rows)
    ways = zip(piece.ways, amounts, piece.activity.modes, strict=True)
    return sum(way * amount * mode.duration(rows) for way, amount, mode in ways)


def add_tool_before(ruled: Ruled) -> None:
    """Let the rows of each block pass one by one through a scarce tool before the block begins.

    Where every way of an earlier activity holds more than half of a shared tool, its rows are
    worked one after another. All rows of a later block have been through the tool when the
    block begins; by the rule of the earliest due date the rows can then be taken block by block,
    so that intervals as long as each block's rows, ended before it begins, never overlap.
    """
    for activity in ruled.rest.todo:
        for key in activity.after_by_row:
            before = ruled.of(key)[0].activity if ruled.of(key) else activity
            one_by_one = activity.shared_out and _one_by_one(ruled.rest, before)
            if before is not activity and one_by_one and before.rows == activity.rows:
                _tool_intervals(ruled, before, ruled.of(activity.key))


def _one_by_one(rest: Rest, activity: Activity) -> bool:
    """Tell whether a shared tool lets only one block of an activity be worked at a time."""
    return activity.shared_out and any(
        all(2 * mode.uses.get(tool, 0) > capacity for mode in activity.modes)
        for tool, capacity in rest.work.tools.items()
    )


def _tool_intervals(ruled: Ruled, before: Activity, pieces: Sequence[Piece]) -> None:
    model = ruled.model
    seconds = min(mode.seconds_per_row for mode in before.modes)
    begin = ruled.rest.release(before) + min(mode.minutes for mode in before.modes)
    intervals = []
    for piece in pieces:
        assert piece.count is not None
        start = model.new_int_var(begin, ruled.horizon, "tool from")
        size = model.new_int_var(0, ruled.horizon, "tool for")
        end = model.new_int_var(begin, ruled.horizon, "tool to")
        model.add_linear_constraint(seconds * piece.count - 60 * size, 0, 59)
        model.add(end <= piece.start).only_enforce_if(piece.present)
        for key in before.after:
            if ruled.of(key):
                wait = ruled.rest.gap(ruled.of(key)[0].activity, before) or 0
                extra = min(mode.minutes for mode in before.modes)
                model.add(start >= ruled.over(key) + wait + extra).only_enforce_if(piece.present)
        intervals.append(
            model.new_optional_interval_var(start, size, end, piece.present, "through the tool")
        )
    model.add_no_overlap(intervals)
