"""Work inside the meters: one opening covers the cleaning and every swap and setting."""

from collections.abc import Iterable, Mapping

from changeover.planter.places import Place, Scope
from changeover.planter.settings import Kind, Setting, WorkPlace
from changeover.switch.clean_rules import CleanPlace, How
from changeover.switch.plan import CleanGroup, Plan
from changeover.switch.setting_work import parts_of
from changeover.switch.tasks import Change, Task, TaskKind

CLEAN_WORDS: Mapping[How, str] = {
    How.EMPTY: "empty",
    How.BRUSH: "brush out",
    How.VACUUM: "vacuum out",
    How.BLOW: "vacuum and blow out",
    How.WASH: "vacuum and wash out",
}
CLEAN_TOOLS: Mapping[How, str] = {
    How.EMPTY: "catch container",
    How.BRUSH: "soft brush",
    How.VACUUM: "seed vacuum",
    How.BLOW: "air line",
    How.WASH: "wash bucket",
    How.INSPECT: "lamp",
}
SETTING_TOOLS: Mapping[str, str] = {"hub_spacing": "hub spacing gauge"}
Sort = tuple[tuple[str, ...], CleanGroup | None]


def clean_tools(hows: Iterable[How]) -> tuple[str, ...]:
    """Return the tools for cleaning as far as asked, in the order of use."""
    return tuple(CLEAN_TOOLS[how] for how in hows)


def meter_settings(plan: Plan) -> tuple[Setting, ...]:
    """Return the settings that are made inside the meter of each row."""
    here = plan.settings_at(WorkPlace.METER)
    return tuple(setting for setting in here if setting.scope is Scope.ROW)


def meter_tasks(plan: Plan, groups: tuple[CleanGroup, ...]) -> list[Task]:
    """Return the tasks that open the meters.

    Rows that need the same sorts of work and the same cleaning are one task; within it, rows
    with another from → to are named in the line. Rows without any work have none.
    """
    cleaned = {
        row: group
        for group in groups
        if CleanPlace.METER in group.clean.places
        for row in group.rows
    }
    settings = meter_settings(plan)
    work = {
        setting.key: {c.cell.place.row: c for c in plan.changes(setting)} for setting in settings
    }
    sorts: dict[tuple[tuple[str, ...], str], tuple[Sort, list[int]]] = {}
    for row in plan.planter.row_numbers:
        keys = tuple(key for key, changes in work.items() if row in changes)
        group = cleaned.get(row)
        if keys or group:
            sort = (keys, group.key("meter") if group else "")
            sorts.setdefault(sort, ((keys, group), []))[1].append(row)
    ranked = sorted(sorts.values(), key=lambda entry: (-len(entry[1]), entry[1][0]))
    return [_meter_task(plan, sort, rows, work) for sort, rows in ranked]


def _meter_task(
    plan: Plan,
    sort: Sort,
    rows: list[int],
    work: Mapping[str, Mapping[int | None, Change]],
) -> Task:
    keys, group = sort
    settings = [setting for setting in meter_settings(plan) if setting.key in keys]
    changes = {setting.key: tuple(work[setting.key][row] for row in rows) for setting in settings}
    places = tuple(Place.of_row(row) for row in rows)
    parts_in, parts_out = parts_of(c for key in keys for c in changes[key])
    hows = group.clean.places[CleanPlace.METER] if group else ()
    cautions = ["stopped", *(group.clean.caution_keys if group else ())]
    return plan.task(
        _key(keys, group),
        WorkPlace.METER,
        _title(plan, settings, changes, hows),
        places,
        _elements(settings, hows),
        [*cautions, *(["treated"] if plan.treated else [])],
        changes={place: tuple(work[key][place.row] for key in keys) for place in places},
        tools=(*clean_tools(hows), *_setting_tools(settings)),
        steps=_steps(plan, settings, changes, group),
        parts_in=parts_in,
        parts_out=parts_out,
        kind=TaskKind.SET if keys else TaskKind.CLEAN,
        by_tick=group is not None,
        cleans=group.cleans(CleanPlace.METER) if group else frozenset(),
        why=group.clean.why if group else "",
    )


def _key(keys: tuple[str, ...], group: CleanGroup | None) -> str:
    rest = "+".join(keys) or "clean"
    return group.key("meter", rest) if group else f"meter/{rest}"


def _title(
    plan: Plan,
    settings: list[Setting],
    changes: Mapping[str, tuple[Change, ...]],
    hows: tuple[How, ...],
) -> str:
    done = [CLEAN_WORDS[how] for how in hows if how in CLEAN_WORDS][-1:]
    moves = [
        f"{setting.name.lower()} {plan.words.phrase(setting, changes[setting.key], brackets=True)}"
        for setting in settings
    ]
    return ", ".join(["Open meter", *done, *moves, "close"])


def _elements(settings: list[Setting], hows: tuple[How, ...]) -> list[str]:
    clean = (["vacuum_meter"] if hows else []) + (["wash_meter"] if How.WASH in hows else [])
    return ["open_meter", *clean, *map(_element, settings)]


def _element(setting: Setting) -> str:
    if setting.key == "hub_spacing":
        return "set_hub_spacing"
    if setting.kind is Kind.PART:
        return "swap_part"
    return "set_index" if setting.kind is Kind.INDEX else "set_other"


def _setting_tools(settings: list[Setting]) -> tuple[str, ...]:
    return tuple(SETTING_TOOLS[s.key] for s in settings if s.key in SETTING_TOOLS)


def _steps(
    plan: Plan,
    settings: list[Setting],
    changes: Mapping[str, tuple[Change, ...]],
    group: CleanGroup | None,
) -> tuple[str, ...]:
    clean = group.clean.steps[CleanPlace.METER] if group else ()
    into = (f"Seed into the container: {group.clean.into}",) if group else ()
    moves = [plan.words.lines(setting, changes[setting.key]) for setting in settings]
    names = [_part_name(plan, code) for s in settings for code in _parts_on(changes[s.key])]
    hang = ("Hang discs up that come off; do not stack them",) if "disc" in changes else ()
    return (
        *clean[:1],
        *into,
        *clean[1:],
        *(line for lines in moves for line in lines),
        *names,
        *hang,
    )


def _parts_on(changes: tuple[Change, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(str(change.after) for change in changes if change.part))


def _part_name(plan: Plan, code: str) -> str:
    """Say what a part is, or that the parts list does not have it."""
    part = plan.parts.get(code)
    if part is None:
        return f"{code}: not in the parts list, look for it before the meter is open"
    name = part.name or part.sort
    said = part.cells is None or str(part.cells) in name
    return f"{code}: {name}" if said else f"{code}: {name}, {part.cells} cells"
