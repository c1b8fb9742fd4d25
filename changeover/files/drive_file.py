"""Readings of a drive start from a TOML file: tables planter, limits and readings."""

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from changeover.proof.drive_readings import DriveNeeds, DriveReadings
from changeover.quantities import Q, Quantity, Refusal, read_quantity, ureg

_PLANTER: Mapping[str, str] = {
    "row_spacing": "row_spacing",
    "cells": "whole",
    "motor_ratio": "number",
    "displacement": "volume",
    "volumetric_efficiency": "share",
}
_LIMITS: Mapping[str, str] = {
    "least_current": "current",
    "least_ground_speed": "speed",
    "wheel_tolerance": "share",
    "speed_tolerance": "share",
    "saturated_at": "share",
}
_READINGS: Mapping[str, str] = {
    "controller_set_up": "flag",
    "target_rate": "seed_rate",
    "lowered": "flag",
    "height_calibrated": "flag",
    "start_point_set": "flag",
    "ground_speed": "speed",
    "wheel_speed": "speed",
    "clutches_on": "flag",
    "supply": "flag",
    "oil_flow": "oil_flow",
    "current": "current",
    "target_speed": "disc_speed",
    "command": "share",
    "actual_speed": "disc_speed",
}
_TABLES = {"planter": _PLANTER, "limits": _LIMITS, "readings": _READINGS}


def read_drive(path: Path) -> tuple[DriveReadings, DriveNeeds]:
    """Read a drive start.

    ``[planter]`` needs ``row_spacing`` and ``cells``; ``[readings]`` holds what was read, text
    with a unit (``"5 mph"``), true or false; a share is ``"95 %"``. What was not read is left
    out. Raises Refusal with line and column for a key or figure that cannot be used.
    """
    text = _text(path)
    try:
        tables = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise Refusal(f"{path.name} is not TOML: {error}.") from None
    for name, table in tables.items():
        if name not in _TABLES or not isinstance(table, dict):
            known = ", ".join(_TABLES)
            raise Refusal(f"{_place(text, name)}: “{name}” is not a table here; use {known}.")
    values = {name: _values(text, name, tables.get(name, {})) for name in _TABLES}
    for key in ("row_spacing", "cells"):
        if key not in values["planter"]:
            raise Refusal(f"{path.name}: [planter] lacks “{key}”; add it.")
    needs = DriveNeeds(**values["planter"], **values["limits"])
    return DriveReadings(**values["readings"]), needs


def _text(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise Refusal(f"{path.name} is not text in UTF-8; save it again.") from None
    except OSError as error:
        raise Refusal(f"{path.name} cannot be read: {error.strerror or error}.") from None


@dataclass(frozen=True)
class _Entry:
    key: str
    value: Any
    where: str

    def refuse(self, wanted: str) -> Refusal:
        return Refusal(f"{self.where}: {self.key} = {self.value!r} is not possible; {wanted}.")


def _values(text: str, table: str, entries: Mapping[str, Any]) -> dict[str, Any]:
    kinds = _TABLES[table]
    found: dict[str, Any] = {}
    for key, value in entries.items():
        where = _place(text, key, table)
        if key not in kinds:
            raise Refusal(f"{where}: “{key}” is not known in [{table}]; see the documentation.")
        found[key] = _value(_Entry(key, value, where), kinds[key])
    return found


def _value(entry: _Entry, kind: str) -> Any:
    match kind:
        case "flag":
            if not isinstance(entry.value, bool):
                raise entry.refuse("write true or false")
            return entry.value
        case "whole" | "number":
            return _number(entry, whole=kind == "whole")
        case "share" if isinstance(entry.value, float) and 0 <= entry.value <= 1:
            return entry.value
        case "share":
            return float(_quantity(entry, "share").to("count").magnitude)
        case "current":
            return _current(entry)
        case _:
            return _quantity(entry, kind)


def _number(entry: _Entry, *, whole: bool) -> float | int:
    kinds = int if whole else (int, float)
    if not isinstance(entry.value, kinds) or isinstance(entry.value, bool) or entry.value <= 0:
        raise entry.refuse(f"write a {'whole ' if whole else ''}number above zero")
    return entry.value


def _quantity(entry: _Entry, measure: str) -> Quantity:
    if not isinstance(entry.value, str):
        raise entry.refuse("write it in quotes with its unit")
    try:
        quantity = read_quantity(entry.value, measure, what=entry.key)
    except Refusal as refusal:
        raise Refusal(f"{entry.where}: {refusal}") from refusal
    if not quantity.magnitude >= 0:
        raise entry.refuse("enter 0 or more")
    return quantity


def _current(entry: _Entry) -> Quantity:
    match = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*(m?A|amp)\s*", str(entry.value))
    if match is None:
        raise entry.refuse("write a current such as 12 A")
    return Q(float(match[1]), ureg.Unit(match[2]))


def _place(text: str, key: str, table: str = "") -> str:
    """Where a key stands, as line and column; the whole file when it cannot be found."""
    inside = not table
    pattern = re.compile(rf"^\s*\[?\s*(?P<key>[\"']?{re.escape(key)}[\"']?)\s*[\]=.]")
    for number, line in enumerate(text.splitlines(), start=1):
        head = re.match(r"\s*\[\s*([\w.-]+)\s*\]", line)
        if head and table:
            inside = head[1] == table
        if inside and (match := pattern.match(line)):
            return f"line {number}, column {match.start('key') + 1}"
    return f"“{key}”"
