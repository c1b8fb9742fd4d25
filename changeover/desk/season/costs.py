"""What switches cost: working minutes, planting hours and area lost; finish first or change now."""

from collections.abc import Sequence
from dataclasses import dataclass

from changeover.desk.labels import crop_words
from changeover.desk.look_up import Known
from changeover.desk.season.plan import SeasonAnswer, SeasonInputs, capacity_of
from changeover.desk.switch_times import SwitchTime, SwitchTimes
from changeover.desk.who_does_what import length_text
from changeover.planter.setup import Setup
from changeover.quantities import Q, Quantity, Units, show
from changeover.switch.costs import lost_time
from changeover.switch.season.model import Slot
from changeover.switch.season.numbers import Cost, numbers_of


@dataclass(frozen=True)
class SwitchCost:
    """One switch of a plan: before which job, its working minutes, and what is not planted."""

    planter: str
    job: str
    working: Quantity
    lost: Quantity
    area: Quantity


@dataclass(frozen=True)
class Choice:
    """Finishing the crop that is in the planter first, against changing now.

    ``late`` and ``between`` are by how much changing now is worse: cost of lateness, and
    minutes of switching and moving; below zero it is better.
    """

    planter: str
    crop: str
    late: float
    between: int

    @property
    def finish(self) -> bool:
        """Whether finishing first is at least as good."""
        return (self.late, self.between) >= (0, 0)


def switch_costs(answer: SeasonAnswer, times: SwitchTimes) -> tuple[SwitchCost, ...]:
    """Return what each switch of the plan costs, by planter and in the order of time."""
    costs: list[SwitchCost] = []
    for known in answer.inputs.fleet:
        before = known.as_found
        for slot in answer.plan.best.on(known.planter.name):
            target = times.setup(known, answer.job(slot.job))
            if target is None:
                continue
            found = times.time(known, before, target, answer.job(slot.job).lot)
            if found.elapsed:
                costs.append(_cost(answer, known, slot, found))
            before = target
    return tuple(costs)


def _cost(answer: SeasonAnswer, known: Known, slot: Slot, found: SwitchTime) -> SwitchCost:
    capacity = capacity_of(answer.inputs, known, answer.job(slot.job))
    lost = lost_time(Q(float(found.elapsed), "min"), capacity)
    return SwitchCost(known.planter.name, slot.job, Q(found.working, "min"), lost.hours, lost.area)


def finish_or_change(answer: SeasonAnswer) -> tuple[Choice, ...]:
    """Return for each planter that has work in its present crop and in others which comes first.

    The other planters keep to the plan; on the planter in question the jobs keep their order
    but for those of the present crop, which come first or last.
    """
    found = (_choice(answer, number) for number in range(len(answer.inputs.fleet)))
    return tuple(choice for choice in found if choice is not None)


def _choice(answer: SeasonAnswer, number: int) -> Choice | None:
    known = answer.inputs.fleet[number]
    crop = _crop(known, known.as_found)
    keys = [slot.job for slot in answer.plan.best.on(known.planter.name)]
    same = [key for key in keys if known.lot(answer.job(key).lot).crop == crop]
    others = [key for key in keys if key not in same]
    if not same or not others:
        return None
    first, last = (_cost_of(answer, number, keys) for keys in (same + others, others + same))
    return Choice(
        known.planter.name, crop, (last.late - first.late) / 100, last.between - first.between
    )


def _cost_of(answer: SeasonAnswer, number: int, keys: Sequence[str]) -> Cost:
    numbers = numbers_of(answer.season)
    index = {job.key: place for place, job in enumerate(answer.season.jobs)}
    rows = [
        tuple(index[slot.job] for slot in answer.plan.best.on(planter.name))
        for planter in answer.season.planters
    ]
    rows[number] = tuple(index[key] for key in keys)
    return numbers.cost(tuple(rows))


def _crop(known: Known, setup: Setup) -> str:
    """Return the crop of the lot in a setup's tanks, empty where it is not known."""
    held = {str(value) for cell, value in setup.values.items() if cell.setting == "seed"}
    return next((lot.crop for lot in known.lots if lot.number in held), "")


def cost_lines(
    answer: SeasonAnswer | None, times: SwitchTimes | None, units: Units = Units.US
) -> tuple[str, ...]:
    """Return the costs of a plan as sentences; none without a plan."""
    if answer is None or times is None:
        return ()
    costs = [cost_text(answer.inputs, one, units) for one in switch_costs(answer, times)]
    return (*(choice_text(choice) for choice in finish_or_change(answer)), *costs)


def cost_text(inputs: SeasonInputs, cost: SwitchCost, units: Units) -> str:
    """Say what one switch costs."""
    lost = length_text(round(float(cost.lost.to("min").magnitude)))
    working = length_text(round(float(cost.working.to("min").magnitude)))
    hours = float(cost.lost.to("hour").magnitude) / inputs.rules.hours
    days = f" ({hours:.1f} planting days)" if hours >= 1 else ""
    return (
        f"{cost.planter} before {cost.job}: {lost}{days}, {working} of work; "
        f"{show(cost.area, 'area', units)} could be planted meanwhile."
    )


def choice_text(choice: Choice) -> str:
    """Say whether to finish the present crop first or to change now, and by how much."""
    crop = crop_words(choice.crop).lower()
    late, between = abs(choice.late), abs(choice.between)
    by = f"{late:.0f} less lateness" if late else f"{length_text(between)} less between jobs"
    if not late and not between:
        return f"{choice.planter}: finishing the {crop} first and changing now cost the same."
    advice = f"finish the {crop} first" if choice.finish else f"change now, before the {crop}"
    return f"{choice.planter}: {advice}: {by}."
