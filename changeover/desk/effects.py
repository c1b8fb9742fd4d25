"""What carrying an edit out has to give back: the kinds of data changed, and the inverse."""

from dataclasses import dataclass

from changeover.desk.changed import Changed
from changeover.desk.edits import Edit


@dataclass(frozen=True)
class Effect:
    """The effect of one edit within a unit of work."""

    changed: frozenset[Changed]
    inverse: Edit


def effect(inverse: Edit, *changed: Changed) -> Effect:
    """Return an effect that names its kinds one by one."""
    return Effect(frozenset(changed), inverse)
