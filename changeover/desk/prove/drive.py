"""Proving that a drive starts: readings, what the planter needs, the verdict, and saving it."""

from collections.abc import Mapping
from dataclasses import dataclass, field, fields, replace
from typing import Any

from changeover.desk.board import Board
from changeover.desk.prove.proofs import Proof, PutProof, TakenProof, save_proof
from changeover.planter.drive import MotorDrive
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell, working_rows, working_spacing
from changeover.proof.drive_readings import DriveNeeds, DriveReadings
from changeover.proof.drive_start import DriveStart, judge_start
from changeover.proof.pulses import WheelCalibration, WheelRun, calibrate
from changeover.proof.sensor_findings import CONTROLLERS, SENSOR, sensor_findings
from changeover.proof.sensors import SensorCapacity, Silence, rows_not_reporting, sensor_capacity
from changeover.proof.verdict_findings import DRIVE, start_findings
from changeover.quantities import Refusal, is_quantity

COMMON_CELLS = 30  # a common count of cells for corn: common practice, no source


@dataclass(frozen=True)
class DriveProof:
    """A drive start of one drive group, with runs of the wheel sensor and silent row sensors.

    ``controllers`` is how many there are, None while it was not entered; ``silent`` holds the
    rows whose sensor does not report.
    """

    says = "Enter the readings"

    group: str = ""
    readings: DriveReadings = field(default_factory=DriveReadings)
    needs: DriveNeeds | None = None
    wheel: tuple[WheelRun, ...] = ()
    controllers: int | None = None
    silent: tuple[int, ...] = ()
    note: str = ""


@dataclass(frozen=True)
class JudgedDrive:
    """What a drive start says: the start, the wheel's calibration, and the row sensors.

    ``wheel`` is None without runs, ``sensors`` and ``silence`` while controllers are not known.
    """

    start: DriveStart
    wheel: WheelCalibration | None
    sensors: SensorCapacity | None
    silence: Silence | None


def judge_drive(board: Board, proof: DriveProof) -> JudgedDrive:
    """Return the verdict on a drive start. Raises Refusal without the planter's needs."""
    if proof.needs is None:
        raise Refusal("The row spacing and the cells of the disc are missing; enter them.")
    start = judge_start(proof.readings, proof.needs)
    wheel = calibrate(proof.wheel) if proof.wheel else None
    if proof.controllers is None:
        return JudgedDrive(start, wheel, None, None)
    rows = working_rows(board.planter, board.as_found)
    per = board.planter.sensors_per_controller
    capacity = sensor_capacity(len(rows), proof.controllers, per)
    wired = {row: f"controller {number // per + 1}" for number, row in enumerate(rows)}
    silence = rows_not_reporting(rows, [r for r in rows if r not in proof.silent], wired)
    return JudgedDrive(start, wheel, capacity, silence)


def fresh_drive(board: Board, group: str = "") -> DriveProof:
    """Return a drive start with nothing read, its needs taken from the planter."""
    groups = [one.name for one in board.planter.groups_of(Scope.DRIVE)]
    name = group or (groups[0] if groups else "")
    return DriveProof(name, DriveReadings(target_rate=_rate(board)), needs_of(board, name))


def needs_of(board: Board, group: str) -> DriveNeeds:
    """Return what a drive group needs, as far as the planter and its setup tell."""
    drive = board.planter.drives.get(group)
    spacing = working_spacing(board.planter, board.as_found)
    needs = DriveNeeds(spacing, _cells(board))
    if isinstance(drive, MotorDrive):
        return replace(needs, motor_ratio=drive.ratio, displacement=drive.displacement)
    return needs


def save_drive(board: Board, proof: DriveProof) -> PutProof:
    """Return the edit that saves a drive start.

    It settles the drive when every condition was judged, or when one is not met; the controllers
    and row sensors when it was entered how many there are, or which rows are silent.
    """
    judged = judge_drive(board, proof)
    start = judged.start
    decided = start.first_unmet is not None or not start.not_judged
    part = f"{DRIVE} {proof.group}".strip()
    drive = {(None, part)} if decided else set()
    silence = judged.silence or Silence(tuple(sorted(proof.silent)), ())
    taken = TakenProof(
        board.planter.name,
        Proof.DRIVE,
        drive_readings(proof),
        note=proof.note,
        lot=board.lot.number if board.lot is not None else None,
        settles=frozenset(drive | _sensors_settled(board, proof)),
    )
    found = sensor_findings(judged.sensors, silence)
    return save_proof(taken, (*start_findings(start, proof.group), *found))


def _sensors_settled(board: Board, proof: DriveProof) -> set[tuple[int | None, str]]:
    """Return what a start says of the row sensors: nothing while none of it was entered."""
    if proof.controllers is None and not proof.silent:
        return set()
    rows = working_rows(board.planter, board.as_found)
    whole = {(None, CONTROLLERS)} if proof.controllers is not None else set()
    return {*whole, *((row, SENSOR) for row in {*rows, *proof.silent})}


def drive_readings(proof: DriveProof) -> dict[str, Any]:
    """Return a drive start as the store keeps it."""
    return {
        "group": proof.group,
        "readings": _plain(proof.readings),
        "needs": None if proof.needs is None else _plain(proof.needs),
        "wheel": [[run.pulses, run.distance] for run in proof.wheel],
        "controllers": proof.controllers,
        "silent": list(proof.silent),
    }


def drive_of(proof: TakenProof) -> DriveProof:
    """Return the drive start that a proof holds. Raises Refusal for a newer form."""
    if proof.form != 1:
        raise Refusal("This drive start was saved by a newer program; open it there.")
    kept = proof.readings
    return DriveProof(
        kept["group"],
        DriveReadings(**kept["readings"]),
        None if kept["needs"] is None else DriveNeeds(**kept["needs"]),
        tuple(WheelRun(pulses, distance) for pulses, distance in kept["wheel"]),
        kept["controllers"],
        tuple(kept["silent"]),
        proof.note,
    )


def _plain(value: DriveReadings | DriveNeeds) -> Mapping[str, Any]:
    return {one.name: getattr(value, one.name) for one in fields(value)}


def _rate(board: Board) -> Any:
    """Return the seed rate wanted next, or set now, on the first drive group."""
    place = board.planter.places(Scope.DRIVE)[0]
    cell = Cell("seed_rate", place)
    value = board.target.get(cell) or board.as_found.get(cell)
    return value if is_quantity(value) else None


def _cells(board: Board) -> int:
    first = Cell("disc", Place.of_row(1))
    code = board.target.get(first) or board.as_found.get(first)
    found = next((part.cells for part in board.parts if part.code == code), None)
    return found or COMMON_CELLS
