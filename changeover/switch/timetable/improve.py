"""Improve a timetable by small changes at random: order, cuts between blocks, and persons."""

import math
import random
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import NamedTuple

from changeover.switch.search import Clock
from changeover.switch.timetable.decode import Block, Decoder, able_for, blocks_of, told
from changeover.switch.timetable.model import Stint
from changeover.switch.timetable.rest import Rest

WARM, COLD = 5.0, 0.3
"""How many minutes worse a change may make the work, first and last; our own choice, by trial."""

TURNS = 100
"""Changes between two looks at the wish to stop, some 20 ms; our own choice, by trial."""

SPREAD = 0.02
"""What an earlier mean end of all blocks counts beside the length; our own choice, by trial."""

Change = Callable[[list[Block], random.Random], list[Block] | None]


def improve(
    rest: Rest, stints: Sequence[Stint], clock: Clock, seconds: float, bound: int
) -> list[Stint]:
    """Return a timetable no longer than the given one, changed until the time or bound is reached.

    ``seconds`` is the moment on the clock at which to end; ``bound`` the length that cannot be
    beaten. Simulated annealing: a change for the worse is kept at times, ever more seldom.
    """
    draw = random.Random(clock.limits.seed)  # noqa: S311 -- no secret hangs on it
    decoder, changes = Decoder(rest), _changes(rest)
    now = best = blocks_of(rest, stints)
    starts = decoder.times(now)
    if starts is None or not now:
        return list(stints)
    cost_now = cost_best = _cost(now, starts)
    began, turn = clock.spent, 0
    while clock.spent < seconds and not clock.stopped and cost_best.length > bound:
        turn += 1
        if turn % TURNS == 0:
            clock.tick(cost_best.length, bound)
        tried = draw.choice(changes)(now, draw)
        starts = decoder.times(tried) if tried is not None else None
        if tried is None or starts is None:
            continue
        cost = _cost(tried, starts)
        heat = WARM * (COLD / WARM) ** ((clock.spent - began) / (seconds - began))
        worse = cost.total - cost_now.total
        if worse <= 0 or draw.random() < math.exp(-worse / heat):
            now, cost_now = tried, cost
            if (cost.length, cost.total) < (cost_best.length, cost_best.total):
                best, cost_best = tried, cost
    starts = decoder.times(best)
    after = told(best, starts) if starts is not None else list(stints)
    return min(list(stints), after, key=lambda each: max(stint.end for stint in each))


class _Cost(NamedTuple):
    """The length in minutes, and the length with a little for ending early on the whole."""

    length: int
    total: float


def _cost(blocks: Sequence[Block], starts: Sequence[int]) -> _Cost:
    ends = [start + block.minutes for start, block in zip(starts, blocks, strict=True)]
    return _Cost(max(ends), max(ends) + SPREAD * sum(ends) / len(ends))


def _changes(rest: Rest) -> list[Change]:
    able = {each.key: able_for(rest.work.crew, each) for each in rest.todo}

    def other_person(blocks: list[Block], draw: random.Random) -> list[Block] | None:
        return _other_person(blocks, draw, able)

    def split(blocks: list[Block], draw: random.Random) -> list[Block] | None:
        return _split(blocks, draw, able)

    return [_move, _move, _shift, _shift, _shift, other_person, split, _merge, _other_way]


def _move(blocks: list[Block], draw: random.Random) -> list[Block]:
    """Take a block earlier or later."""
    changed = list(blocks)
    block = changed.pop(draw.randrange(len(changed)))
    changed.insert(draw.randint(0, len(changed)), block)
    return changed


def _shift(blocks: list[Block], draw: random.Random) -> list[Block] | None:
    """Move the cut between two blocks of an activity that lie side by side."""
    at = draw.randrange(len(blocks))
    block = blocks[at]
    beside = [
        place
        for place, other in enumerate(blocks)
        if other.activity is block.activity and other.first == block.first + block.count
    ]
    if not beside:
        return None
    other = blocks[beside[0]]
    rows = draw.choice([1, 1, 1, 2, 3, 5, 8]) * draw.choice([-1, 1])
    if not -block.count < rows < other.count:
        return None
    changed = list(blocks)
    changed[at] = replace(block, count=block.count + rows)
    changed[beside[0]] = replace(other, first=other.first + rows, count=other.count - rows)
    return changed


def _other_person(
    blocks: list[Block], draw: random.Random, able: dict[str, list[str]]
) -> list[Block] | None:
    """Exchange the persons of two blocks of an activity, or give one to somebody else."""
    at = draw.randrange(len(blocks))
    block = blocks[at]
    if not block.persons:
        return None
    leave = draw.choice(block.persons)
    come = draw.choice(able[block.activity.key])
    if come in block.persons:
        return None
    changed = list(blocks)
    for place, other in enumerate(blocks):
        if other.activity is block.activity and come in other.persons:
            changed[place] = _exchange(other, come, leave)
    changed[at] = _exchange(block, leave, come)
    return changed


def _exchange(block: Block, leave: str, come: str) -> Block:
    persons = tuple(come if name == leave else name for name in block.persons)
    return replace(block, persons=persons)


def _split(
    blocks: list[Block], draw: random.Random, able: dict[str, list[str]]
) -> list[Block] | None:
    """Give a part of a block to somebody who has none of that activity."""
    at = draw.randrange(len(blocks))
    block = blocks[at]
    if not block.activity.shared_out or block.count < 2:
        return None
    taken = {name for other in blocks if other.activity is block.activity for name in other.persons}
    free = [name for name in able[block.activity.key] if name not in taken]
    if not free:
        return None
    keep = draw.randint(1, block.count - 1)
    part = replace(
        block, persons=(draw.choice(free),), first=block.first + keep, count=block.count - keep
    )
    return [*blocks[:at], replace(block, count=keep), part, *blocks[at + 1 :]]


def _merge(blocks: list[Block], draw: random.Random) -> list[Block] | None:
    """Give a whole block to the neighbour on its right."""
    at = draw.randrange(len(blocks))
    block = blocks[at]
    for place, other in enumerate(blocks):
        beside = other.activity is block.activity and other.first == block.first + block.count
        if beside and block.count:
            whole = replace(other, first=block.first, count=block.count + other.count)
            changed = [*blocks]
            changed[place] = whole
            del changed[at]
            return changed
    return None


def _other_way(blocks: list[Block], draw: random.Random) -> list[Block] | None:
    """Do a block another way that takes as many persons."""
    at = draw.randrange(len(blocks))
    block = blocks[at]
    ways = [
        way
        for way, mode in enumerate(block.activity.modes)
        if way != block.mode and mode.persons == len(block.persons)
    ]
    if not ways:
        return None
    return [*blocks[:at], replace(block, mode=draw.choice(ways)), *blocks[at + 1 :]]
