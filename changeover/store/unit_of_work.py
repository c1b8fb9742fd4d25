"""A unit of work: everything in a store within one transaction and one history entry."""

from __future__ import annotations

from functools import cached_property
from importlib import import_module
from typing import TYPE_CHECKING, Any

from sqlalchemy.orm import Session

from changeover.planter.parts import Meter, Part, ShelfCount
from changeover.seed.fields import Field
from changeover.seed.lots import SeedLot
from changeover.store.cells import Cells
from changeover.store.journal import Journal
from changeover.store.planters import Planters, Seen
from changeover.store.settings_list import SettingsList
from changeover.store.setups import Setups
from changeover.store.shelf_of_values import Sort, Values
from changeover.store.stock_tables import (
    FieldRow,
    LotRow,
    MeterRow,
    PartRow,
    ShelfRow,
)
from changeover.store.switch_tables import AboutRow
from changeover.store.switches import Switches

if TYPE_CHECKING:
    from changeover.proof.own_limits import OwnLimit
    from changeover.proof.price_book import PriceBook
    from changeover.seed.manual import ManualValue
    from changeover.store.appraisal_values import KeptAppraisal
    from changeover.store.appraisals import Photos
    from changeover.store.history import History
    from changeover.store.own_work import OwnWorkOf
    from changeover.store.proof_findings import Findings
    from changeover.store.proofs import Proofs
    from changeover.store.season_values import Delivery, Fixing, FlushRecord, SeasonRules
    from changeover.store.values import PlannedJob
    from changeover.switch.crew import CrewMember, SharedTool
    from changeover.switch.tasks import StandardTime

LOT = Sort(SeedLot, LotRow, "lot", ("number",))
FIELD = Sort(Field, FieldRow, "field", ("name",))
PART = Sort(Part, PartRow, "part", ("code",))
SHELF = Sort(ShelfCount, ShelfRow, "shelf count", ("part", "condition"))
METER = Sort(Meter, MeterRow, "meter", ("serial",))

_DEMO = "demo"


class UnitOfWork:
    """What a store holds, by sort; changes are kept when the unit of work ends without error.

    To map a table takes time, and the first page of the window needs few of them: the others,
    such as those of the crew, the proofs and the trade-ins, are mapped when first asked for.
    """

    def __init__(
        self, session: Session, journal: Journal | None = None, seen: Seen | None = None
    ) -> None:
        self._session, self._journal = session, journal
        self.planters = Planters(session, journal, seen)
        self.settings = SettingsList(session, journal)
        self.cells = Cells(session, journal, self.planters)
        self.switches = Switches(session, journal, self.planters)
        self.setups = Setups(session, journal, self.planters)
        self.lots: Values[SeedLot] = Values(session, journal, LOT)
        self.fields: Values[Field] = Values(session, journal, FIELD)
        self.parts: Values[Part] = Values(session, journal, PART)
        self.shelf: Values[ShelfCount] = Values(session, journal, SHELF)
        self.meters: Values[Meter] = Values(session, journal, METER)

    @cached_property
    def jobs(self) -> Values[PlannedJob]:
        return self._later("look_up_sorts", "JOB")

    @cached_property
    def times(self) -> Values[StandardTime]:
        return self._later("look_up_sorts", "TIME")

    @cached_property
    def manual(self) -> Values[ManualValue]:
        return self._later("look_up_sorts", "MANUAL")

    @cached_property
    def prices(self) -> Values[PriceBook]:
        return self._later("appraisals", "PRICES")

    @cached_property
    def wear_limits(self) -> Values[OwnLimit]:
        return self._later("appraisals", "WEAR_LIMIT")

    @cached_property
    def appraisals(self) -> Values[KeptAppraisal]:
        return self._later("appraisals", "APPRAISAL")

    @cached_property
    def crew(self) -> Values[CrewMember]:
        return self._later("crew_sorts", "MEMBER")

    @cached_property
    def tools(self) -> Values[SharedTool]:
        return self._later("crew_sorts", "TOOL")

    @cached_property
    def season(self) -> Values[SeasonRules]:
        return self._later("crew_sorts", "SEASON")

    @cached_property
    def fixings(self) -> Values[Fixing]:
        return self._later("crew_sorts", "FIXING")

    @cached_property
    def deliveries(self) -> Values[Delivery]:
        return self._later("crew_sorts", "DELIVERY")

    @cached_property
    def flushes(self) -> Values[FlushRecord]:
        return self._later("crew_sorts", "FLUSH")

    @cached_property
    def history(self) -> History:
        from changeover.store.history import History

        return History(self._session)

    @cached_property
    def own_work(self) -> OwnWorkOf:
        from changeover.store.own_work import OwnWorkOf

        return OwnWorkOf(self._session, self._journal, self.switches)

    @cached_property
    def proofs(self) -> Proofs:
        from changeover.store.proofs import Proofs

        return Proofs(self._session, self._journal, self.planters)

    @cached_property
    def findings(self) -> Findings:
        from changeover.store.proof_findings import Findings

        return Findings(self._session, self._journal, self.planters)

    @cached_property
    def photos(self) -> Photos:
        from changeover.store.appraisals import Photos

        return Photos(self._session, self._journal)

    @property
    def who(self) -> str:
        return self._journal.who if self._journal is not None else ""

    @property
    def when(self) -> str:
        """The moment of this unit of work, ISO 8601 text in UTC; empty when it only reads."""
        return self._journal.when if self._journal is not None else ""

    @property
    def entry(self) -> int:
        """The number of the history entry, 0 until it is written or when nothing changed."""
        return self._journal.entry if self._journal is not None else 0

    @cached_property
    def demo(self) -> bool:
        """Whether all names in this store are invented."""
        return self._session.get(AboutRow, _DEMO) is not None

    def mark_demo(self, says: str) -> None:
        """Mark this store as the demo, with the sentence that says so."""
        self._session.merge(AboutRow(key=_DEMO, value=says))
        self._session.flush()

    def _later(self, module: str, sort: str) -> Values[Any]:
        """Return the values of a sort that a module of this folder declares."""
        found: Sort[Any] = getattr(import_module(f"changeover.store.{module}"), sort)
        return Values(self._session, self._journal, found)
