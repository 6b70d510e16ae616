"""The plan as a calendar that other programs open: sittings and due hours in iCalendar.

**Source**: RFC 5545: content lines end with CR LF and are folded at 75 octets (3.1); text is escaped (3.3.11); moments
are given in UTC (3.3.5, form 2), so that no time zone need be described; an event without an end lasts no time (3.6.1).
"""

from __future__ import annotations

import datetime as dt
import hashlib
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from fairhand.model.plan import PaperDue, Plan, Step

OCTETS = 75
"""The longest line, its end not counted."""


def write_calendar(
    plan: Plan, steps: Mapping[str, Step], papers: Sequence[PaperDue], made: dt.datetime, of: str = ""
) -> bytes:
    r"""The calendar of a plan: an event for each sitting, and one for each due hour.

    A sitting keeps its UID from one calendar to the next, by its step and its place among that step's sittings, and a
    due hour by its paper, so that a program that is given the new one moves them.

    Args:
        plan: The plan.
        steps: Its steps by id.
        papers: When the papers are due.
        made: The present hour.
        of: What tells this desk from others, as its writer's name; it goes into the UIDs.

    >>> write_calendar(Plan((), ()), {}, (), dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)).split(b"\r\n")[:2]
    [b'BEGIN:VCALENDAR', b'VERSION:2.0']
    """
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Fairhand//Plan//EN", "CALSCALE:GREGORIAN", "METHOD:PUBLISH"]
    titles = {paper.paper: paper.title or paper.paper for paper in papers}
    seen: Counter[str] = Counter()
    for sitting in plan.sittings:
        step = steps.get(sitting.step)
        seen[sitting.step] += 1
        name, why, paper = (step.name, step.why, step.paper) if step else (sitting.step, "", "")
        says = f"{titles.get(paper, paper)}: {name}" if paper else name
        lines += _event(f"{of} {sitting.step} {seen[sitting.step]}", made, sitting.start, sitting.end, says, why)
    for due in papers:
        if due.due is not None:
            lines += _event(f"{of} {due.paper} due", made, due.due, None, f"Due: {titles[due.paper]}", "")
    lines.append("END:VCALENDAR")
    return b"".join(fold_line(line) for line in lines)


def fold_line(line: str) -> bytes:
    r"""A content line in pieces of at most 75 octets, no letter parted, each further piece begun by a space.

    >>> fold_line("SUMMARY:" + "é" * 40).split(b"\r\n")[1].decode()
    ' ééééééé'
    """
    out, room = bytearray(), OCTETS
    for letter in line:
        encoded = letter.encode("utf-8", "replace")
        if len(encoded) > room:
            out += b"\r\n "
            room = OCTETS - 1
        out += encoded
        room -= len(encoded)
    return bytes(out) + b"\r\n"


def escape_text(text: str) -> str:
    r"""Text as a property's value; what may not stand in one is left out.

    >>> print(escape_text("Tides; a study, in \\ two\nparts"))
    Tides\; a study\, in \\ two\nparts
    """
    plain = text.replace("\r\n", "\n").replace("\r", "\n").replace("\\", "\\\\")
    for mark in ";,":
        plain = plain.replace(mark, f"\\{mark}")
    return "".join(one for one in plain if one in "\n\t" or one.isprintable()).replace("\n", "\\n")


def _event(
    known_by: str, made: dt.datetime, start: dt.datetime, end: dt.datetime | None, says: str, why: str
) -> Iterator[str]:
    yield "BEGIN:VEVENT"
    yield f"UID:{hashlib.sha256(known_by.encode('utf-8', 'replace')).hexdigest()[:32]}@fairhand"
    yield f"DTSTAMP:{_utc(made)}"
    yield f"SEQUENCE:{int(made.timestamp() // 60)}"  # grows from one calendar to the next, whatever was made before
    yield f"DTSTART:{_utc(start)}"
    if end is not None:
        yield f"DTEND:{_utc(end)}"
    yield f"SUMMARY:{escape_text(says)}"
    if why:
        yield f"DESCRIPTION:{escape_text(why)}"
    yield f"TRANSP:{'OPAQUE' if end else 'TRANSPARENT'}"
    yield "END:VEVENT"


def _utc(hour: dt.datetime) -> str:
    since = hour.replace(tzinfo=dt.UTC) if hour.tzinfo is None else hour.astimezone(dt.UTC)
    return f"{since:%Y%m%dT%H%M%SZ}"
