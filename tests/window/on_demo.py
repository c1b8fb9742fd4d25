"""Pages put on a working copy of the demo store, with answers given in advance."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from changeover.desk.board import read_board
from changeover.desk.demo.working_copy import start_again
from changeover.desk.door import apply
from changeover.desk.opening import open_store
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.page import EVERYTHING, Page


@dataclass
class Answers:
    """Answers every question with what was put in beforehand and keeps what was told."""

    folder: Path | None = None
    texts: list[str | None] = field(default_factory=list)
    yes: bool = True
    told: list[str] = field(default_factory=list)

    def confirm(self, text: str, detail: str = "", yes: str = "Go on") -> bool:
        self.told.append(f"{text} {detail} {yes}")
        return self.yes

    def tell(self, text: str, detail: str = "") -> None:
        self.told.append(f"{text}\n{detail}")

    def choose_file(self, _title: str, _kinds: str) -> Path | None:
        return self.folder

    def choose_new_file(self, _title: str, name: str, _kinds: str) -> Path | None:
        return self.folder / name if self.folder else None

    def choose_folder(self, _title: str) -> Path | None:
        return self.folder

    def ask_text(self, _title: str, _text: str, value: str = "") -> str | None:
        return self.texts.pop(0) if self.texts else value


@dataclass
class OnDemo:
    """A page on the demo store: what it pushes is applied, refreshed like in the window."""

    page: Any
    store: Any
    door: Door
    outlook: Outlook
    answers: Answers
    refused: list[str]


def outlook_on(store: Any, planter: str) -> tuple[Door, Outlook]:
    """Return the door and the outlook of a store."""
    door = Door(lambda edit: apply(store, edit, "tester"))  # type: ignore[arg-type]
    outlook = Outlook(
        lambda name, units, *, proposal: read_board(store, name, units, proposal=proposal), planter
    )
    return door, outlook


@contextmanager
def on_demo(
    qtbot: Any, folder: Path, page: type[Page], planter: str = "Old Fiddle 24"
) -> Iterator[OnDemo]:
    """Put a page on a fresh copy of the demo, and close the store afterwards."""
    store = open_store(start_again(folder / "demo.sqlite"))
    door, outlook = outlook_on(store, planter)
    answers, refused = Answers(folder), list[str]()
    made = page(lambda job, *args, **kwargs: job(store, *args, **kwargs), door, outlook, answers)
    qtbot.addWidget(made)
    door.refused.connect(refused.append)

    def hear(changed: Any) -> None:
        outlook.note(changed)
        if changed & made.wants:
            made.refresh(changed)

    door.changed.connect(hear)
    made.resize(1100, 660)
    made.refresh(EVERYTHING)
    try:
        yield OnDemo(made, store, door, outlook, answers, refused)
    finally:
        store.close()
