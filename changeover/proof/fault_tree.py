"""What to look at next when a variable-rate drive does not do what it should."""

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType

from changeover.proof.advice import Advice
from changeover.proof.drive_readings import Condition
from changeover.proof.source import PRACTICE

KEY_OUT = "Engine off, key out, planter lowered or locked before anyone reaches in."
OIL = "Never feel for a leak by hand; relieve the pressure before a coupling is opened."
CLEAR = "Keep everyone clear of the drives: meters may turn without warning."


class Fault(StrEnum):
    """How the actual speed fails while every condition before it is met."""

    STANDS = "the motor stands and is barely driven"
    STANDS_DRIVEN = "the motor stands although fully driven"
    SLOW = "the motor is slow and not fully driven"
    SLOW_SATURATED = "the motor is slow although fully driven"
    TOO_FAST = "the motor is too fast"


def _advice(caution: str, *texts: str) -> tuple[Advice, ...]:
    return tuple(Advice(text, PRACTICE, caution) for text in texts)


_NEXT: Mapping[Condition | Fault, tuple[Advice, ...]] = MappingProxyType(
    {
        Condition.CONTROLLER: _advice(
            "",
            "Finish the controller's set-up: rows, row spacing, cells on the disc, drive ratio.",
            "Check the controller's supply voltage and its plug.",
        ),
        Condition.RATE: _advice(
            "",
            "Enter a target rate above zero for the product of this drive.",
            "Check that the prescription map covers this place, or use a fixed rate.",
        ),
        Condition.LOWERED: _advice(
            KEY_OUT,
            "Lower the planter and watch the height reading change.",
            "Check the lift switch or height sensor: arm, magnet, plug.",
        ),
        Condition.HEIGHT: _advice(
            KEY_OUT, "Calibrate the height sensor: raised, then lowered in the field."
        ),
        Condition.START_POINT: _advice(
            KEY_OUT,
            "Set the height at which planting starts, between the raised and lowered readings.",
        ),
        Condition.GROUND_SPEED: _advice(
            CLEAR,
            "Drive faster than the least speed set in the controller.",
            "Check which speed source is chosen and that it reads: satellite, radar or wheel.",
        ),
        Condition.WHEEL_MOTION: _advice(
            KEY_OUT,
            "Check the wheel sensor's gap and target ring, then its plug and cable.",
            "Change it with a sensor known to be good: if the fault moves, it is the sensor.",
        ),
        Condition.WHEEL_AGREES: _advice(
            "",
            "Calibrate the wheel sensor's pulses over a measured course, loaded, at work speed.",
            "Look for wheel slip or a wheel that does not carry: tyre pressure, down pressure.",
        ),
        Condition.CLUTCHES: _advice(
            KEY_OUT,
            "Switch the row clutches on and check that no section is off by the map.",
            "Check the clutch fuse and the supply of the clutch circuit.",
        ),
        Condition.SUPPLY: _advice(
            OIL,
            "Set the tractor's valve to the drive to constant flow, and raise the flow.",
            "Check that couplings are fully home and pressure and return are not crossed.",
            "Electric drive: check the main fuse, the generator and the voltage under load.",
        ),
        Condition.TARGET: _advice(
            "",
            "Compare cells on the disc, row spacing and drive ratio in the controller with the "
            "planter's.",
            "Check that the rate in the controller is per acre or per hectare as meant.",
        ),
        Condition.COMMAND: _advice(
            KEY_OUT,
            "Check that the drive is enabled and in automatic, not in manual or off.",
            "Look for a fault code of the drive module, then its plug and fuse.",
        ),
        Fault.STANDS: _advice(
            KEY_OUT,
            "Turn the meters' shaft by hand: does the speed reading answer? If not, see the "
            "speed sensor's gap, plug and cable.",
            "Check the valve's plug and coil for the command that the controller gives.",
        ),
        Fault.STANDS_DRIVEN: _advice(
            OIL,
            "Check that the shaft turns freely by hand with the oil off: a seized meter holds all.",
            "Work the valve's manual override, if it has one: a stuck spool then moves.",
            "Check coupling, chain and shear pin between motor and meters.",
        ),
        Fault.SLOW: _advice(
            "",
            "Calibrate the drive's valve again, so that command and speed belong together.",
            "Check the pulses per turn of the speed sensor in the controller.",
        ),
        Fault.SLOW_SATURATED: _advice(
            OIL,
            "Raise the oil flow to the drive, or drive slower: it gives all it has.",
            "Check the oil's temperature, filter and return pressure.",
            "Compare the reckoned motor speed with the most that the motor can do.",
        ),
        Fault.TOO_FAST: _advice(
            CLEAR,
            "Calibrate the drive's valve again; look for a valve that leaks when shut.",
            "Check the pulses per turn of the speed sensor in the controller.",
        ),
    }
)


def next_steps(fault: Condition | Fault | None) -> tuple[Advice, ...]:
    """Return what to look at for the first unmet condition or fault, first things first."""
    return _NEXT[fault] if fault is not None else ()
