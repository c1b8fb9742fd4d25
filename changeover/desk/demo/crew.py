"""The demo's crew, its shared tools, its season and its further jobs, read from their text file."""

from dataclasses import replace
from typing import Any

from changeover.desk.crew import read_skills
from changeover.desk.demo import texts
from changeover.desk.edits import PutJob
from changeover.desk.shop_edits import PutDelivery, PutMember, PutSeason, PutTool
from changeover.store.season_values import Delivery, SeasonRules
from changeover.switch.crew import CrewMember, SharedTool, read_hours


def crew_edits(table: texts.Table) -> tuple[Any, ...]:
    """Return the edits that enter all of it, in the order of the file. Raises Refusal."""
    rules = {key: table[key] for key in ("begins", "hours", "suitable")}
    return (
        *(PutMember(_person(one)) for one in table["person"]),
        *(PutTool(SharedTool(one["name"], one["count"])) for one in table["tool"]),
        *(PutJob(job) for job in texts.jobs(table)),
        *(PutDelivery(Delivery(one["part"], one["days"])) for one in table["delivery"]),
        PutSeason(replace(SeasonRules(), **rules)),
    )


def _person(table: texts.Table) -> CrewMember:
    return CrewMember(
        table["name"], read_skills(table.get("skills", "")), read_hours(table.get("hours", ""))
    )
