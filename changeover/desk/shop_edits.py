"""Edits of what the shop keeps beside planters: crew, season, prices, wear limits, trade-ins."""

from changeover.desk.edits import Put
from changeover.proof.own_limits import OwnLimit
from changeover.proof.price_book import PriceBook
from changeover.store.appraisal_values import KeptAppraisal, Photo
from changeover.store.season_values import Delivery, Fixing, FlushRecord, SeasonRules
from changeover.switch.crew import CrewMember, SharedTool


class PutPrices(Put[PriceBook]):
    """Import, replace or remove a price list."""

    says = "Import the price list"


class PutWearLimit(Put[OwnLimit]):
    """Add, change or remove a wear limit from the user's own manual."""

    says = "Change the wear limit"


class PutAppraisal(Put[KeptAppraisal]):
    """Add, change or remove an appraisal."""

    says = "Change the appraisal"


class PutPhoto(Put[Photo]):
    """Attach a photo to an appraisal, change its words, or take it off."""

    says = "Change the photos"


class PutMember(Put[CrewMember]):
    """Add, change or remove a person of the crew."""

    says = "Change the crew"


class PutTool(Put[SharedTool]):
    """Add, change or remove a shared tool."""

    says = "Change the tools"


class PutSeason(Put[SeasonRules]):
    """Set what the season is reckoned with."""

    says = "Change the season"


class PutFixing(Put[Fixing]):
    """Fix a job of the season on a planter, move it, or let it go."""

    says = "Fix the job"


class PutDelivery(Put[Delivery]):
    """Set how many days a part takes to be delivered."""

    says = "Change the delivery"


class PutFlush(Put[FlushRecord]):
    """Enter a flush into the clean-out log, or take it out again."""

    says = "Log the flush"
