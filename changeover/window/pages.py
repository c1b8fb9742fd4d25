"""The pages of the window in the order of the rail; each is imported when first shown."""

from dataclasses import dataclass
from importlib import import_module

from changeover.window.page import Page


@dataclass(frozen=True)
class PageLine:
    """One step of the rail: its key, its title and where its class stands."""

    key: str
    title: str
    module: str
    name: str

    def load(self) -> type[Page]:
        """Import and return the class of the page."""
        found: type[Page] = getattr(import_module(self.module), self.name)
        return found


PAGES: tuple[PageLine, ...] = (
    PageLine("rows", "Rows", "changeover.window.workbench_page", "RowsPage"),
    PageLine("seed", "Seed", "changeover.window.seed.page", "SeedPage"),
    PageLine("switch", "Switch", "changeover.window.workbench_page", "SwitchPage"),
    PageLine("work", "Work", "changeover.window.work.page", "WorkPage"),
    PageLine("proof", "Proof", "changeover.window.proof.page", "ProofPage"),
    PageLine("season", "Season", "changeover.window.season.page", "SeasonPage"),
    PageLine("shelf", "Shelf", "changeover.window.shelf.page", "ShelfPage"),
    PageLine("record", "Record", "changeover.window.record.page", "RecordPage"),
    PageLine("appraise", "Trade-in", "changeover.window.appraisal.page", "TradeInPage"),
    PageLine("planter", "Planters", "changeover.window.planter.page", "PlantersPage"),
)
