"""The look-up: from lot and field job to one proposal for every cell, each with its reason."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from types import MappingProxyType

from changeover.planter.machine import Planter
from changeover.planter.parts import Meter, Part, ShelfCount
from changeover.planter.places import Place, Scope
from changeover.planter.settings import Setting
from changeover.planter.setup import Cell, Setup, Value, applies
from changeover.quantities import Units
from changeover.seed.bench_run import BenchSeen
from changeover.seed.case import Case
from changeover.seed.choices import Choice, answer_at, choose
from changeover.seed.crops import Crop
from changeover.seed.depth_rows import propose_depth
from changeover.seed.fields import FieldJob
from changeover.seed.figures import figures_of, figures_of_lot
from changeover.seed.hub_spacing import propose_hub_spacing
from changeover.seed.load_target import is_load_setting
from changeover.seed.lots import SeedLot
from changeover.seed.manual import ManualValue, ProvedSetup
from changeover.seed.proposal_warnings import warnings_of
from changeover.seed.reasons import Proposal, Proposed, Reason, Trust
from changeover.seed.row_locks import LOCKED_REASON, RowPlan, plan_rows
from changeover.seed.trust_order import Answer, no_ground, reasoned, settle

ROW_BY_ROW = ("depth", "hub_spacing")
NO_LOTS: Mapping[Place, SeedLot] = MappingProxyType({})


def propose(
    planter: Planter,
    settings: tuple[Setting, ...],
    as_found: Setup,
    lot: SeedLot,
    job: FieldJob,
    crops: Mapping[str, Crop],
    parts: tuple[Part, ...],
    shelf: tuple[ShelfCount, ...],
    manual: tuple[ManualValue, ...],
    records: tuple[ProvedSetup, ...],
    meters: tuple[Meter, ...],
    units: Units,
    other_lots: Mapping[Place, SeedLot] = NO_LOTS,
    bench: tuple[BenchSeen, ...] = (),
) -> Proposal:
    """Return a proposal for every cell of every setting that applies, with figures and warnings.

    ``crops`` is the crop table from ``read_crops``; ``other_lots`` names tanks (or rows, on a
    planter with row hoppers) that take another lot than ``lot``; ``bench`` holds what bench runs
    showed, the latest first. Where there is no ground a
    value is None and its reason says so. ``units`` decides only how reasons read. Raises Refusal
    for inputs that no planter or seed can have.
    """
    for place in other_lots:
        planter.rows_of(place)
    plan = plan_rows(planter, as_found, job.row_spacing, units)
    base = Case(
        planter,
        as_found,
        lot,
        crop_of(crops, lot),
        job,
        plan.rows,
        plan.spacing,
        parts,
        shelf,
        manual,
        records,
        meters,
        units,
        bench,
    )
    choices = tuple(choose(case, settings) for case in _cases(base, crops, other_lots))
    cells: dict[Cell, Proposed] = {}
    warnings: list[str] = [*plan.warnings]
    for setting in settings:
        if applies(planter, setting) and not setting.record_only:
            found, more = _cells_of(setting, choices, plan)
            cells |= found
            warnings += more
    main = choices[0]
    figures = figures_of(main.case, main.seed_rate, main.disc)
    for other in choices[1:]:
        figures += figures_of_lot(other.case, other.seed_rate)
    warnings += warnings_of(choices)
    return Proposal(cells, figures, tuple(dict.fromkeys(warnings)))


def crop_of(crops: Mapping[str, Crop], lot: SeedLot) -> Crop:
    """Return a lot's crop; one that the table does not know has no figures, only its name."""
    rules = next(iter(crops.values())).rules if crops else Crop("", "").rules
    return crops.get(lot.crop) or Crop(lot.crop, lot.crop, kind=lot.crop, rules=rules)


def _cases(
    base: Case, crops: Mapping[str, Crop], other_lots: Mapping[Place, SeedLot]
) -> Iterable[Case]:
    """Give one case for each lot, the main one first, with the working rows that take it."""
    planter = base.planter
    by_lot: dict[str, tuple[SeedLot, list[int]]] = {base.lot.number: (base.lot, [])}
    for row in base.rows:
        lot = other_lots.get(planter.place(Scope.TANK, row), base.lot)
        by_lot.setdefault(lot.number, (lot, []))[1].append(row)
    for lot, rows in by_lot.values():
        if rows or lot is base.lot:
            yield replace(base, lot=lot, crop=crop_of(crops, lot), rows=tuple(rows))


Found = tuple[dict[Cell, Proposed], tuple[str, ...]]


def _cells_of(setting: Setting, choices: tuple[Choice, ...], plan: RowPlan) -> Found:
    """Return the cells of one setting: locked rows kept, the others as their lot asks."""
    base = choices[0].case
    if setting.key == "row_lock":
        return plan.cells, ()
    if setting.hidden or (setting.own and not is_load_setting(setting)):
        return _kept_cells(setting, choices, plan), ()
    if setting.key in ROW_BY_ROW:
        found, warnings = _row_by_row(setting, choices)
    else:
        found, warnings = _place_by_place(setting, choices)
    for place in base.planter.places(setting.scope):
        cell = Cell(setting.key, place)
        if cell not in found:
            found[cell] = Proposed(cell, base.as_found.get(cell), LOCKED_REASON)
    return found, warnings


def _row_by_row(setting: Setting, choices: tuple[Choice, ...]) -> Found:
    cells: dict[Cell, Proposed] = {}
    warnings: tuple[str, ...] = ()
    for choice in choices:
        if setting.key == "depth":
            found, more = propose_depth(choice.case, setting)
            warnings += more
        else:
            code = choice.disc.code if choice.disc else None
            found = propose_hub_spacing(choice.case, setting, code)
        cells |= found
    return cells, warnings


def _place_by_place(setting: Setting, choices: tuple[Choice, ...]) -> Found:
    """Return the cells of a setting whose answer is one for every row of a place that works."""
    planter = choices[0].case.planter
    cells: dict[Cell, Proposed] = {}
    warnings: tuple[str, ...] = ()
    alike: dict[tuple[object, ...], Answer] = {}
    served = {row: choice for choice in choices for row in choice.case.rows}
    ran = choices[0].case.bench if setting.key == "singulator" else ()
    apart = {run.row for run in ran}
    for place in planter.places(setting.scope):
        here = [served[row] for row in planter.rows_of(place) if row in served]
        if not here:
            continue
        lots = tuple(dict.fromkeys(choice.case.lot.number for choice in here))
        row = place.row
        alone = row is None or row in apart
        key = (lots, place if alone else row in planter.wheel_track_rows)
        if key not in alike:
            alike[key] = answer_at(setting, place, tuple(dict.fromkeys(here)))
            warnings += alike[key].warnings
        answer, cell = alike[key], Cell(setting.key, place)
        cells[cell] = Proposed(cell, answer.value, answer.reason, answer.low, answer.high)
    return cells, warnings


def _kept_cells(
    setting: Setting, choices: tuple[Choice, ...], plan: RowPlan
) -> dict[Cell, Proposed]:
    """Return the cells of the user's own or a hidden setting: the manual's value, or as found."""
    case = choices[0].case
    word = "A hidden setting is kept as found." if setting.hidden else "Kept as found."
    kept = reasoned("kept as found", word, "as found", Trust.RECORD)
    code = choices[0].disc.code if choices[0].disc else None
    answers: dict[Value | None, Answer] = {}
    cells = {}
    for place in case.planter.places(setting.scope):
        cell = Cell(setting.key, place)
        found = case.as_found.get(cell)
        if not set(case.planter.rows_of(place)) & set(plan.rows):
            cells[cell] = Proposed(cell, found, LOCKED_REASON)
            continue
        if found not in answers:
            own = no_ground("kept as found", "None is found.")
            own = own if found is None else Answer(found, kept)
            answers[found] = own if setting.hidden else settle(case, setting, place, own, disc=code)
        answer = answers[found]
        cells[cell] = Proposed(cell, answer.value, answer.reason)
    return cells


def rules_named(proposal: Proposal) -> tuple[str, ...]:
    """Return the names of the rules that a proposal rests on, each once."""
    reasons: Iterable[Reason] = (one.reason for one in proposal.cells.values())
    return tuple(dict.fromkeys(reason.rule for reason in reasons))
