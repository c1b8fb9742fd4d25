"""Column types of proofs: readings with their units, advice with its source, keys of findings."""

from collections.abc import Iterable, Mapping
from typing import Any

from sqlalchemy import JSON, Dialect, TypeDecorator
from typing_extensions import override

from changeover.proof.advice import Advice
from changeover.proof.source import Source
from changeover.quantities import Q, is_quantity, ureg
from changeover.seed.reasons import Trust

_QUANTITY = {"value", "unit"}


def plain_readings(value: Any) -> Any:
    """Return readings as JSON has them: quantities as magnitude and unit, as they were entered."""
    if is_quantity(value):
        size = value.magnitude
        listed = size.tolist() if hasattr(size, "tolist") else size
        return {"value": listed, "unit": str(value.units)}
    if isinstance(value, Mapping):
        return {str(key): plain_readings(one) for key, one in value.items()}
    if isinstance(value, list | tuple):
        return [plain_readings(one) for one in value]
    return value


def read_back(stored: Any) -> Any:
    """Return the readings that ``plain_readings`` wrote; a list stays a list."""
    if isinstance(stored, list):
        return [read_back(one) for one in stored]
    if not isinstance(stored, dict):
        return stored
    if set(stored) == _QUANTITY:
        return Q(_array(stored["value"]), ureg.Unit(stored["unit"]))
    return {key: read_back(one) for key, one in stored.items()}


def _array(size: Any) -> Any:
    if not isinstance(size, list):
        return size
    import numpy as np

    return np.array(size, dtype=np.float64)


class ReadingsType(TypeDecorator[dict[str, Any]]):
    """A mapping of readings, quantities with their units."""

    impl = JSON(none_as_null=True)
    cache_ok = True

    @override
    def process_bind_param(self, value: Mapping[str, Any] | None, dialect: Dialect) -> Any:
        return None if value is None else plain_readings(value)

    @override
    def process_result_value(self, value: Any | None, dialect: Dialect) -> dict[str, Any] | None:
        return None if value is None else read_back(value)


class AdviceType(TypeDecorator[tuple[Advice, ...]]):
    """Ranked advice, each with its source, the trust in it and its caution."""

    impl = JSON(none_as_null=True)
    cache_ok = True

    @override
    def process_bind_param(self, value: Iterable[Advice] | None, dialect: Dialect) -> Any:
        if value is None:
            return None
        return [[one.text, one.source.text, str(one.source.trust), one.caution] for one in value]

    @override
    def process_result_value(
        self, value: Any | None, dialect: Dialect
    ) -> tuple[Advice, ...] | None:
        if value is None:
            return None
        return tuple(
            Advice(text, Source(source, Trust(trust)), caution)
            for text, source, trust, caution in value
        )


class KeysType(TypeDecorator[tuple[tuple[int | None, str], ...]]):
    """Rows (None for none) with a part of each, in a fixed order."""

    impl = JSON(none_as_null=True)
    cache_ok = True

    @override
    def process_bind_param(
        self, value: Iterable[tuple[int | None, str]] | None, dialect: Dialect
    ) -> Any:
        if value is None:
            return None
        return [list(one) for one in sorted(value, key=lambda one: (one[0] or 0, one[1]))]

    @override
    def process_result_value(
        self, value: Any | None, dialect: Dialect
    ) -> tuple[tuple[int | None, str], ...] | None:
        return None if value is None else tuple((row, part) for row, part in value)
