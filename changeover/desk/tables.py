"""The tables that travel with the program, read from their text files once."""

from functools import cache

from changeover.bundled import bundled
from changeover.seed.crops import CROP_FILES, Crop, read_crops
from changeover.switch.rules import RULE_FILES, SwitchRules, read_rules


@cache
def crops() -> dict[str, Crop]:
    """Return the crop table by key."""
    folder = bundled("resources")
    paths = sorted(path for pattern in CROP_FILES for path in folder.glob(pattern))
    names = {path: path.relative_to(folder).as_posix() for path in paths}
    return read_crops({names[path]: path.read_text(encoding="utf-8") for path in paths})


@cache
def switch_rules() -> SwitchRules:
    """Return the rules of clean-out, cautions and standard minutes."""
    folder = bundled("resources")
    texts = {name: (folder / f"{name}.toml").read_text(encoding="utf-8") for name in RULE_FILES}
    return read_rules(texts)
