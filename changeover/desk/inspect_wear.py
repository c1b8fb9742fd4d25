"""Wear inspections: readings of parts by row, judged, compared with earlier ones, and saved."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

from changeover.desk.prove.proofs import PutProof, TakenProof
from changeover.desk.wear_parts import parts_for
from changeover.files.wear_limits import bundled_wear_limits
from changeover.proof.findings import Proof
from changeover.proof.own_limits import OwnLimit, with_own
from changeover.proof.verdict_findings import wear_findings
from changeover.proof.wear import (
    Kind,
    WearLimit,
    WearRate,
    WearReading,
    WearVerdict,
    judge_wear,
    limit_for,
    wear_rate,
)
from changeover.quantities import Quantity, Refusal, Units, is_quantity, read_quantity, show
from changeover.store.opening import Store
from changeover.store.unit_of_work import UnitOfWork

Spot = tuple[int, str]
Value = Quantity | bool
FINE = frozenset({"g", "good", "f", "fine", "ok", "y", "yes", "✓"})
NOT_FINE = frozenset({"r", "replace", "b", "bad", "n", "no", "x", "✕"})


@dataclass(frozen=True)
class Inspection:
    """One inspection: what was read of each part (a text) on each row, on one day.

    ``worked`` is the area that the planter had done by then, None when not known; ``applies``
    says by part which variant of limit holds, such as ``15 in new``; ``number`` is the store's.
    """

    day: date
    cells: Mapping[Spot, Value] = field(default_factory=dict)
    applies: Mapping[str, str] = field(default_factory=dict)
    worked: Quantity | None = None
    note: str = ""
    number: int = 0

    def reading(self, spot: Spot) -> WearReading:
        """Return one reading as it is judged."""
        row, part = spot
        applies = self.applies.get(part, "")
        return WearReading(row, part, self.cells[spot], self.day, self.worked, applies)

    @property
    def rows(self) -> tuple[int, ...]:
        """The rows with at least one reading, from the left."""
        return tuple(sorted({row for row, _ in self.cells}))


@dataclass(frozen=True)
class WearView:
    """All that is known of the wear of one planter.

    ``limits`` has those of the user's manual first, ``own`` just those; ``inspections`` the
    latest first.
    """

    limits: tuple[WearLimit, ...]
    own: tuple[OwnLimit, ...]
    inspections: tuple[Inspection, ...]


def wear_view(store: Store, planter: str) -> WearView:
    """Return limits and inspections of a planter. Raises Refusal."""
    with store.read() as work:
        return view_of(work, planter)


def view_of(work: UnitOfWork, planter: str) -> WearView:
    """Return the same within a unit of work that is already open."""
    own = work.wear_limits.all()
    found = [inspection_of(one) for one in work.proofs.of(planter, Proof.WEAR)]
    found.sort(key=lambda one: (one.day, one.number), reverse=True)
    return WearView(with_own(own, bundled_wear_limits()), own, tuple(found))


def parts_of(limits: Iterable[WearLimit]) -> tuple[str, ...]:
    """Return the parts that are inspected: those published in their order, then one's own."""
    return tuple(dict.fromkeys([one.part for one in (*bundled_wear_limits(), *limits)]))


def variants(part: str, limits: Iterable[WearLimit]) -> tuple[str, ...]:
    """Return the variants for which a part has limits of its own, such as ``15 in new``."""
    return tuple(dict.fromkeys(one.applies for one in limits if one.part == part and one.applies))


def limit_of(part: str, inspection: Inspection, limits: Sequence[WearLimit]) -> WearLimit | None:
    """Return the limit that holds for a part in an inspection, None where there is none."""
    return limit_for(part, inspection.applies.get(part, ""), limits)


def read_cell(
    inspection: Inspection, spot: Spot, text: str, limits: Sequence[WearLimit], units: Units
) -> Value | None:
    """Read one typed cell: a length where the part is measured, else good or replace.

    Returns None for an empty text. Raises Refusal for what the part cannot have.
    """
    plain = text.strip()
    if not plain:
        return None
    row, part = spot
    limit = limit_of(part, inspection, limits)
    name = limit.name if limit is not None else part
    looked = limit is None or limit.kind is Kind.LOOK
    value = (
        _looked(plain, f"Row {row}, {name}")
        if looked
        else read_quantity(plain, "diameter", units, f"Row {row}, {name}")
    )
    judge_wear(
        WearReading(row, part, value, inspection.day, applies=_applies(spot, inspection)), limits
    )
    return value


def show_cell(value: Value | None, units: Units) -> str:
    """Write a reading as it is typed; empty for none."""
    if value is None:
        return ""
    if is_quantity(value):
        return show(value, "diameter", units, sign=False)
    return "good" if value else "replace"


def judge(inspection: Inspection, limits: Sequence[WearLimit]) -> dict[Spot, WearVerdict]:
    """Return the verdict on every reading. Raises Refusal for one that cannot be.

    A look is judged by limits for a look and a length by those for a length, so that what was
    read before a part had a limit of the other sort still stands.
    """
    looks = tuple(one for one in limits if one.kind is Kind.LOOK)
    lengths = tuple(one for one in limits if one.kind is not Kind.LOOK)
    return {
        spot: judge_wear(inspection.reading(spot), looks if isinstance(value, bool) else lengths)
        for spot, value in inspection.cells.items()
    }


def rates(
    now: Inspection, earlier: Sequence[Inspection], limits: Sequence[WearLimit]
) -> dict[Spot, WearRate]:
    """Return the wear since the latest earlier inspection that read the same part of the row.

    Only for parts that wear towards one bound; pairs that make no rate are left out.
    """
    before = sorted((one for one in earlier if one.day < now.day), key=lambda one: one.day)
    found: dict[Spot, WearRate] = {}
    for spot, value in now.cells.items():
        limit = limit_of(spot[1], now, limits)
        last = next((one for one in reversed(before) if spot in one.cells), None)
        if last is None or limit is None or limit.kind not in (Kind.LEAST, Kind.MOST):
            continue
        if is_quantity(value) and is_quantity(last.cells[spot]):
            found[spot] = _rate(last, now, spot, limit)
    return found


def save(
    store: Store, planter: str, inspection: Inspection, limits: Sequence[WearLimit]
) -> PutProof:
    """Return the edit that saves an inspection with the findings and parts that it asks for.

    An inspection older than the latest one is kept for the rate of wear; it raises nothing and
    closes nothing. Raises Refusal when nothing is entered, for a row that the planter lacks, and
    for a reading that cannot be.
    """
    with store.read() as work:
        rows = work.planters.get(planter).rows
        latest = view_of(work, planter).inspections[:1]
        _refuse(planter, rows, inspection)
        verdicts = judge(inspection, limits)
        old = bool(latest) and inspection.day < latest[0].day
        found = () if old else wear_findings(verdicts[spot] for spot in sorted(verdicts))
        needs = tuple(parts_for(work, planter, one) for one in found)
    proof = TakenProof(
        planter,
        Proof.WEAR,
        readings_of(inspection),
        note=inspection.note,
        settles=frozenset() if old else frozenset((row, part) for row, part in inspection.cells),
    )
    return PutProof(proof, found, needs, f"wear inspection of {inspection.day.isoformat()}")


def readings_of(inspection: Inspection) -> dict[str, object]:
    """Return an inspection as the store keeps readings."""
    rows: dict[str, dict[str, Value]] = {}
    for (row, part), value in sorted(inspection.cells.items(), key=lambda one: one[0]):
        rows.setdefault(str(row), {})[part] = value
    whole: dict[str, object] = {"day": inspection.day.isoformat(), "rows": rows}
    if inspection.applies:
        whole["applies"] = dict(inspection.applies)
    if inspection.worked is not None:
        whole["worked"] = inspection.worked
    return whole


def inspection_of(proof: TakenProof) -> Inspection:
    """Return the inspection that a proof of the store holds."""
    kept = proof.readings
    return Inspection(
        date.fromisoformat(kept["day"]),
        {(int(row), part): v for row, parts in kept["rows"].items() for part, v in parts.items()},
        dict(kept.get("applies", {})),
        kept.get("worked"),
        proof.note,
        proof.number,
    )


def _looked(text: str, where: str) -> bool:
    word = text.casefold()
    if word in FINE:
        return True
    if word in NOT_FINE:
        return False
    raise Refusal(f"{where}: one only looks at it; type g for good or r for replace.")


def _applies(spot: Spot, inspection: Inspection) -> str:
    return inspection.applies.get(spot[1], "")


def _rate(last: Inspection, now: Inspection, spot: Spot, limit: WearLimit) -> WearRate:
    first, second = last.reading(spot), now.reading(spot)
    known = first.worked is not None and second.worked is not None
    if known and second.worked <= first.worked:  # type: ignore[operator]
        first = WearReading(first.row, first.part, first.value, first.on, None, first.applies)
    return wear_rate(first, second, limit)


def _refuse(planter: str, rows: int, inspection: Inspection) -> None:
    if not inspection.cells:
        raise Refusal("Nothing is entered yet; read at least one part of one row.")
    stray = [row for row in inspection.rows if not 1 <= row <= rows]
    if stray:
        raise Refusal(f"{planter} has no row {stray[0]}; it has rows 1 to {rows}.")
