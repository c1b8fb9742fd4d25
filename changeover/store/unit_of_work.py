"""A unit of work: everything in a store within one transaction and one history entry."""

from functools import cached_property

from sqlalchemy.orm import Session

from changeover.planter.parts import Meter, Part, ShelfCount
from changeover.proof.own_limits import OwnLimit
from changeover.proof.price_book import PriceBook
from changeover.seed.fields import Field
from changeover.seed.lots import SeedLot
from changeover.seed.manual import ManualValue
from changeover.store.appraisal_values import KeptAppraisal
from changeover.store.appraisals import APPRAISAL, PRICES, WEAR_LIMIT, Photos
from changeover.store.cells import Cells
from changeover.store.crew_sorts import DELIVERY, FIXING, FLUSH, MEMBER, SEASON, TOOL
from changeover.store.journal import History, Journal
from changeover.store.own_work import OwnWorkOf
from changeover.store.planters import Planters, Seen
from changeover.store.proof_findings import Findings
from changeover.store.proofs import Proofs
from changeover.store.season_values import Delivery, Fixing, FlushRecord, SeasonRules
from changeover.store.settings_list import SettingsList
from changeover.store.setups import Setups
from changeover.store.shelf_of_values import Sort, Values
from changeover.store.stock_tables import (
    FieldRow,
    JobRow,
    LotRow,
    ManualRow,
    MeterRow,
    PartRow,
    ShelfRow,
    TimeRow,
)
from changeover.store.switch_tables import AboutRow
from changeover.store.switches import Switches
from changeover.store.values import PlannedJob
from changeover.switch.crew import CrewMember, SharedTool
from changeover.switch.tasks import StandardTime

LOT = Sort(SeedLot, LotRow, "lot", ("number",))
FIELD = Sort(Field, FieldRow, "field", ("name",))
JOB = Sort(PlannedJob, JobRow, "job", ("name",))
PART = Sort(Part, PartRow, "part", ("code",))
SHELF = Sort(ShelfCount, ShelfRow, "shelf count", ("part", "condition"))
METER = Sort(Meter, MeterRow, "meter", ("serial",))
TIME = Sort(StandardTime, TimeRow, "standard time", ("task",))
MANUAL = Sort(ManualValue, ManualRow, "manual value", ("crop", "setting", "planter", "part"))

_DEMO = "demo"


class UnitOfWork:
    """What a store holds, by sort; changes are kept when the unit of work ends without error."""

    def __init__(
        self, session: Session, journal: Journal | None = None, seen: Seen | None = None
    ) -> None:
        self._session, self._journal = session, journal
        self.planters = Planters(session, journal, seen)
        self.settings = SettingsList(session, journal)
        self.cells = Cells(session, journal, self.planters)
        self.switches = Switches(session, journal, self.planters)
        self.own_work = OwnWorkOf(session, journal, self.switches)
        self.setups = Setups(session, journal, self.planters)
        self.proofs = Proofs(session, journal, self.planters)
        self.findings = Findings(session, journal, self.planters)
        self.lots: Values[SeedLot] = Values(session, journal, LOT)
        self.fields: Values[Field] = Values(session, journal, FIELD)
        self.jobs: Values[PlannedJob] = Values(session, journal, JOB)
        self.parts: Values[Part] = Values(session, journal, PART)
        self.shelf: Values[ShelfCount] = Values(session, journal, SHELF)
        self.meters: Values[Meter] = Values(session, journal, METER)
        self.times: Values[StandardTime] = Values(session, journal, TIME)
        self.manual: Values[ManualValue] = Values(session, journal, MANUAL)
        self.prices: Values[PriceBook] = Values(session, journal, PRICES)
        self.wear_limits: Values[OwnLimit] = Values(session, journal, WEAR_LIMIT)
        self.appraisals: Values[KeptAppraisal] = Values(session, journal, APPRAISAL)
        self.crew: Values[CrewMember] = Values(session, journal, MEMBER)
        self.tools: Values[SharedTool] = Values(session, journal, TOOL)
        self.season: Values[SeasonRules] = Values(session, journal, SEASON)
        self.fixings: Values[Fixing] = Values(session, journal, FIXING)
        self.deliveries: Values[Delivery] = Values(session, journal, DELIVERY)
        self.flushes: Values[FlushRecord] = Values(session, journal, FLUSH)
        self.photos = Photos(session, journal)
        self.history = History(session)

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
