"""The list of settings: the standard ones, and the user's own added, renamed, moved, hidden."""

from dataclasses import replace

import pytest

from changeover.planter.places import Scope
from changeover.planter.settings import STANDARD, Kind, Setting, WorkPlace
from changeover.quantities import Refusal
from changeover.store.refusals import Conflict

CLEANER = Setting(
    "row_cleaner",
    "Row cleaner",
    Kind.INDEX,
    Scope.ROW,
    WorkPlace.ROW_UNIT,
    options=("0", "1", "2"),
    own=True,
)


def _put(store, settings, before) -> tuple[Setting, ...]:
    with store.work("Ada") as work:
        work.settings.put(settings, before)
    with store.read() as work:
        return work.settings.all()


def test_a_new_store_has_the_standard_settings(store) -> None:
    with store.read() as work:
        assert work.settings.all() == STANDARD


def test_own_settings_are_added_renamed_moved_hidden_and_removed(store) -> None:
    added = _put(store, (CLEANER, *STANDARD), STANDARD)
    assert added == (CLEANER, *STANDARD)
    changed = replace(CLEANER, name="Trash wheels", hidden=True)
    moved = _put(store, (*STANDARD[::-1], changed), added)
    assert moved == (*STANDARD[::-1], changed)
    assert _put(store, STANDARD, moved) == STANDARD


def test_a_standard_setting_cannot_be_removed(store) -> None:
    with pytest.raises(Refusal, match="is always there"):
        _put(store, STANDARD[1:], STANDARD)


def test_two_settings_cannot_share_a_name(store) -> None:
    double = replace(CLEANER, name=STANDARD[2].name.upper())
    with pytest.raises(Refusal, match="Two settings share the name"):
        _put(store, (*STANDARD, double), STANDARD)


def test_the_later_writer_of_the_list_is_refused(store) -> None:
    _put(store, (*STANDARD, CLEANER), STANDARD)
    with pytest.raises(Conflict, match="Row cleaner"):
        _put(store, STANDARD[::-1], STANDARD)


def test_the_history_names_what_was_renamed(store) -> None:
    _put(store, (*STANDARD, CLEANER), STANDARD)
    _put(store, (*STANDARD, replace(CLEANER, name="Trash wheels")), (*STANDARD, CLEANER))
    with store.read() as work:
        line = work.history.latest(None, 1)[0]
    assert (line.setting, line.old, line.new) == ("name", "Row cleaner", "Trash wheels")
