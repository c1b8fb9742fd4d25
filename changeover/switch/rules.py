"""The tables that a plan of work stands on: cautions, clean-out and standard minutes."""

from collections.abc import Mapping
from dataclasses import dataclass

from changeover.quantities import Refusal
from changeover.switch.cautions import Cautions, read_cautions
from changeover.switch.clean_rules import CleanRules, read_clean_rules
from changeover.switch.standard_minutes import Element, read_minutes

RULE_FILES = ("cautions", "clean_out", "minutes")


@dataclass(frozen=True)
class SwitchRules:
    """What ``read_rules`` read."""

    cautions: Cautions
    clean_out: CleanRules
    minutes: Mapping[str, Element]


def read_rules(texts: Mapping[str, str]) -> SwitchRules:
    """Read the tables from TOML texts keyed ``cautions``, ``clean_out`` and ``minutes``.

    Raises Refusal when one is missing or wrong.
    """
    for name in RULE_FILES:
        if name not in texts:
            raise Refusal(f"The rules “{name}” are missing; install the program again.")
    return SwitchRules(
        read_cautions(texts["cautions"]),
        read_clean_rules(texts["clean_out"]),
        read_minutes(texts["minutes"]),
    )
