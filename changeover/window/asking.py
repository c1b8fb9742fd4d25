"""Asking and telling a person: installed at start-up, replaced in tests."""

from pathlib import Path
from typing import Protocol

from PySide6.QtWidgets import QFileDialog, QInputDialog, QMessageBox, QWidget


class Asking(Protocol):
    """What pages may ask or tell; None or False is the answer of someone who backed out."""

    def confirm(self, text: str, detail: str = "", yes: str = "Go on") -> bool: ...
    def tell(self, text: str, detail: str = "") -> None: ...
    def choose_file(self, title: str, kinds: str) -> Path | None: ...
    def choose_new_file(self, title: str, name: str, kinds: str) -> Path | None: ...
    def choose_folder(self, title: str) -> Path | None: ...
    def ask_text(self, title: str, text: str, value: str = "") -> str | None: ...


class DialogAsking:
    """Asks with dialogs over the window."""

    def __init__(self, parent: QWidget | None = None) -> None:
        self.parent = parent

    def confirm(self, text: str, detail: str = "", yes: str = "Go on") -> bool:
        box = QMessageBox(self.parent)
        box.setText(text)
        box.setInformativeText(detail)
        accept = box.addButton(yes, QMessageBox.ButtonRole.AcceptRole)
        box.addButton(QMessageBox.StandardButton.Cancel)
        box.exec()
        return box.clickedButton() is accept

    def tell(self, text: str, detail: str = "") -> None:
        box = QMessageBox(self.parent)
        box.setText(text)
        box.setInformativeText(detail)
        box.exec()

    def choose_file(self, title: str, kinds: str) -> Path | None:
        name, _ = QFileDialog.getOpenFileName(self.parent, title, "", kinds)
        return Path(name) if name else None

    def choose_new_file(self, title: str, name: str, kinds: str) -> Path | None:
        chosen, _ = QFileDialog.getSaveFileName(self.parent, title, name, kinds)
        return Path(chosen) if chosen else None

    def choose_folder(self, title: str) -> Path | None:
        name = QFileDialog.getExistingDirectory(self.parent, title)
        return Path(name) if name else None

    def ask_text(self, title: str, text: str, value: str = "") -> str | None:
        answer, taken = QInputDialog.getText(self.parent, title, text, text=value)
        return answer if taken else None
