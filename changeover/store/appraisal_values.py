"""What the store keeps of a trade-in: the appraisal as typed, and its photos."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from changeover.proof.appraisal import Price
from changeover.quantities import Refusal

MOST_BYTES = 4_000_000
SIGNS = {"JPEG": b"\xff\xd8\xff", "PNG": b"\x89PNG\r\n\x1a\n"}


@dataclass(frozen=True)
class KeptAppraisal:
    """One appraisal of a planter as a dealer typed it.

    ``inspection`` is the number of the wear inspection used, None for the latest one; ``prices``
    the name of the price list; ``as_found`` and ``reconditioned`` the dealer's own values in
    ``currency``, None until they are typed.
    """

    planter: str
    name: str
    on: date
    inspection: int | None = None
    prices: str = ""
    currency: str = "USD"
    as_found: Decimal | None = None
    reconditioned: Decimal | None = None
    note: str = ""

    def __post_init__(self) -> None:
        if not self.name.strip():
            raise Refusal("The appraisal has no name; give it one, such as the customer's.")
        for what in (self.as_found, self.reconditioned):
            Price("the planter", what if what is not None else Decimal(0), self.currency)


@dataclass(frozen=True)
class Photo:
    """One photo of an appraisal, JPEG or PNG, with its words; ``digest`` tells it from others."""

    planter: str
    appraisal: str
    digest: str
    caption: str
    content: bytes

    def __post_init__(self) -> None:
        if len(self.content) > MOST_BYTES:
            raise Refusal(f"Photo {self.caption} is larger than 4 MB; make it smaller.")
        if not self.content.startswith(tuple(SIGNS.values())):
            raise Refusal(f"Photo {self.caption} is neither JPEG nor PNG; save it as one of them.")


@dataclass(frozen=True)
class PhotoNote:
    """What is to be said of a photo without its content; ``size`` in bytes."""

    digest: str
    caption: str
    size: int
