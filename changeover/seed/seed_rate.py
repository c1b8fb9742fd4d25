"""Seed rate: as wanted, reckoned from the stand wanted, or from the crop table."""

from dataclasses import dataclass, replace

from changeover.quantities import Quantity, show
from changeover.seed import rate
from changeover.seed.case import Case
from changeover.seed.crops import CropFigure
from changeover.seed.reasons import Input, Trust
from changeover.seed.trust_order import Answer, no_ground, reasoned

RULE = "seed rate"
BY_DEFINITION = "by definition; University of Arizona az1203 and NDSU A1961 multiply the same way"


@dataclass(frozen=True)
class Shares:
    """The share of seeds that germinate and of live seeds that come up, with words for whence.

    ``meter_error`` is the share that the meters drop too few, below 0 for too many.
    """

    germination: float
    emergence: float
    germination_says: str
    emergence_says: str
    meter_error: float = 0.0
    meter_says: str = "not entered: none"

    @property
    def standing(self) -> float:
        """The plants that stand for each seed of the rate entered in the cab."""
        return self.germination * self.emergence * (1.0 - self.meter_error)


def shares_of(case: Case) -> Shares:
    """Return germination and emergence: the lot's and job's own, else print, else all.

    Without a figure of its own a share is taken as 100 %, and its words say so.
    """
    germination = case.lot.germination
    says = f"{germination:.0%}, from the lot’s tag" if germination else "not entered: 100 %"
    emergence, told = _emergence(case, germination or 1.0)
    found = Shares(germination or 1.0, emergence, says, told)
    error = case.job.meter_error
    if error is None:
        return found
    return replace(found, meter_error=error, meter_says=f"{few_or_many(error)}, as you expect")


def few_or_many(error: float) -> str:
    """Say a meter error in words: ``1.0% too few``."""
    return f"{abs(error):.1%} too {'few' if error >= 0 else 'many'}"


def _emergence(case: Case, germination: float) -> tuple[float, str]:
    """Return the share of live seeds that come up, and whence.

    A printed share of the seeds sown holds germination already, so that is taken out again.
    """
    if case.job.emergence is not None:
        return case.job.emergence, f"{case.job.emergence:.0%}, as you expect"
    if figure := case.crop.best("emergence"):
        share = float(figure.middle.to("count").magnitude)
        return share, f"{share:.0%} of live seeds ({figure.source})"
    if figure := case.crop.best("field_emergence"):
        share = float(figure.middle.to("count").magnitude)
        told = f"{share:.0%} of the seeds sown, germination among them ({figure.source})"
        return min(1.0, share / germination), told
    return 1.0, "not entered: 100 %"


def rate_wanted(case: Case) -> Quantity | None:
    """Return the seed rate alone, seeds per area: as asked, the stand's, or the crop table's.

    None when there is no ground for one. Raises Refusal for input out of bounds.
    """
    job = case.job
    if job.seed_rate is not None:
        return job.seed_rate
    rates, stands = case.crop.of("seed_rate"), case.crop.of("stand")
    if job.stand is None and rates:
        return rates[0].middle
    stand = job.stand if job.stand is not None else stands[0].middle if stands else None
    if stand is None:
        return None
    shares = shares_of(case)
    return rate.rate_for_stand(stand, shares.germination, shares.emergence, shares.meter_error)


def factors(shares: Shares) -> str:
    """Return the shares that are multiplied, as they stand in a formula."""
    parts = [shares.germination, shares.emergence]
    parts += [1.0 - shares.meter_error] if shares.meter_error else []
    return " · ".join(f"{part:.3g}" for part in parts)


def answer_seed_rate(case: Case) -> Answer:
    """Return the seed rate for a case: the rate wanted, the stand's, or the crop table's."""
    job, units = case.job, case.units
    if job.seed_rate is not None:
        shown = show(job.seed_rate, "seed_rate", units)
        why = f"You asked for {shown} in {job.field.name}."
        return Answer(job.seed_rate, reasoned(RULE, why, "your field job", Trust.RECORD))
    if job.stand is not None:
        return _for_stand(case, job.stand, None)
    rates, stands = case.crop.of("seed_rate"), case.crop.of("stand")
    if rates:
        return _from_table(case, rates[0])
    if stands:
        return _for_stand(case, stands[0].middle, stands[0])
    return no_ground(RULE, "Enter a seed rate or a stand for the job.")


def asked_for(case: Case) -> bool:
    """Say whether the job itself states what is wanted, so that no table is asked."""
    return case.job.seed_rate is not None or case.job.stand is not None


def _for_stand(case: Case, stand: Quantity, figure: CropFigure | None) -> Answer:
    shares, units = shares_of(case), case.units
    wanted = rate.rate_for_stand(stand, shares.germination, shares.emergence, shares.meter_error)
    plants, seeds = (show(one, "seed_rate", units) for one in (stand, wanted))
    plants = plants.replace("seeds", "plants")
    source = figure.source if figure else BY_DEFINITION
    trust = figure.trust if figure else Trust.PUBLISHED
    asked = f"{figure.text(units).replace('seeds', 'plants')} in print" if figure else "you asked"
    why = f"A stand of {plants} ({asked}) takes {seeds}."
    how = f"{plants} / ({factors(shares)}) = {seeds}"
    inputs = (
        Input("stand", plants),
        Input("germination", shares.germination_says),
        Input("emergence", shares.emergence_says),
        Input("meter error", shares.meter_says),
    )
    return Answer(wanted, reasoned(RULE, why, source, trust, how=how, inputs=inputs))


def _from_table(case: Case, figure: CropFigure) -> Answer:
    text = figure.text(case.units)
    note = f" ({figure.note})" if figure.note else ""
    middle = show(figure.middle, "seed_rate", case.units)
    word = "the typical rate" if figure.typical is not None else "the middle of the range"
    why = f"You gave no rate; {case.name} is sown at {text}{note}. Taken: {middle}."
    cautions = ("Set your own rate for this field: the table cannot know its yield or rain.",)
    reason = reasoned(
        RULE,
        why,
        figure.source,
        figure.trust,
        how=f"{word}: {middle}",
        inputs=(Input("crop", case.crop.name),),
        cautions=cautions,
        says={figure.trust: f"{text} ({figure.source})"},
    )
    return Answer(figure.middle, reason, figure.low, figure.high)
