"""Where a limit or a piece of advice comes from, and how far it is to be trusted."""

from dataclasses import dataclass

from changeover.quantities import Refusal
from changeover.seed.reasons import Trust

_ORDER = tuple(Trust)


@dataclass(frozen=True)
class Source:
    """A source as it is printed beside a figure, with its trust."""

    text: str
    trust: Trust

    def __post_init__(self) -> None:
        if not self.text.strip():
            raise Refusal("A source has no text; say where the figure comes from.")

    @property
    def rank(self) -> int:
        """0 for the best trust, so that the least rank wins."""
        return _ORDER.index(self.trust)

    def __str__(self) -> str:
        return self.text


PRACTICE = Source("common practice, no source", Trust.PRACTICE)
ARITHMETIC = Source("arithmetic from the definitions", Trust.PUBLISHED)
YOUR_LIMIT = Source("entered by you", Trust.MANUAL)
