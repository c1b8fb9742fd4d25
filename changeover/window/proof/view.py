"""The base of the views of the Proof page: each says in a few words what it shows."""

from typing import ClassVar

from PySide6.QtCore import Signal
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.window.page import Page

PROOF_DATA = frozenset(
    {
        Changed.PROOFS,
        Changed.PLANTERS,
        Changed.METERS,
        Changed.NEXT,
        Changed.AS_FOUND,
        Changed.TARGET,
        Changed.SETTINGS,
    }
)


class ProofView(Page):
    """A view of the Proof page; ``about`` stands behind the page's title while it is shown."""

    wants: ClassVar[frozenset[Changed]] = PROOF_DATA
    about_changed = Signal(str)
    about = ""

    def say_about(self, words: str) -> None:
        """Say what is shown, behind the title of the page."""
        self.about = words
        self.about_changed.emit(words)

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        raise NotImplementedError
