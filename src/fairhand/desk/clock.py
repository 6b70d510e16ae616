"""The one clock of the program."""

from __future__ import annotations

import datetime as dt
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError


def find_zone(name: str) -> dt.tzinfo | None:
    """The time zone of an IANA name, or None where no zone has it.

    >>> str(find_zone("Europe/London")), find_zone("Atlantis/Capital")
    ('Europe/London', None)
    """
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return None


def now(time_zone: str = "") -> dt.datetime:
    """The present moment, always with its zone.

    Args:
        time_zone: An IANA name; empty, or unknown, for the machine's own zone.
    """
    return dt.datetime.now(dt.UTC).astimezone(find_zone(time_zone) if time_zone else None)
