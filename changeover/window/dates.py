"""Dates and times as a person reads them."""

from datetime import UTC, datetime


def moment(text: str) -> datetime:
    """Read an ISO 8601 text of the store, which is in UTC, as local time."""
    read = datetime.fromisoformat(text)
    return (read if read.tzinfo else read.replace(tzinfo=UTC)).astimezone()


def day_text(text: str) -> str:
    """Say the day of an ISO 8601 text: ``3 May 2026``."""
    day = moment(text)
    return f"{day.day} {day:%B %Y}"


def moment_text(text: str) -> str:
    """Say day and time of an ISO 8601 text: ``3 May 2026, 07:12``."""
    return f"{day_text(text)}, {moment(text):%H:%M}"
