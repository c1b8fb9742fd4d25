"""Findings on the worklist: each a task of its own, done only when a new reading closes it."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from changeover.desk.prove.proofs import KeptFinding
from changeover.planter.machine import Planter
from changeover.planter.places import PLANTER, Place, Scope
from changeover.planter.settings import WorkPlace
from changeover.proof.findings import Proof
from changeover.quantities import Refusal
from changeover.store.proof_values import FindingState
from changeover.store.unit_of_work import UnitOfWork
from changeover.switch.safe_steps import STOPPED
from changeover.switch.standard_minutes import Minutes
from changeover.switch.tasks import MachineState, Task, TaskKind, Worklist

FINDING = "finding."

# What the work on a finding is made of, by the table of standard minutes: mending, then reading
# again. Starting a drive again has no standard minutes of its own; looking stands for it.
_ELEMENTS: Mapping[Proof, tuple[str, ...]] = {
    Proof.BENCH: ("open_meter", "spin_test"),
    Proof.SPACING: ("dig",),
    Proof.DEPTH: ("set_depth", "dig"),
    Proof.DRIVE: ("look",),
    Proof.VACUUM: ("set_fan", "read_gauge"),
    Proof.WEAR: ("look",),
}
_SWAP = "swap_part"
_WHERE: Mapping[Proof, WorkPlace] = {
    Proof.BENCH: WorkPlace.METER,
    Proof.SPACING: WorkPlace.ROW_UNIT,
    Proof.DEPTH: WorkPlace.ROW_UNIT,
    Proof.DRIVE: WorkPlace.DRIVE,
    Proof.VACUUM: WorkPlace.FAN,
    Proof.WEAR: WorkPlace.ROW_UNIT,
}
_GROUPS = (Scope.FAN, Scope.DRIVE, Scope.TANK)


def with_findings(
    worklist: Worklist, planter: Planter, found: Iterable[KeptFinding], minutes: Minutes
) -> Worklist:
    """Return a worklist with the findings that were made a task after all else.

    Their time adds up from ``minutes`` of the kind of work and of each part that goes on; the
    user's own for the task, or for an element of it, win. Raises Refusal when one is missing.
    """
    safe = tuple(task.key for task in worklist.tasks if task.key.startswith(STOPPED))
    added = [
        replace(finding_task(planter, one, minutes), needs=safe)
        for one in found
        if one.state is FindingState.TASK
    ]
    return replace(worklist, tasks=(*worklist.tasks, *added))


def finding_task(planter: Planter, kept: KeptFinding, minutes: Minutes) -> Task:
    """Return the task that a finding stands for: its place, the advice as steps, its parts."""
    one, key = kept.finding, f"{FINDING}{kept.number}"
    swaps = sum(part.count for part in kept.parts)
    fixed, each = minutes.of_task(key, (*_ELEMENTS[one.proof], *([_SWAP] * swaps)))
    return Task(
        key=key,
        work_place=_WHERE[one.proof],
        title=f"{title_of(kept)}: mend it, then a new {one.proof}",
        places=(place_of(planter, kept),),
        changes={},
        minutes_fixed=fixed,
        minutes_each=each,
        state=MachineState.POWER_OFF,
        cautions=tuple(dict.fromkeys(a.caution for a in one.advice if a.caution)),
        steps=(
            *(f"{a.text} ({a.source})" for a in one.advice),
            f"Then a new {one.proof} closes it.",
        ),
        parts_in=kept.parts,
        why=f"{one.proof}: {one.evidence}",
        kind=TaskKind.SET,
        by_tick=True,
    )


def title_of(kept: KeptFinding) -> str:
    """Return what a finding is called on the worklist: ``Skips on this row alone``."""
    what = kept.finding.what
    return what[:1].upper() + what[1:]


def place_of(planter: Planter, kept: KeptFinding) -> Place:
    """Return where a finding is: its row, the group that its part names, or the planter."""
    if kept.finding.row is not None:
        return Place.of_row(kept.finding.row)
    for sort in _GROUPS:
        for group in planter.groups_of(sort):
            if kept.finding.part.endswith(group.name):
                return group.place
    return PLANTER


def refuse_tick(task: str) -> None:
    """Refuse to tick a finding off: only a new reading closes it."""
    if task.startswith(FINDING):
        raise Refusal(
            "A finding is closed by a new reading alone; enter it on the Proof page when the work "
            "is done."
        )


def acknowledge(
    work: UnitOfWork, planter: str, words: Mapping[int, str], *, proved: str
) -> tuple[str, ...]:
    """Keep the words for each open finding; return them as lines for the setup's note.

    Raises Refusal while a finding is open for which there are no words, or when the setup is
    said to have proved in spite of one.
    """
    lines = []
    for one in work.findings.of(planter):
        if not one.bars_signing:
            continue
        where = place_of(work.planters.get(planter), one).label
        said = words.get(one.number, "").strip()
        if not said:
            raise Refusal(
                f"{planter} cannot be signed off: “{title_of(one)}” is open at {where}; read it "
                "again on the Proof page, or say in words why it may stay."
            )
        if proved:
            raise Refusal(
                f"{planter} has not proved while “{title_of(one)}” is open at {where}; leave out "
                "how it proved, or read it again first."
            )
        work.findings.acknowledge(planter, one.number, said)
        lines.append(f"{where}: {one.finding.what}: “{said}”")
    return tuple(lines)
