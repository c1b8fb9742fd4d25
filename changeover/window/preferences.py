"""What the window remembers between two starts, declared once and typed."""

from pathlib import Path
from urllib.parse import quote

from changeover.quantities import Units
from changeover.window.kept import kept_file, kept_look
from changeover.window.outlook import Outlook
from changeover.window.theme import Tokens


class Preferences:
    """Units, look, last store and the last planter of each, kept in a small file of the user's."""

    def __init__(self, path: Path) -> None:
        self._file = kept_file(path)

    def keep(self, outlook: Outlook) -> None:
        """Remember what is looked at, and how."""
        self._file.setValue("units", outlook.units.value)
        self._file.setValue("look", outlook.tokens.name)
        self._file.setValue(self._planter_key, outlook.planter)

    def keep_store(self, where: str) -> None:
        """Remember the path or address of the store that is open."""
        self._file.setValue("store", where)

    @property
    def units(self) -> Units:
        kept = self._text("units")
        return Units(kept) if kept in set(Units) else Units.US

    @property
    def tokens(self) -> Tokens:
        """The look chosen last, else the one that the desktop asks for."""
        return kept_look(self._file)

    @property
    def planter(self) -> str:
        """The planter viewed last in the store that is open."""
        return self._text(self._planter_key)

    @property
    def _planter_key(self) -> str:
        return f"planter/{quote(self.store, safe='')}"

    @property
    def store(self) -> str:
        """The store opened last, empty at the first start."""
        return self._text("store")

    def _text(self, key: str) -> str:
        return str(self._file.value(key, ""))
