"""Small changes of a timetable at random: order, cuts between blocks, persons, and from the end."""

import random
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from changeover.switch.timetable.decode import Block, Decoder, able_for
from changeover.switch.timetable.rest import Rest

Change = Callable[[list[Block], random.Random], list[Block] | None]
Able = Mapping[str, list[str]]


def changes_of(rest: Rest, decoder: Decoder) -> list[Change]:
    """Return the changes among which one is drawn; the useful ones are there several times."""
    able = {each.key: able_for(rest.work.crew, each) for each in rest.todo}
    names = [person.name for person in rest.work.crew]
    backward = Decoder(_backward(rest))

    def other_person(blocks: list[Block], draw: random.Random) -> list[Block] | None:
        return _other_person(blocks, draw, able)

    def split(blocks: list[Block], draw: random.Random) -> list[Block] | None:
        return _split(blocks, draw, able)

    def from_the_end(blocks: list[Block], _draw: random.Random) -> list[Block] | None:
        return _from_the_end(blocks, decoder, backward)

    def trade(blocks: list[Block], draw: random.Random) -> list[Block] | None:
        return _trade(blocks, draw, names, able)

    made: list[Change] = [
        *(_move, _move, _shift, _shift, _shift, other_person, split, _merge, from_the_end),
    ]
    if any(len(each.modes) > 1 for each in rest.todo):
        made.append(_other_way)
    return [*made, trade] if len(names) > 1 else made


def _backward(rest: Rest) -> Rest:
    """Return what remains with time turned round, for the order alone: hours are left aside."""
    todo = tuple(
        replace(
            activity,
            after=tuple(each.key for each in rest.todo if activity.key in each.after),
            after_by_row=tuple(each.key for each in rest.todo if activity.key in each.after_by_row),
        )
        for activity in rest.todo
    )
    crew = tuple(replace(person, hours=()) for person in rest.work.crew)
    return Rest(replace(rest.work, activities=todo, crew=crew), (), todo, 0)


def _from_the_end(blocks: list[Block], decoder: Decoder, backward: Decoder) -> list[Block] | None:
    """Take the blocks in the order in which they stand when all are as late as they can be."""
    late = _last_first(blocks, decoder)
    return None if late is None else _last_first(late, backward)


def _last_first(blocks: list[Block], decoder: Decoder) -> list[Block] | None:
    starts = decoder.times(blocks)
    if starts is None:
        return None
    ends = [start + block.minutes for start, block in zip(starts, blocks, strict=True)]
    return [blocks[at] for at in sorted(range(len(blocks)), key=lambda at: -ends[at])]


def _trade(
    blocks: list[Block], draw: random.Random, names: Sequence[str], able: Able
) -> list[Block] | None:
    """Let two persons exchange all their blocks from one in the order on."""
    one, other = draw.sample(names, 2)
    at, renamed = draw.randrange(len(blocks)), {one: other, other: one}
    changed = blocks[:at]
    for block in blocks[at:]:
        persons = tuple(renamed.get(name, name) for name in block.persons)
        if persons == block.persons:
            changed.append(block)
        elif any(name not in able[block.activity.key] for name in persons):
            return None
        else:
            changed.append(replace(block, persons=persons))
    return None if _twice(changed) else changed


def _twice(blocks: Sequence[Block]) -> bool:
    """Tell whether anybody has two blocks of one activity."""
    given = [(block.activity.key, name) for block in blocks for name in block.persons]
    return len(given) > len(set(given))


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


def _other_person(blocks: list[Block], draw: random.Random, able: Able) -> list[Block] | None:
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


def _split(blocks: list[Block], draw: random.Random, able: Able) -> list[Block] | None:
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
