"""The trust order: your manual wins, then your record, then print, then practice, then memory."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from changeover.planter.entry import check_value, show_value
from changeover.planter.places import Place
from changeover.planter.settings import Kind, Setting
from changeover.planter.setup import Value
from changeover.quantities import Quantity, Refusal, is_quantity
from changeover.seed.case import Case
from changeover.seed.manual import ManualValue, ProvedSetup, manual_value, proved_setup
from changeover.seed.reasons import Evidence, Input, Reason, Trust

BENCH_DECIDES = "a bench run of this lot decides"
SOIL_DECIDES = "the soil of the day decides"
NO_GROUND = "No proposal: enter it from your manual."
_NOTHING: Mapping[Trust, str] = {
    Trust.MANUAL: "no value entered",
    Trust.RECORD: "no proved setup",
    Trust.PUBLISHED: "nothing found in print",
    Trust.PRACTICE: "nothing in use at large",
    Trust.MEMORY: "nothing",
}


@dataclass(frozen=True)
class Answer:
    """A value with its reason and band, before it is put in a cell.

    ``warnings`` are those of its cautions that concern the whole proposal.
    """

    value: Value | None
    reason: Reason
    low: Quantity | None = None
    high: Quantity | None = None
    warnings: tuple[str, ...] = ()


def ladder(used: Trust | None, says: Mapping[Trust, str]) -> tuple[Evidence, ...]:
    """Return the five rungs of the trust order, with what each says and which is used."""
    return tuple(Evidence(rung, says.get(rung) or _NOTHING[rung], rung is used) for rung in Trust)


def reasoned(
    rule: str,
    why: str,
    source: str,
    trust: Trust,
    *,
    how: str = "",
    inputs: tuple[Input, ...] = (),
    cautions: tuple[str, ...] = (),
    says: Mapping[Trust, str] | None = None,
) -> Reason:
    """Return a reason with its rungs; the one that is used says ``why`` unless told otherwise."""
    rungs = {trust: source, **(says or {})}
    return Reason(rule, why, source, trust, how, inputs, cautions, ladder(trust, rungs))


def no_ground(rule: str, why: str = "", says: Mapping[Trust, str] | None = None) -> Answer:
    """Return the answer where there is no ground for a value; ``why`` says what is missing."""
    text = f"{NO_GROUND} {why}".strip()
    source = "no neutral source; your manual has it"
    return Answer(None, Reason(rule, text, source, Trust.MANUAL, evidence=ladder(None, says or {})))


def settle(
    case: Case,
    setting: Setting,
    place: Place,
    own: Answer,
    *,
    disc: str | None = None,
    record_aside: str = "",
) -> Answer:
    """Return the answer that wins: the manual's, then a proved setup's, then the rule's own.

    ``record_aside`` says why a record only bears witness, such as ``SOIL_DECIDES``.
    A value that the planter cannot have is not proposed; a caution says why.
    """
    entered = manual_entry(case, setting.key, disc)
    proved = proof_of(case, setting.key, disc)
    says = {rung.trust: rung.says for rung in own.reason.evidence}
    if proved is not None:
        shown = _shown(case, setting, place, proved.values[setting.key])
        agrees = own.value is not None and own.reason.trust is Trust.RECORD
        measured = agrees and record_aside in (BENCH_DECIDES, SOIL_DECIDES)
        aside = record_aside if agrees and not measured else f"not used, {record_aside}"
        note = f"; {aside}" if record_aside else ""
        first = f"{says[Trust.RECORD]}; " if measured else ""
        says[Trust.RECORD] = f"{first}{shown}, {_told(proved)}{note}"
    if entered is not None:
        says[Trust.MANUAL] = _shown(case, setting, place, entered.value)
        return _checked(case, setting, place, own, _manual_reason(case, entered, says))
    if proved is not None and not record_aside:
        return _checked(case, setting, place, own, _record_reason(case, setting, proved, says))
    used = own.reason.trust if own.value is not None else None
    return replace(own, reason=replace(own.reason, evidence=ladder(used, says)))


def manual_entry(case: Case, key: str, disc: str | None = None) -> ManualValue | None:
    """Return the manual value for a setting of this crop, planter and disc, or None."""
    return manual_value(case.manual, case.crop.keys, key, case.planter.name, disc)


def proof_of(case: Case, key: str, disc: str | None = None) -> ProvedSetup | None:
    """Return the proved setup to follow for a setting, or None."""
    size = case.measured_diameter
    return proved_setup(case.records, case.crop.key, key, case.planter.name, disc, size)


def _manual_reason(case: Case, entered: ManualValue, says: Mapping[Trust, str]) -> Answer:
    where = f" ({entered.note})" if entered.note else ""
    why = f"Your manual says {says[Trust.MANUAL]} for {case.name}{where}."
    source = entered.note or "entered by you from the machine’s manual"
    evidence = ladder(Trust.MANUAL, says)
    inputs: tuple[Input, ...] = (Input("crop", case.crop.name),)
    if entered.part:
        inputs += (Input("disc", entered.part),)
    reason = Reason("manual value", why, source, Trust.MANUAL, "taken as entered", inputs)
    return Answer(entered.value, replace(reason, evidence=evidence))


def _record_reason(
    case: Case, setting: Setting, proved: ProvedSetup, says: Mapping[Trust, str]
) -> Answer:
    why = f"Proved good here: {says[Trust.RECORD]}; the same crop, disc and seed size."
    inputs = (Input("crop", case.crop.name), Input("disc", proved.disc or "not known"))
    evidence = ladder(Trust.RECORD, says)
    how = "taken from the setup that proved good"
    reason = Reason("proved setup", why, _told(proved), Trust.RECORD, how, inputs)
    return Answer(proved.values[setting.key], replace(reason, evidence=evidence))


def _checked(case: Case, setting: Setting, place: Place, own: Answer, answer: Answer) -> Answer:
    """Hold a value of the user's to what the planter can have; keep the rule's cautions."""
    value, reason, warnings = answer.value, answer.reason, own.warnings
    refused = None if value is None else _refused(case, setting, place, value)
    if refused is not None:
        value, warnings = None, (refused, *warnings)
        says = {rung.trust: rung.says for rung in reason.evidence}
        why = f"{NO_GROUND} {refused}"
        reason = replace(reason, why=why, evidence=ladder(None, says))
    cautions = tuple(dict.fromkeys((*warnings, *own.reason.cautions)))
    return Answer(value, replace(reason, cautions=cautions), warnings=warnings)


def _refused(case: Case, setting: Setting, place: Place, value: Value) -> str | None:
    """Return the sentence that refuses a value for a setting, None when it can be had."""
    if (setting.kind is Kind.QUANTITY) != is_quantity(value):
        return f"{setting.name}: “{value}” is not a value of this setting; enter it anew."
    try:
        check_value(setting, case.planter, place, value, case.units)
    except Refusal as refused:
        return str(refused)
    return None


def _told(proved: ProvedSetup) -> str:
    day = f", {proved.day.day} {proved.day:%B %Y}" if proved.day else ""
    how = f", {proved.proved}" if proved.proved else ""
    return f"setup “{proved.name}”{day}{how}"


def _shown(case: Case, setting: Setting, place: Place, value: Value) -> str:
    if not is_quantity(value) and _refused(case, setting, place, value) is not None:
        return str(value)
    return show_value(setting, case.planter, place, value, case.units, sign=True)
