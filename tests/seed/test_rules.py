"""The rule tables: each rule says why and who, and holds only for its own things."""

import pytest

from changeover.quantities import Refusal
from changeover.seed.reasons import Trust
from changeover.seed.rules import read_rules
from tests.seed.made_up import crop_table

TABLE = {
    "rules": "closing",
    "rule": [
        {"moisture": ["dry"], "gives": 0.5, "why": "a", "source": "s", "trust": "from memory"},
        {"gives": 1, "why": "b", "source": "s", "trust": "common practice"},
    ],
}


def test_every_table_is_there_and_says_who() -> None:
    tables = crop_table()["corn"].rules.tables
    assert set(tables) == {"singulator", "closing", "depth", "disc", "load"}
    for rules in tables.values():
        assert all(rule.why and rule.source and rule.trust in Trust for rule in rules)


def test_a_rule_holds_for_its_own_things_only() -> None:
    rules = read_rules({"closing.toml": TABLE})
    assert [rule.why for rule in rules.all("closing", {"moisture": "dry"})] == ["a", "b"]
    assert [rule.why for rule in rules.all("closing", {"moisture": "wet"})] == ["b"]


def test_the_first_that_holds_is_found() -> None:
    rules = read_rules({"closing.toml": TABLE})
    found = rules.first("closing", {"moisture": "dry"})
    assert found is not None
    assert (found.gives, found.trust) == (0.5, Trust.MEMORY)
    assert rules.first("nothing", {}) is None


@pytest.mark.parametrize("lacking", ["gives", "why", "source", "trust"])
def test_a_rule_without_ground_is_refused(lacking: str) -> None:
    rule = {key: value for key, value in TABLE["rule"][0].items() if key != lacking}
    with pytest.raises(Refusal, match=r"closing.toml: a rule needs gives"):
        read_rules({"closing.toml": {"rules": "closing", "rule": [rule]}})
