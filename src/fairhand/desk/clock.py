"""The one clock of the program."""

from __future__ import annotations

import datetime as dt
import os
from pathlib import Path
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


def own_zone() -> dt.tzinfo | None:
    """The machine's own zone, with its changes of the clock where its name can be told; else its present offset.

    **Source**: tzset(3) for the variable TZ; systemd's localtime(5) for the link ``/etc/localtime``.
    """
    linked = Path("/etc/localtime")
    named = os.environ.get("TZ", "").removeprefix(":")
    if not named and linked.is_symlink():
        named = str(linked.resolve()).partition("zoneinfo/")[2]
    return (find_zone(named) if named else None) or now().tzinfo


def now(time_zone: str = "") -> dt.datetime:
    """The present moment, always with its zone.

    Args:
        time_zone: An IANA name; empty, or unknown, for the machine's own zone.
    """
    return dt.datetime.now(dt.UTC).astimezone(find_zone(time_zone) if time_zone else None)
