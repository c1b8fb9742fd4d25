"""What is chosen for the rows of one lot: its disc and seed rate, on which other settings rest."""

from dataclasses import dataclass, field

from changeover.planter.parts import Part
from changeover.planter.places import Place
from changeover.planter.settings import Setting, standard
from changeover.planter.setup import Cell
from changeover.quantities import Quantity, is_quantity
from changeover.seed.bench_seen import singulator_by_bench
from changeover.seed.brush import answer_brush
from changeover.seed.case import Case
from changeover.seed.closing import answer_closing
from changeover.seed.disc import answer_disc, rank_discs
from changeover.seed.drive_settings import answer_cells, answer_sprockets
from changeover.seed.load_target import answer_load, by_calibration, is_load_setting
from changeover.seed.reasons import Trust
from changeover.seed.seed_rate import answer_seed_rate, asked_for
from changeover.seed.singulator import answer_singulator
from changeover.seed.trust_order import (
    BENCH_DECIDES,
    SOIL_DECIDES,
    Answer,
    no_ground,
    proof_of,
    reasoned,
    settle,
)
from changeover.seed.vacuum_start import answer_vacuum

JOB_DECIDES = "what this job asks for decides"
GIVEN = reasoned("disc as given", "The disc was given.", "your choice", Trust.RECORD)


@dataclass(frozen=True, eq=False)
class Choice:
    """One lot's rows with the disc and the seed rate chosen for them, and why."""

    case: Case
    disc: Part | None
    disc_answer: Answer
    rate_answer: Answer
    settings: dict[str, Setting] = field(default_factory=dict)

    @property
    def seed_rate(self) -> Quantity | None:
        """Seeds per area, None when there is no ground for a rate."""
        value = self.rate_answer.value
        return value if is_quantity(value) else None

    @property
    def cells(self) -> int | None:
        """The cells of the disc chosen, None when not known."""
        return self.disc.cells if self.disc else None


def choose(case: Case, settings: tuple[Setting, ...]) -> Choice:
    """Choose the disc and the seed rate for the rows of one lot.

    Where the user hides the setting disc, the disc that is mounted stays.
    """
    by_key = {setting.key: setting for setting in settings}
    row = Place.of_row(case.rows[0] if case.rows else 1)
    rate = answer_seed_rate(case)
    if not asked_for(case):
        setting = by_key.get("seed_rate") or standard("seed_rate")
        rate = settle(case, setting, row, rate, record_aside=JOB_DECIDES)
    seed_rate = rate.value if is_quantity(rate.value) else None
    shown = by_key.get("disc")
    if shown is None or shown.hidden:
        answer = _mounted(case, row)
    else:
        proved = proof_of(case, "disc")
        own = answer_disc(case, rank_discs(case, seed_rate), proved.name if proved else None)
        answer = _manual_disc(
            case, settle(case, shown, row, own, record_aside="it counts in the score")
        )
    code = answer.value if isinstance(answer.value, str) else ""
    return Choice(case, case.part(code), answer, rate, by_key)


def choose_with(case: Case, disc: Part | None) -> Choice:
    """Return the choice for a disc that is given, with the rate as for any other."""
    rate = answer_seed_rate(case)
    if not asked_for(case):
        row = Place.of_row(case.rows[0] if case.rows else 1)
        rate = settle(case, standard("seed_rate"), row, rate, record_aside=JOB_DECIDES)
    answer = no_ground("disc as given") if disc is None else Answer(disc.code, GIVEN)
    return Choice(case, disc, answer, rate)


def _mounted(case: Case, row: Place) -> Answer:
    found = case.as_found.get(Cell("disc", row))
    if found is None:
        return no_ground("disc as mounted", "No disc is recorded.")
    return Answer(found, reasoned("disc as mounted", "It stays.", "as found", Trust.RECORD))


def _manual_disc(case: Case, answer: Answer) -> Answer:
    """Refuse a disc of the manual's that is no part in the store; others pass."""
    if answer.value is None or any(part.code == answer.value for part in case.parts):
        return answer
    says = f"Disc {answer.value} is not among your parts; enter it on the shelf first."
    missing = no_ground("disc by manual", says)
    return Answer(None, missing.reason, warnings=(says,))


def answer_at(setting: Setting, place: Place, choices: tuple[Choice, ...]) -> Answer:
    """Return the answer for a place, whose rows take the lots of ``choices``.

    Vacuum finds one level for all; any other setting needs one value on which all lots agree.
    """
    if setting.key == "vacuum":
        charges = [(choice.case, choice.disc) for choice in choices]
        return answer_vacuum(setting, place, charges)
    answers = [_answer(setting, place, choice) for choice in choices]
    if all(answer.value == answers[0].value for answer in answers[1:]):
        return answers[0]
    lots = " and ".join(choice.case.lot.number for choice in choices)
    why = f"The rows of {place.label} take lots {lots}, which ask for different values."
    unsettled = no_ground(f"one {setting.name.lower()} for several lots", why)
    return Answer(None, unsettled.reason, warnings=(why,))


def _answer(setting: Setting, place: Place, choice: Choice) -> Answer:
    case, disc = choice.case, choice.disc
    code = disc.code if disc else None
    if setting.key == "seed":
        why = f"You chose lot {case.lot.number} for {case.job.field.name}."
        return Answer(case.lot.number, reasoned("seed lot", why, "your choice", Trust.RECORD))
    if setting.key == "disc":
        return choice.disc_answer
    if setting.key == "seed_rate":
        return choice.rate_answer
    if setting.key == "cells":
        return settle(case, setting, place, answer_cells(disc), disc=code, record_aside=JOB_DECIDES)
    if setting.key == "sprockets":
        own, _ = answer_sprockets(case, place, choice.seed_rate, choice.cells)
        return settle(case, setting, place, own, disc=code, record_aside=JOB_DECIDES)
    if setting.key == "brush":
        return settle(case, setting, place, answer_brush(case, setting.part_sort or ""), disc=code)
    if setting.key == "singulator":
        ran = singulator_by_bench(case, place, disc)
        own = ran or answer_singulator(case, disc)
        aside = BENCH_DECIDES if ran else ""
        return settle(case, setting, place, own, disc=code, record_aside=aside)
    if setting.key == "closing":
        own = answer_closing(case, wheel_track=place.row in case.planter.wheel_track_rows)
        return settle(case, setting, place, own, disc=code, record_aside=SOIL_DECIDES)
    if is_load_setting(setting):
        own = answer_load(case, setting, place)
        aside = SOIL_DECIDES if by_calibration(own) else ""
        return settle(case, setting, place, own, disc=code, record_aside=aside)
    return settle(case, setting, place, no_ground(setting.name.lower()), disc=code)
