"""The Seed page: from a key to the painted proposal, on the demo's planter of 24 rows."""

import tempfile
from collections.abc import Iterable
from contextlib import closing
from pathlib import Path

from changeover.app import application, build_window
from changeover.desk.demo.working_copy import start_again
from changeover.desk.opening import open_store
from changeover.window.preferences import Preferences
from changeover.window.seed.page import SeedPage
from changeover.window.shots import settle
from tests.bench.timing import Spell, seconds_of

AT_ONCE = 0.05


def measure() -> Iterable[Spell]:
    """Yield the seconds from a changed input to the painted proposal, and of the look-up alone."""
    application()
    with (
        tempfile.TemporaryDirectory() as spare,
        closing(open_store(start_again(Path(spare) / "demo.sqlite"))) as store,
    ):
        kept = Preferences(Path(spare) / "window.ini")
        window = build_window(store, kept, planter="Old Fiddle 24")
        window.show()
        page = window.open_page("seed")
        assert isinstance(page, SeedPage)
        known, job = page.known, page.job
        assert known is not None
        assert job is not None
        settle()
        speeds = iter(range(1, 1000))

        def typed() -> None:
            page.choosing.inputs.speed.line.setText(f"{3 + next(speeds) / 100} mph")
            page.form_proposal()
            page.grab()

        yield Spell("looking up alone", seconds_of(lambda: known.propose(job), 15, 3), AT_ONCE)
        yield Spell("a speed typed, to the painted proposal", seconds_of(typed, 15, 3), AT_ONCE)
        window.close()
