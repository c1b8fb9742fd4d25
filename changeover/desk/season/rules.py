"""What the season is reckoned with, as texts to type and back."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from changeover.desk.shop_edits import PutSeason
from changeover.quantities import Refusal
from changeover.store.opening import Store
from changeover.store.season_values import SeasonRules
from changeover.store.unit_of_work import UnitOfWork

__all__ = ["SeasonRules", "read_rules", "rules_in", "rules_of", "rules_texts", "set_rules"]


def rules_of(store: Store) -> SeasonRules:
    """Return what the season is reckoned with, as first proposed where nothing was entered."""
    with store.read() as work:
        return rules_in(work)


def rules_in(work: UnitOfWork) -> SeasonRules:
    """Return the same within a unit of work that is already open."""
    stored = work.season.all()
    return stored[0] if stored else SeasonRules()


def set_rules(store: Store, rules: SeasonRules) -> PutSeason:
    """Return the edit that sets what the season is reckoned with."""
    with store.read() as work:
        stored = work.season.all()
    return PutSeason(rules, before=stored[0] if stored else None)


def rules_texts(rules: SeasonRules) -> dict[str, str]:
    """Return each figure as it is typed, by its words."""
    return {
        "Plan from": rules.begins.isoformat() if rules.begins is not None else "",
        "Hours a day": f"{rules.hours:g}",
        "Days fit to plant": f"{100 * rules.suitable:g} %",
        "Field efficiency": f"{100 * rules.efficiency:g} %",
        "Between places": f"{rules.move_minutes} min",
        "At one place": f"{rules.near_minutes} min",
    }


def read_rules(before: SeasonRules, texts: Mapping[str, str]) -> SeasonRules:
    """Return the rules that were typed. Raises Refusal for a text that is no figure."""
    return replace(
        before,
        begins=_day(texts["Plan from"]),
        hours=_number("Hours a day", texts),
        suitable=_share("Days fit to plant", texts),
        efficiency=_share("Field efficiency", texts),
        move_minutes=round(_number("Between places", texts)),
        near_minutes=round(_number("At one place", texts)),
    )


def _day(text: str) -> date | None:
    if not text.strip():
        return None
    try:
        return date.fromisoformat(text.strip())
    except ValueError as error:
        raise Refusal(f"“{text}” is not a day; write it like 2027-05-03.") from error


def _number(key: str, texts: Mapping[str, str]) -> float:
    text = texts[key].strip().removesuffix("min").removesuffix("h").strip()
    try:
        return float(text)
    except ValueError as error:
        raise Refusal(f"{key}: “{texts[key]}” is not a figure; write it like 10.") from error


def _share(key: str, texts: Mapping[str, str]) -> float:
    text = texts[key].strip()
    try:
        figure = float(text.removesuffix("%"))
    except ValueError as error:
        raise Refusal(f"{key}: “{text}” is not a share; write it like 65 %.") from error
    return round(figure / 100, 6)
