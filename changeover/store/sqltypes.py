"""Column types for what SQL has no word for: quantities, setting values, choices and lists."""

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from enum import StrEnum
from functools import cache
from typing import Any, Generic, TypeVar

from sqlalchemy import JSON, Dialect, String, TypeDecorator
from typing_extensions import override

from changeover.planter.places import Place
from changeover.planter.setup import Value
from changeover.quantities import Q, Quantity, is_quantity, ureg
from changeover.store.failures import Spoilt

Choice = TypeVar("Choice", bound=StrEnum)


@cache
def _unit(text: str) -> Any:
    return ureg.Unit(text)


@contextmanager
def sound(value: object) -> Iterator[None]:
    """Turn what reading a stored value may raise into Spoilt, which names the value."""
    try:
        yield
    except (KeyError, TypeError, ValueError, AttributeError) as error:
        raise Spoilt(f"“{str(value)[:60]}” is no value of this kind") from error


@cache
def place_of(text: str) -> Place:
    """Return the place that a text such as ``row:14`` names. Raises Spoilt."""
    with sound(text):
        return Place.from_text(text)


def plain(value: Value) -> int | str | dict[str, Any]:
    """Return a value as JSON has it: a quantity as magnitude and unit, just as it was entered."""
    if is_quantity(value):
        return {"value": value.magnitude, "unit": str(value.units)}
    return value


def unplain(stored: Any) -> Value:
    """Return the value that ``plain`` wrote. Raises Spoilt for anything else."""
    if isinstance(stored, dict):
        return _quantity(stored)
    if not isinstance(stored, int | str):
        raise Spoilt(f"“{str(stored)[:60]}” is no value of a setting")
    return stored


def _quantity(stored: Any) -> Quantity:
    with sound(stored):
        if not isinstance(stored["value"], int | float):
            raise TypeError(stored)
        return Q(stored["value"], _unit(stored["unit"]))


class ValueType(TypeDecorator[Value]):
    """A setting's value: a whole number, a text, or a quantity as magnitude and unit."""

    impl = JSON(none_as_null=True)
    cache_ok = True

    @override
    def process_bind_param(self, value: Value | None, dialect: Dialect) -> Any:
        return None if value is None else plain(value)

    @override
    def process_result_value(self, value: Any | None, dialect: Dialect) -> Value | None:
        return None if value is None else unplain(value)


class QuantityType(TypeDecorator[Quantity]):
    """A quantity as magnitude and unit, just as it was entered."""

    impl = JSON(none_as_null=True)
    cache_ok = True

    @override
    def process_bind_param(self, value: Quantity | None, dialect: Dialect) -> Any:
        return None if value is None else plain(value)

    @override
    def process_result_value(self, value: Any | None, dialect: Dialect) -> Quantity | None:
        return None if value is None else _quantity(value)


class ChoiceType(TypeDecorator[Choice], Generic[Choice]):
    """One of a fixed set of words."""

    impl = String
    cache_ok = True

    def __init__(self, words: type[Choice]) -> None:
        super().__init__()
        self.words = words

    @override
    def process_bind_param(self, value: Choice | None, dialect: Dialect) -> str | None:
        return None if value is None else str(value)

    @override
    def process_result_value(self, value: Any | None, dialect: Dialect) -> Choice | None:
        with sound(value):
            return None if value is None else self.words(value)


class TupleType(TypeDecorator[tuple[Any, ...]]):
    """A list of words or figures in their order."""

    impl = JSON(none_as_null=True)
    cache_ok = True

    @override
    def process_bind_param(self, value: Iterable[Any] | None, dialect: Dialect) -> Any:
        return None if value is None else list(value)

    @override
    def process_result_value(self, value: Any | None, dialect: Dialect) -> tuple[Any, ...] | None:
        with sound(value):
            return None if value is None else tuple(value)


class WordsType(TypeDecorator[frozenset[str]]):
    """A set of words."""

    impl = JSON(none_as_null=True)
    cache_ok = True

    @override
    def process_bind_param(self, value: Iterable[str] | None, dialect: Dialect) -> Any:
        return None if value is None else sorted(value)

    @override
    def process_result_value(self, value: Any | None, dialect: Dialect) -> frozenset[str] | None:
        with sound(value):
            return None if value is None else frozenset(value)


class PlacesType(TypeDecorator[tuple[Place, ...]]):
    """Places in their order."""

    impl = JSON(none_as_null=True)
    cache_ok = True

    @override
    def process_bind_param(self, value: Iterable[Place] | None, dialect: Dialect) -> Any:
        return None if value is None else [str(place) for place in value]

    @override
    def process_result_value(self, value: Any | None, dialect: Dialect) -> tuple[Place, ...] | None:
        with sound(value):
            return None if value is None else tuple(place_of(text) for text in value)


class PlacedType(TypeDecorator[tuple[tuple[Place, str], ...]]):
    """Words, each with the place that it belongs to, in their order."""

    impl = JSON(none_as_null=True)
    cache_ok = True

    @override
    def process_bind_param(
        self, value: Iterable[tuple[Place, str]] | None, dialect: Dialect
    ) -> Any:
        return None if value is None else [[str(place), word] for place, word in value]

    @override
    def process_result_value(
        self, value: Any | None, dialect: Dialect
    ) -> tuple[tuple[Place, str], ...] | None:
        with sound(value):
            return None if value is None else tuple((place_of(text), word) for text, word in value)
