"""The refusals of a store: one clear sentence for each way in which it cannot be trusted."""

from changeover.quantities import Refusal


class Conflict(Refusal):
    """Somebody else changed the same thing meanwhile; both values are named.

    ``mine`` is the text of the value that was to be saved, ``theirs`` of the one that stands,
    which is ``stored`` where it can be written over once a person has chosen.
    """

    def __init__(self, what: str, mine: str, theirs: str, stored: object = None) -> None:
        self.what, self.mine, self.theirs, self.stored = what, mine, theirs, stored
        super().__init__(
            f"{what} was changed by someone else meanwhile: it is now {theirs or 'empty'}, and "
            f"yours is {mine or 'empty'}; look again and choose."
        )


class Busy(Refusal):
    """The store could not be written because another program was writing; trying again helps."""
