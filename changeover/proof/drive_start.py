"""Drive start: the first condition that keeps a variable-rate drive from turning, and speeds."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from changeover.proof.advice import Advice
from changeover.proof.drive_readings import Condition, DriveNeeds, DriveReadings
from changeover.proof.fault_tree import Fault, next_steps
from changeover.proof.oil import oil_flow
from changeover.proof.wording import said
from changeover.quantities import Q, Quantity
from changeover.seed.rate import disc_speed_at


class State(StrEnum):
    """Whether a condition is met; without a reading, or before an earlier one, nobody can say."""

    MET = "met"
    UNMET = "not met"
    NOT_READ = "no reading"
    WAITING = "waits for an earlier condition"


@dataclass(frozen=True)
class ConditionState:
    """One condition, its state, and in words what was read."""

    condition: Condition
    state: State
    evidence: str


@dataclass(frozen=True)
class DriveStart:
    """The verdict: conditions in order, speeds of the motor (turns per time), and what is next.

    ``expected`` is the reckoned target speed, ``actual_share`` the actual speed over the target
    (the reckoned one, else the one shown); None where a reading is missing.
    """

    conditions: tuple[ConditionState, ...]
    expected: Quantity | None
    oil_needed: Quantity | None
    actual_share: float | None
    within_tolerance: bool | None
    saturated: bool | None
    next_steps: tuple[Advice, ...]

    @property
    def first_unmet(self) -> Condition | None:
        unmet = (one.condition for one in self.conditions if one.state is State.UNMET)
        return next(unmet, None)

    @property
    def not_judged(self) -> tuple[Condition, ...]:
        open_states = (State.NOT_READ, State.WAITING)
        return tuple(one.condition for one in self.conditions if one.state in open_states)


_ALWAYS: frozenset[Condition] = frozenset()
_BEFORE_TARGET = frozenset(tuple(Condition)[: tuple(Condition).index(Condition.TARGET)])
_WAITS_FOR: Mapping[Condition, frozenset[Condition]] = MappingProxyType(
    {
        Condition.WHEEL_MOTION: frozenset({Condition.GROUND_SPEED}),
        Condition.WHEEL_AGREES: frozenset({Condition.GROUND_SPEED, Condition.WHEEL_MOTION}),
        Condition.TARGET: _BEFORE_TARGET,
        Condition.COMMAND: _BEFORE_TARGET,
        Condition.ACTUAL: _BEFORE_TARGET | {Condition.COMMAND},
    }
)


def judge_start(readings: DriveReadings, needs: DriveNeeds) -> DriveStart:
    """Return which condition is not met first, which cannot be judged yet, and the speeds.

    A condition without a reading does not block those after it; one that is not met does, where
    they depend on it. Raises Refusal for a rate or speed out of bounds.
    """
    expected = expected_speed(readings, needs)
    needed = None
    if needs.displacement is not None and expected is not None:
        needed = oil_flow(needs.displacement, expected, needs.volumetric_efficiency)
    target = expected if expected is not None else readings.target_speed
    share = _ratio(readings.actual_speed, target)
    facts = _Facts(readings, needs, expected, needed, share)
    conditions = _in_order(facts)
    start = DriveStart(
        conditions,
        expected,
        needed,
        share,
        None if share is None else abs(share - 1) <= needs.speed_tolerance,
        None if readings.command is None else readings.command >= needs.saturated_at,
        (),
    )
    return DriveStart(**{**vars(start), "next_steps": next_steps(_fault(start))})


def expected_speed(readings: DriveReadings, needs: DriveNeeds) -> Quantity | None:
    """Return the motor speed that rate and ground speed ask for; None while one is missing.

    seeds per area · row spacing · ground speed / cells · motor ratio. By definition.
    """
    rate, speed = readings.target_rate, readings.ground_speed
    if rate is None or speed is None or not rate.magnitude > 0 or not speed.magnitude > 0:
        return None
    disc = disc_speed_at(rate, needs.row_spacing, speed, needs.cells)
    return Q(float(disc.to("rpm").magnitude) * needs.motor_ratio, "rpm")


@dataclass(frozen=True)
class _Facts:
    readings: DriveReadings
    needs: DriveNeeds
    expected: Quantity | None
    oil_needed: Quantity | None
    actual_share: float | None


_Judged = tuple[bool | None, str]


def _in_order(facts: _Facts) -> tuple[ConditionState, ...]:
    states: dict[Condition, ConditionState] = {}
    for condition in Condition:
        met, evidence = _JUDGES[condition](facts)
        waits = _WAITS_FOR.get(condition, _ALWAYS)
        if any(states[one].state is State.UNMET for one in waits):
            state = State.WAITING
        elif met is None:
            state = State.NOT_READ
        else:
            state = State.MET if met else State.UNMET
        states[condition] = ConditionState(condition, state, evidence)
    return tuple(states.values())


def _flag(name: str) -> Callable[[_Facts], _Judged]:
    def judge(facts: _Facts) -> _Judged:
        value = getattr(facts.readings, name)
        return value, {None: "not read", True: "yes", False: "no"}[value]

    return judge


def _rate(facts: _Facts) -> _Judged:
    rate = facts.readings.target_rate
    return (None, "not read") if rate is None else (rate.magnitude > 0, said(rate))


def _ground_speed(facts: _Facts) -> _Judged:
    speed, least = facts.readings.ground_speed, facts.needs.least_ground_speed
    if speed is None:
        return None, "not read"
    return bool(speed >= least), f"{said(speed)}, least {said(least)}"


def _wheel_motion(facts: _Facts) -> _Judged:
    wheel = facts.readings.wheel_speed
    return (None, "not read") if wheel is None else (wheel.magnitude > 0, said(wheel))


def _wheel_agrees(facts: _Facts) -> _Judged:
    share = _ratio(facts.readings.wheel_speed, facts.readings.ground_speed)
    if share is None:
        return None, "not read"
    return abs(share - 1) <= facts.needs.wheel_tolerance, f"wheel at {share:.1%} of ground speed"


def _supply(facts: _Facts) -> _Judged:
    readings = facts.readings
    if readings.oil_flow is not None and facts.oil_needed is not None:
        needed = facts.oil_needed.to(readings.oil_flow.units)
        return bool(readings.oil_flow >= needed), f"{said(readings.oil_flow)} of {said(needed)}"
    if readings.current is not None and facts.needs.least_current is not None:
        least = facts.needs.least_current
        return bool(readings.current >= least), f"{said(readings.current)}, least {said(least)}"
    return _flag("supply")(facts)


def _target(facts: _Facts) -> _Judged:
    share = _ratio(facts.readings.target_speed, facts.expected)
    if share is None:
        return None, "not read"
    return abs(share - 1) <= facts.needs.speed_tolerance, f"shown at {share:.1%} of the reckoned"


def _command(facts: _Facts) -> _Judged:
    command = facts.readings.command
    return (None, "not read") if command is None else (command > 0, f"{command:.0%} of full drive")


def _actual(facts: _Facts) -> _Judged:
    share = facts.actual_share
    if share is None:
        return None, "not read"
    return abs(share - 1) <= facts.needs.speed_tolerance, f"{share:.1%} of the target"


_JUDGES: Mapping[Condition, Callable[[_Facts], _Judged]] = MappingProxyType(
    {
        Condition.CONTROLLER: _flag("controller_set_up"),
        Condition.RATE: _rate,
        Condition.LOWERED: _flag("lowered"),
        Condition.HEIGHT: _flag("height_calibrated"),
        Condition.START_POINT: _flag("start_point_set"),
        Condition.GROUND_SPEED: _ground_speed,
        Condition.WHEEL_MOTION: _wheel_motion,
        Condition.WHEEL_AGREES: _wheel_agrees,
        Condition.CLUTCHES: _flag("clutches_on"),
        Condition.SUPPLY: _supply,
        Condition.TARGET: _target,
        Condition.COMMAND: _command,
        Condition.ACTUAL: _actual,
    }
)


def _ratio(part: Quantity | None, whole: Quantity | None) -> float | None:
    if part is None or whole is None or not whole.magnitude > 0:
        return None
    return float((part / whole).to("count").magnitude)


def _fault(start: DriveStart) -> Fault | Condition | None:
    first = start.first_unmet
    if first is not Condition.ACTUAL or start.actual_share is None:
        return first
    if start.actual_share > 1:
        return Fault.TOO_FAST
    if start.actual_share == 0:
        return Fault.STANDS_DRIVEN if start.saturated else Fault.STANDS
    return Fault.SLOW_SATURATED if start.saturated else Fault.SLOW
