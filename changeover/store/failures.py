"""Turning what a database reports into the one sentence that a person can act on."""

import errno
from json import JSONDecodeError

from sqlalchemy.exc import DBAPIError, IntegrityError, OperationalError
from sqlalchemy.orm.exc import StaleDataError

from changeover.quantities import Refusal
from changeover.store.refusals import Busy

SPOILT = (UnicodeDecodeError, JSONDecodeError)  # a broken schema, a value that is no JSON
_FROM_BACKUP = "open its latest backup from the folder beside it"
_SENTENCES = (
    ("database is locked", "is locked by another program; close that program and try again"),
    ("readonly database", "is read-only; allow writing to it and its folder, or open a copy"),
    ("disk is full", "could not be saved because the disk is full; free some space and try again"),
    ("file is not a database", "is not a store of Changeover; choose another file"),
    ("could not decode", f"is damaged; {_FROM_BACKUP}"),
    ("malformed", f"is damaged; {_FROM_BACKUP}"),
    ("unable to open", "cannot be opened; check that its folder exists and can be written to"),
    ("disk i/o error", "cannot be read or written; check the disk and open a copy"),
)
_MEANWHILE = ("could not serialize", "deadlock detected", "database is locked")
_SERVER = ("connection failed", "connection refused", "could not translate host", "server closed")


def refusal_of(error: Exception, where: str) -> Refusal:
    """Return the refusal for a failure of the store at ``where``.

    Busy when another writer came in between, so that trying again helps.
    """
    text = str(getattr(error, "orig", None) or error)
    folded = text.lower()
    if isinstance(error, StaleDataError) or any(sign in folded for sign in _MEANWHILE):
        return Busy(f"The store {where} is locked by another program; close it or try again.")
    for sign, says in _SENTENCES:
        if sign in folded:
            return Refusal(f"The store {where} {says}.")
    if isinstance(error, SPOILT):
        return Refusal(f"The store {where} is damaged; {_FROM_BACKUP}.")
    if isinstance(error, OSError):
        return _of_system(error, where)
    if isinstance(error, IntegrityError):
        return Busy(f"The store {where} was changed by someone else meanwhile; look again.")
    if any(sign in folded for sign in _SERVER):
        return Refusal(f"The server of {where} does not answer; check its address and network.")
    kind = "reached" if isinstance(error, OperationalError) else "used"
    detail = text.strip().splitlines()[0] if isinstance(error, DBAPIError) and text else "no detail"
    return Refusal(f"The store {where} cannot be {kind} ({detail}); open its latest backup.")


def _of_system(error: OSError, where: str) -> Refusal:
    if error.errno == errno.ENOSPC:
        return Refusal(f"The disk is full beside {where}; free some space and try again.")
    if error.errno in (errno.EACCES, errno.EPERM, errno.EROFS):
        return Refusal(f"The folder of {where} cannot be written to; allow it or choose another.")
    reason = error.strerror or "no reason given"
    return Refusal(f"The file {where} cannot be used ({reason}); choose another.")
