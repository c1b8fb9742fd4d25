"""Refuse a season that cannot be planned, naming the job and what to change."""

from collections.abc import Iterable

from changeover.quantities import Refusal
from changeover.switch.season.model import Fixed, Season, SeasonJob, SeasonPlanter


def refuse_unplannable(season: Season) -> None:
    """Raise Refusal when no plan of the season can be."""
    _refuse_twice("job", [job.key for job in season.jobs])
    _refuse_twice("planter", [planter.name for planter in season.planters])
    if not season.planters:
        raise Refusal("The season has no planter; add one.")
    if not 0 < season.hours_per_day <= 24 or not 0 < season.suitable_share <= 1:
        raise Refusal(
            f"{season.hours_per_day:g} hours a day on a share of {season.suitable_share:g} of the "
            "days cannot be; give over 0 to 24 hours and a share over 0 to 1."
        )
    if not season.minutes_per_day:
        raise Refusal("A day has no whole minute of work; give more hours or suitable days.")
    for planter in season.planters:
        _refuse_planter(planter)
    for job in season.jobs:
        _refuse_job(job, season)
    for fixed in season.fixed:
        _refuse_fixed(fixed, season)
    _refuse_twice("fixed job", [fixed.job for fixed in season.fixed])


def _refuse_twice(what: str, names: Iterable[str]) -> None:
    seen: set[str] = set()
    for name in names:
        if name in seen:
            raise Refusal(f"The {what} “{name}” is there twice; give each {what} once.")
        seen.add(name)


def _refuse_planter(planter: SeasonPlanter) -> None:
    for what, table in (("switch", planter.switch), ("move", planter.move)):
        for (come, go), minutes in table.items():
            if minutes < 0:
                raise Refusal(
                    f"The {what} of {planter.name} from “{come}” to “{go}” is {minutes} min; "
                    "give 0 or more."
                )


def _refuse_job(job: SeasonJob, season: Season) -> None:
    names = {planter.name for planter in season.planters}
    if not job.key:
        raise Refusal("A job has no name; give each job one.")
    if not names & set(job.minutes):
        raise Refusal(
            f"No planter can do “{job.key}”; make a planter fit for it or take the job out."
        )
    if min(job.minutes.values()) <= 0:
        raise Refusal(f"“{job.key}” takes {min(job.minutes.values())} min; give more than 0.")
    if job.late_cost < 0:
        raise Refusal(f"The cost of lateness of “{job.key}” is below zero; give 0 or more.")
    if job.due is None:
        return
    if job.due < job.release:
        raise Refusal(
            f"The window of “{job.key}” ends on day {job.due}, before it begins on day "
            f"{job.release}; correct its days."
        )
    if job.due < season.today:
        raise Refusal(
            f"The window of “{job.key}” ended on day {job.due} and today is day {season.today}; "
            "give it a new window or take the job out."
        )


def _refuse_fixed(fixed: Fixed, season: Season) -> None:
    job = next((job for job in season.jobs if job.key == fixed.job), None)
    if job is None:
        raise Refusal(f"“{fixed.job}” is fixed and not among the jobs; let it go.")
    if fixed.planter not in job.minutes or all(
        planter.name != fixed.planter for planter in season.planters
    ):
        raise Refusal(
            f"“{fixed.job}” is fixed on {fixed.planter}, which cannot do it; "
            f"put it on one of {', '.join(sorted(job.minutes))}."
        )
    if fixed.start is None:
        return
    earliest = max(job.release, season.today) * season.minutes_per_day
    if fixed.start < earliest:
        raise Refusal(
            f"“{fixed.job}” is fixed at minute {fixed.start} of work, before it can begin "
            f"(minute {earliest}); put it later or let it go."
        )
