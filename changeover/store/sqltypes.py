"""Column types for what SQL has no word for: quantities, setting values, choices and lists."""

from collections.abc import Iterable
from enum import StrEnum
from functools import cache
from typing import Any, Generic, TypeVar

from sqlalchemy import JSON, Dialect, String, TypeDecorator
from typing_extensions import override

from changeover.planter.places import Place
from changeover.planter.setup import Value
from changeover.quantities import Q, Quantity, is_quantity, ureg

Choice = TypeVar("Choice", bound=StrEnum)


@cache
def _unit(text: str) -> Any:
    return ureg.Unit(text)


@cache
def place_of(text: str) -> Place:
    """Return the place that a text such as ``row:14`` names."""
    return Place.from_text(text)


def plain(value: Value) -> int | str | dict[str, Any]:
    """Return a value as JSON has it: a quantity as magnitude and unit, just as it was entered."""
    if is_quantity(value):
        return {"value": value.magnitude, "unit": str(value.units)}
    return value


def unplain(stored: Any) -> Value:
    """Return the value that ``plain`` wrote."""
    if isinstance(stored, dict):
        return Q(stored["value"], _unit(stored["unit"]))
    return stored  # type: ignore[no-any-return]


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
        return None if value is None else Q(value["value"], _unit(value["unit"]))


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
        return None if value is None else tuple((place_of(text), word) for text, word in value)
