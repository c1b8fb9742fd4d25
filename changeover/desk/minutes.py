"""The minutes of each kind of work: the standard with its source, and the user's own."""

from dataclasses import dataclass

from changeover.desk.edits import PutTime
from changeover.desk.tables import switch_rules
from changeover.quantities import Q, Quantity, Refusal, Units, read_quantity
from changeover.store.opening import Store
from changeover.switch.standard_minutes import Element
from changeover.switch.tasks import StandardTime
from changeover.switch.work_bounds import check_minutes

OWN = "your own minutes"


@dataclass(frozen=True)
class KindOfWork:
    """One kind of work: its standard minutes, and the user's own where there are any.

    ``standard`` is None for own minutes of a whole task, which no table has.
    """

    name: str
    standard: Element | None
    own: StandardTime | None = None

    @property
    def title(self) -> str:
        """The kind of work in words: ``Empty tank``."""
        return self.name.replace("_", " ").capitalize()

    @property
    def fixed(self) -> float:
        """Minutes once, those that a plan reckons with."""
        if self.own is not None:
            return _minutes(self.own.fixed)
        return self.standard.fixed if self.standard is not None else 0.0

    @property
    def each(self) -> float:
        """Minutes for every row, tank or fan, those that a plan reckons with."""
        if self.own is not None:
            return _minutes(self.own.each)
        return self.standard.each if self.standard is not None else 0.0

    @property
    def source(self) -> str:
        """Where the minutes in force come from."""
        if self.own is not None or self.standard is None:
            return OWN
        return self.standard.source

    @property
    def standard_text(self) -> str:
        """The standard in words: ``5 min + 12 min each``; empty when there is none."""
        if self.standard is None:
            return ""
        return f"{minutes_text(self.standard.fixed)} + {minutes_text(self.standard.each)} each"


def minutes_text(minutes: float) -> str:
    """Write minutes as they are typed: ``1.5 min``."""
    return f"{minutes:g} min"


def kinds_of_work(store: Store) -> tuple[KindOfWork, ...]:
    """Return every kind of work in the order of the table, then the user's own of whole tasks."""
    with store.read() as work:
        own = {time.task: time for time in work.times.all()}
    table = switch_rules().minutes
    kinds = [KindOfWork(name, element, own.get(name)) for name, element in table.items()]
    return (*kinds, *(KindOfWork(name, None, own[name]) for name in own if name not in table))


def set_fixed(kind: KindOfWork, text: str) -> PutTime:
    """Return the edit for typed minutes once. Raises Refusal."""
    return _set(kind, _read(kind, text, "once"), kind.each)


def set_each(kind: KindOfWork, text: str) -> PutTime:
    """Return the edit for typed minutes for every row, tank or fan. Raises Refusal."""
    return _set(kind, kind.fixed, _read(kind, text, "each"))


def back_to_standard(kind: KindOfWork) -> PutTime:
    """Return the edit that takes the user's own minutes away. Raises Refusal without any."""
    if kind.own is None:
        raise Refusal(f"{kind.title}: these are the standard minutes already.")
    return PutTime(None, before=kind.own)


def _set(kind: KindOfWork, fixed: float, each: float) -> PutTime:
    own = StandardTime(kind.name, Q(fixed, "min"), Q(each, "min"))
    return PutTime(own, before=kind.own)


def _read(kind: KindOfWork, text: str, which: str) -> float:
    what = f"{kind.title}, minutes {which}"
    return check_minutes(read_quantity(text, "time", Units.US, what), what)


def _minutes(time: Quantity) -> float:
    return float(time.to("min").magnitude)
