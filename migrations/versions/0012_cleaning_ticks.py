"""Ticks of cleaning name first the lots whose seed was cleaned out, then how far."""

import json
import re

import sqlalchemy as sa
from alembic import op

revision = "0012"
down_revision = "0011"
branch_labels = None
depends_on = None

TICK = sa.table("tick", sa.column("id"), sa.column("switch_id"), sa.column("task"))
BEFORE = sa.table(
    "before_cell", sa.column("switch_id"), sa.column("setting"), sa.column("value", sa.Text)
)
SETTING = sa.table("setting", sa.column("key"))
OF_ONE_LOT = re.compile(r"(clean_tank|clean_hose|clean_tube|meter)\.([^/]+)/(.*)")
OF_ALL = re.compile(r"(clean_floor|inspect_clean)\.([^/]+)(.*)")
SIGNS = str.maketrans({"/": "∕", "~": "∼", "|": "¦"})


def upgrade() -> None:
    bind = op.get_bind()
    known = bind.scalars(sa.select(SETTING.c.key))
    keys = {*known, "clean", "disc", "brush", "singulator", "hub_spacing"}
    held: dict[int, set[str]] = {}
    query = sa.select(BEFORE.c.switch_id, sa.cast(BEFORE.c.value, sa.Text))
    for switch, value in bind.execute(query.where(BEFORE.c.setting == "seed")):
        held.setdefault(switch, set()).add(_word(str(json.loads(value))))
    for number, switch, task in bind.execute(sa.select(TICK.c.id, TICK.c.switch_id, TICK.c.task)):
        new = _renamed(task, keys, held.get(switch, set()))
        if new != task:
            bind.execute(sa.update(TICK).where(TICK.c.id == number).values(task=new))


def downgrade() -> None:
    """Leave the ticks as they are: a program of before asks for that cleaning again."""


def _renamed(task: str, keys: set[str], held: set[str]) -> str:
    whole = OF_ALL.fullmatch(task)
    if whole is not None:
        work, levels, rest = whole.groups()
        return (
            f"{work}.{'|'.join(sorted(held)) or 'not known'}/{levels.replace('|', '+')}{rest[1:]}"
        )
    one = OF_ONE_LOT.fullmatch(task)
    if one is None:
        return task
    work, levels, rest = one.groups()
    rest, apart, name = rest.partition("~")
    done = ""
    if work == "meter":
        done, rest = _parted(rest, keys)
        done = f"/{done}"
    return f"{work}.{_word(rest)}/{levels}{done}{apart}{name}"


def _parted(rest: str, keys: set[str]) -> tuple[str, str]:
    """Part the settings made in a meter from the lot behind them: ``disc+brush+M-41``."""
    made: list[str] = []
    while True:
        first, more, others = rest.partition("+")
        if not more or first not in keys:
            return "+".join(made), rest
        made.append(first)
        rest = others


def _word(lot: str) -> str:
    return lot.translate(SIGNS) or "not known"
