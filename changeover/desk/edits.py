"""Edits: everything that can change in a store, as frozen values that ``door.apply`` carries out.

Each says what its writer expected to find (``before``), so that nobody overwrites unseen what
somebody else has saved meanwhile, and each has an inverse, which ``door.apply`` returns.
``says`` are its words in the undo menu.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, ClassVar, Generic, TypeAlias, TypeVar

from changeover.desk.proof_edits import MakeTask, PutProof, WithdrawProof
from changeover.planter.machine import Planter
from changeover.planter.parts import Meter, Part, ShelfCount
from changeover.planter.places import Place
from changeover.planter.settings import Setting
from changeover.planter.setup import Cell, Value
from changeover.quantities import Units
from changeover.seed.fields import Field
from changeover.seed.lots import SeedLot
from changeover.seed.manual import ManualValue
from changeover.store.refusals import Conflict
from changeover.store.values import NextJob, OpenSwitch, PlannedJob, Side
from changeover.switch.tasks import StandardTime, Tick

if TYPE_CHECKING:
    from changeover.switch.own_tasks import OwnTask, Split
    from changeover.switch.shelf_moves import Swap

__all__ = ["Conflict", "Edit", "NextJob", "OpenSwitch", "PlannedJob", "Put", "Side"]

Kept = TypeVar("Kept")


@dataclass(frozen=True)
class SetCells:
    """Set cells of one planter's as-found or target setup; None empties a cell.

    ``before`` holds what stood in each of the cells when the writer looked. It corrects a
    record, so it moves no parts between shelf and planter; ticking off does that. Inverses are
    ``restoring``: what has stood there is put back as it was, a part that is not known too.
    ``note`` is what the writer must be told once it is done; it is not kept.
    """

    says = "Set values"

    planter: str
    side: Side
    values: Mapping[Cell, Value | None]
    before: Mapping[Cell, Value | None]
    why: str = ""
    restoring: bool = False
    note: str = ""


@dataclass(frozen=True)
class ChooseNext:
    """Choose the lot, field and inputs that a planter plants next; starts a switch if none is open.

    The as-found setup of that moment is kept as the switch's ``before``, also when the plan
    changes midway; what is ticked off stays. ``before`` is the job that was chosen until now.
    """

    says = "Choose what comes next"

    planter: str
    job: NextJob
    before: NextJob | None = None
    why: str = ""


@dataclass(frozen=True)
class AbandonSwitch:
    """Give up the open switch of a planter: no next lot, nothing ticked; settings stay."""

    says = "Give the switch up"

    planter: str
    why: str = ""


@dataclass(frozen=True)
class RestoreSwitch:
    """Bring an abandoned switch back as it was."""

    says = "Bring the switch back"

    planter: str
    switch: OpenSwitch
    why: str = ""


@dataclass(frozen=True)
class TakeProposal:
    """Take the proposed values over as target, for some cells or (None) all that have one."""

    says = "Take the proposal"

    planter: str
    cells: frozenset[Cell] | None = None
    units: Units = Units.US
    why: str = ""


@dataclass(frozen=True)
class TickTask:
    """Tick a task off at some of its places, or take the ticks back.

    Ticking sets the as-found cells to their target; taking back sets them to the switch's
    before. A part that is swapped leaves the shelf, and the one that comes off goes back to it
    to be inspected; taking back returns both. ``values``, ``ticks`` and ``swaps`` are filled in
    by inverses, to restore exactly what was.
    """

    says = "Tick off"

    planter: str
    task: str
    places: tuple[Place, ...]
    done: bool = True
    units: Units = Units.US
    values: Mapping[Cell, Value | None] | None = None
    ticks: tuple[Tick, ...] = ()
    swaps: Mapping[Cell, Swap] | None = None
    why: str = ""


@dataclass(frozen=True)
class PutOwnWork:
    """Add, change or (``value`` None) remove a task or a split of one's own in an open switch.

    It survives a new plan of the work; it goes when the switch is closed or given up.
    """

    says = "Change the tasks"

    planter: str
    value: OwnTask | Split | None
    before: OwnTask | Split | None = None
    why: str = ""


@dataclass(frozen=True)
class CloseSwitch:
    """Sign the switch off: saves the setup under a name, with its lot and field.

    Refused while a task is open. ``proved`` says how it proved; then it is your record.
    ``acknowledged`` holds, for each finding that is open, its number and why it may stay.
    """

    says = "Sign the switch off"

    planter: str
    name: str
    note: str = ""
    proved: str = ""
    units: Units = Units.US
    acknowledged: tuple[tuple[int, str], ...] = ()
    why: str = ""


@dataclass(frozen=True)
class ReopenSwitch:
    """Take a signing-off back: the switch is open again and its saved setup withdrawn."""

    says = "Open the switch again"

    planter: str
    name: str
    target: Mapping[Cell, Value]
    closing: CloseSwitch
    why: str = ""


@dataclass(frozen=True)
class SaveSetup:
    """Save the as-found setup of a planter under a name."""

    says = "Save the setup"

    planter: str
    name: str
    note: str = ""
    proved: str = ""
    lot: str | None = None
    field: str | None = None
    why: str = ""


@dataclass(frozen=True)
class WithdrawSetup:
    """Withdraw a saved setup from the lists, or (``withdrawn`` False) bring it back."""

    says = "Withdraw the setup"

    planter: str
    name: str
    withdrawn: bool = True
    why: str = ""


@dataclass(frozen=True)
class Put(Generic[Kept]):
    """Put a value in the store: new (``before`` None), changed, or removed (``value`` None)."""

    says: ClassVar[str]

    value: Kept | None
    before: Kept | None = None
    why: str = ""


class PutPlanter(Put[Planter]):
    """Add, change, rename or retire a planter."""

    says = "Change the planter"


class PutSettings(Put[tuple[Setting, ...]]):
    """Put the whole list of settings in the user's order: add, rename, reorder, hide."""

    says = "Change the settings"


class PutLot(Put[SeedLot]):
    """Add, change or remove a seed lot."""

    says = "Change the seed lot"


class PutField(Put[Field]):
    """Add, change or remove a field."""

    says = "Change the field"


class PutJob(Put[PlannedJob]):
    """Add, change or remove a field job of the season."""

    says = "Change the job"


class PutPart(Put[Part]):
    """Add, change or remove a kind of part."""

    says = "Change the part"


class SetShelf(Put[ShelfCount]):
    """Set how many of a part lie on the shelf in one condition."""

    says = "Count the shelf"


class PutManual(Put[ManualValue]):
    """Add, change or remove a value from the user's own manual."""

    says = "Change the manual value"


class PutTime(Put[StandardTime]):
    """Set the user's own minutes for a task."""

    says = "Change the minutes"


class PutMeters(Put[tuple[Meter, ...]]):
    """Put several meters at once, such as two that change places; matched by serial."""

    says = "Move meters"


@dataclass(frozen=True)
class Several:
    """Carry several edits out in their order, in one transaction: all of them or none."""

    edits: tuple[Edit, ...]
    says: str = "Change several things"
    why: str = ""


Edit: TypeAlias = (
    Put[Any]
    | SetCells
    | ChooseNext
    | AbandonSwitch
    | RestoreSwitch
    | TakeProposal
    | TickTask
    | PutOwnWork
    | CloseSwitch
    | ReopenSwitch
    | SaveSetup
    | WithdrawSetup
    | SetShelf
    | PutProof
    | WithdrawProof
    | MakeTask
    | Several
)
