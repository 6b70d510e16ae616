"""The assignment sheets of a paper, oldest first."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterable

from fairhand.desk.seen import FileSeen

_DATE_IN_NAME = re.compile(r"(?<!\d)((?:19|20)\d\d)([-._ ]?)(\d\d)\2(\d\d)(?!\d)")
"""``2026-03-02``, ``2026.03.02``, ``20260302`` (ISO 8601, and what people make of it)."""


def date_in_name(name: str) -> dt.date | None:
    """The day that a file's name bears, or None.

    >>> date_in_name("brief/2026-03-02 message.txt"), date_in_name("20261399.pdf")
    (datetime.date(2026, 3, 2), None)
    """
    for year, _, month, day in _DATE_IN_NAME.findall(name):
        try:
            return dt.date(int(year), int(month), int(day))
        except ValueError:
            continue
    return None


def order_sheets(
    of_course: Iterable[FileSeen], of_paper: Iterable[FileSeen], given: dt.date | None = None
) -> tuple[FileSeen, ...]:
    """The sheets in the order in which they were given, so that the later word can win.

    The day is the one in the name, else that of the file's last change; but the file ``brief`` is the sheet of which
    ``paper.toml`` may say when it was given. A course's sheet with no day in its name comes first, since it holds for
    every paper until something else is said. On one day the course's come first.

    Args:
        of_course: The sheets that hold for all papers of the course.
        of_paper: The paper's own.
        given: The day that the paper's sheet was given out, where that is known.
    """
    keyed = [(_key(sheet, dt.date.min, own=False), sheet) for sheet in of_course]
    keyed += [(_key(sheet, given if "/" not in sheet.name else None, own=True), sheet) for sheet in of_paper]
    return tuple(sheet for _, sheet in sorted(keyed, key=lambda pair: pair[0]))


def _key(sheet: FileSeen, given: dt.date | None, *, own: bool) -> tuple[dt.date, bool, int, str]:
    day = date_in_name(sheet.name.rpartition("/")[2]) or given
    changed = dt.datetime.fromtimestamp(sheet.mtime_ns / 1e9, dt.UTC).date()
    return day or changed, own, sheet.mtime_ns, sheet.name
