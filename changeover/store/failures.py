"""Turning what a database reports into the one sentence that a person can act on."""

import errno
from json import JSONDecodeError
from pathlib import Path

from sqlalchemy.exc import DBAPIError, IntegrityError, OperationalError
from sqlalchemy.orm.exc import StaleDataError

from changeover.quantities import Refusal
from changeover.store.backup import backups_of
from changeover.store.refusals import Busy


class Spoilt(ValueError):
    """A value in a store that is not what its column holds."""


SPOILT = (UnicodeDecodeError, JSONDecodeError, Spoilt)  # a broken schema, or a broken value
_SENTENCES = (
    ("database is locked", "is locked by another program; close that program and try again"),
    ("readonly database", "is read-only; allow writing to it and its folder, or open a copy"),
    ("disk is full", "could not be saved because the disk is full; free some space and try again"),
    ("file is not a database", "is not a store of Changeover; choose another file"),
    ("unable to open", "cannot be opened; check that its folder exists and can be written to"),
    ("disk i/o error", "cannot be read or written; check the disk and open a copy"),
)
_MEANWHILE = ("could not serialize", "deadlock detected", "database is locked")
_DAMAGED = ("could not decode", "malformed", "no such table", "no such column")
_SERVER = (
    "connection failed",
    "connection refused",
    "could not translate host",
    "failed to resolve host",
    "server closed",
    "timed out",
    "timeout expired",
    "unreachable",
)


def from_backup(path: Path | None) -> str:
    """Say what to do about a damaged store: in a file where backups lie, or on a server (None)."""
    if path is None:
        return "have a backup restored on its server"
    if there := backups_of(path):
        return f"try the backups in the folder {there[-1].parent.name} beside it, the newest first"
    return "there is no backup beside it, so open a copy that you keep elsewhere"


def refusal_of(error: Exception, where: str, path: Path | None = None) -> Refusal:
    """Return the refusal for a failure of the store at ``where``, in a file or on a server (None).

    Busy when another writer came in between, so that trying again helps.
    """
    text = str(getattr(error, "orig", None) or error)
    folded = text.lower()
    if isinstance(error, StaleDataError) or any(sign in folded for sign in _MEANWHILE):
        return Busy(f"The store {where} is locked by another program; close it or try again.")
    for sign, says in _SENTENCES:
        if sign in folded:
            return Refusal(f"The store {where} {says}.")
    if isinstance(error, SPOILT) or any(sign in folded for sign in _DAMAGED):
        return Refusal(f"The store {where} is damaged ({_detail(text)}); {from_backup(path)}.")
    if isinstance(error, OSError):
        return _of_system(error, where)
    if isinstance(error, IntegrityError):
        return Busy(f"The store {where} was changed by someone else meanwhile; look again.")
    if any(sign in folded for sign in _SERVER):
        return Refusal(f"The server of {where} does not answer; check its address and network.")
    detail = _detail(text) if isinstance(error, DBAPIError) else "no detail"
    if path is None and isinstance(error, OperationalError):
        return Refusal(
            f"The server of {where} refuses ({detail}); check address, name and password."
        )
    return Refusal(f"The store {where} cannot be used ({detail}); {from_backup(path)}.")


def _detail(text: str) -> str:
    """Return the first line of what was reported, without its full stop."""
    lines = text.strip().splitlines()
    return lines[0].rstrip(". ") if lines else "no detail"


def _of_system(error: OSError, where: str) -> Refusal:
    if error.errno == errno.ENOSPC:
        return Refusal(f"The disk is full beside {where}; free some space and try again.")
    if error.errno in (errno.EACCES, errno.EPERM, errno.EROFS):
        return Refusal(f"The folder of {where} cannot be written to; allow it or choose another.")
    reason = error.strerror or "no reason given"
    return Refusal(f"The file {where} cannot be used ({reason}); choose another.")
