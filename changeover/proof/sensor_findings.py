"""Row sensors that no controller reads, or that never reported, as findings with advice."""

from changeover.proof.advice import Advice
from changeover.proof.findings import Finding, Proof
from changeover.proof.sensors import SensorCapacity, Silence
from changeover.proof.source import ARITHMETIC, PRACTICE
from changeover.quantities import how_many

CONTROLLERS, SENSOR = "controllers", "row sensor"
_STANDSTILL = "Tractor off and key out before you reach into a row unit or its harness."
_OF_SENSOR = (
    Advice("Look for a plug that is loose, wet or corroded on this row.", PRACTICE, _STANDSTILL),
    Advice(
        "Clean the sensor in the seed tube: dust and treatment blind it.", PRACTICE, _STANDSTILL
    ),
    Advice(
        "Change this sensor with a good row's: if the fault moves, it is the sensor.",
        PRACTICE,
        _STANDSTILL,
    ),
)


def sensor_findings(capacity: SensorCapacity | None, silence: Silence) -> tuple[Finding, ...]:
    """Return a finding for a shortage of controllers, and one for each row that never reported.

    ``capacity`` is None while it is not known how many controllers there are.
    """
    short = () if capacity is None or capacity.enough else (_shortage(capacity),)
    return (*short, *(_silent(row, silence) for row in silence.rows))


def _shortage(found: SensorCapacity) -> Finding:
    there = how_many(found.controllers, "controller")
    sensors = how_many(found.sensors, "row sensor")
    missing = how_many(found.needed - found.controllers, "controller")
    return Finding(
        Proof.DRIVE,
        None,
        CONTROLLERS,
        "too few controllers for the row sensors",
        f"{there} at {found.per_controller} sensors each for {sensors}: {found.unread} not read",
        (
            Advice(f"Add {missing}, or wire fewer rows to those there are.", ARITHMETIC),
            Advice(
                "Look up in the manual how many sensors one controller reads, and enter it for "
                "the planter.",
                PRACTICE,
            ),
        ),
    )


def _silent(row: int, silence: Silence) -> Finding:
    whole = silence.controllers
    first = (
        ()
        if not whole
        else (
            Advice(
                f"Every row of {', '.join(whole)} is silent: where this row is wired to it, look "
                "at it and its harness first.",
                PRACTICE,
                _STANDSTILL,
            ),
        )
    )
    return Finding(
        Proof.DRIVE,
        row,
        SENSOR,
        "the row sensor never reported",
        "no report from this row while the drive was started",
        (*first, *_OF_SENSOR),
    )
