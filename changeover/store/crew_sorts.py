"""The sorts of value that the crew and the season keep in a store."""

from changeover.store.crew_tables import (
    CrewRow,
    DeliveryRow,
    FixingRow,
    FlushRow,
    SeasonRow,
    ToolRow,
)
from changeover.store.season_values import Delivery, Fixing, FlushRecord, SeasonRules
from changeover.store.shelf_of_values import Sort
from changeover.switch.crew import CrewMember, SharedTool

MEMBER = Sort(CrewMember, CrewRow, "person", ("name",))
TOOL = Sort(SharedTool, ToolRow, "shared tool", ("name",))
SEASON = Sort(SeasonRules, SeasonRow, "season", ("name",))
FIXING = Sort(Fixing, FixingRow, "fixed job", ("job",))
DELIVERY = Sort(Delivery, DeliveryRow, "delivery", ("part",))
FLUSH = Sort(FlushRecord, FlushRow, "flush", ("planter", "lot", "when"))
