"""The writer's hours as they are written: in ``desk.toml``, and in the form."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping, Sequence

from fairhand.model.problem import Problem
from fairhand.planning.hours import ASSUMED, DAY, LONGEST, PAUSE, Hours, Stretch

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
WHERE = "desk.toml, hours"
MOST_STRETCHES = 12

_CLOCK = r"(\d{1,2})(?:[:.h](\d{2}))?"
_STRETCH = re.compile(rf"{_CLOCK}\s{{0,3}}(?:-|–|—|to|until)\s{{0,3}}{_CLOCK}")
_COUNT = re.compile(r"(\d{1,2}(?:[.,]\d{1,2})?)\s{0,3}(?:h|hrs?|hours?)?")
_RANGE = re.compile(r"(\d{4}-\d{2}-\d{2})(?:\s{0,3}(?:-|–|—|to|until)\s{0,3}(\d{4}-\d{2}-\d{2}))?")


def read_hours(table: object) -> tuple[Hours, tuple[Problem, ...]]:
    """The hours that a table of settings states, with a problem for each setting that is not as it should be.

    A weekday is text, as ``"17:00–20:00"`` or ``"9-12, 14-16"``, or a number of hours, which begin at ``from``. What is
    not said of a day is none; ``until`` is the hour after which nothing is done.

    >>> hours, problems = read_hours({"monday": "17–20", "saturday": 3, "from": "9:30", "off": ["2027-02-14"]})
    >>> hours.week[0], hours.week[5], hours.is_off(dt.date(2027, 2, 14)), problems
    (((1020, 1200),), ((570, 750),), True, ())
    """
    if table is None or table == {}:
        return ASSUMED, ()
    if not isinstance(table, Mapping):
        return ASSUMED, (Problem(WHERE, "it is no table", "write [hours] above the weekdays; usual hours are assumed"),)
    problems: list[Problem] = []
    start = _read_clock(table, "from", 18 * 60, problems)
    until = _read_clock(table, "until", DAY, problems) or DAY
    week = tuple(_read_day(table, day, start, until, problems) for day in WEEKDAYS)
    hours = Hours(
        week=week if any(week) or any(day in table for day in WEEKDAYS) else ASSUMED.week,
        off=_read_days_off(table.get("off", []), problems),
        longest_minutes=_read_minutes(table, "longest", LONGEST, problems),
        pause_minutes=_read_minutes(table, "pause", PAUSE, problems),
        stated=any(day in table for day in WEEKDAYS),
    )
    return hours, tuple(problems)


def read_stretches(written: object, start: int = 18 * 60) -> tuple[Stretch, ...] | None:
    """The stretches that are written for one day, in order and parted; None where that cannot be read.

    >>> read_stretches("9.30-11, 14:00 to 16:00"), read_stretches(2, 600), read_stretches(""), read_stretches("late")
    (((570, 660), (840, 960)), ((600, 720),), (), None)
    """
    if isinstance(written, int | float) and not isinstance(written, bool):
        written = f"{written:g}"
    if not isinstance(written, str):
        return None
    parts = [part.strip() for part in re.split(r"[,;]|\band\b", written.lower()) if part.strip(" -–—")]
    whole = _COUNT.fullmatch(written.lower().strip())
    if whole:
        length = round(float(whole[1].replace(",", ".")) * 60)
        return ((start, start + length),) if 0 < length <= DAY - start else () if not length else None
    found = []
    for part in parts if len(parts) <= MOST_STRETCHES else [""]:
        match = _STRETCH.fullmatch(part)
        if not match:
            return None
        begins, ends = _clock(match[1], match[2]), _clock(match[3], match[4])
        if begins is None or ends is None or begins == ends:
            return None
        found.append((begins, ends if ends > begins else ends + DAY))
    return _part(sorted(found))


def write_stretches(day: Sequence[Stretch]) -> str:
    """A day's stretches as they are written.

    >>> write_stretches(((570, 660), (840, 1440)))
    '09:30–11:00, 14:00–24:00'
    """
    return ", ".join(f"{write_clock(start)}–{write_clock(end)}" for start, end in day)


def write_clock(minute: int) -> str:
    """A minute after midnight as the clock has it.

    >>> write_clock(570), write_clock(1440), write_clock(1500)
    ('09:30', '24:00', '01:00')
    """
    return f"{minute // 60 - 24 * (minute > DAY):02}:{minute % 60:02}"


def read_days(written: str) -> tuple[dt.date, dt.date] | None:
    """The first and last of the days that are written, as ``2027-02-14`` or ``2027-02-14 to 2027-02-20``; or None.

    >>> read_days("2027-02-14 – 2027-02-20")
    (datetime.date(2027, 2, 14), datetime.date(2027, 2, 20))
    """
    match = _RANGE.fullmatch(written.strip().lower())
    try:
        first = dt.date.fromisoformat(match[1]) if match else None
        last = dt.date.fromisoformat(match[2]) if match and match[2] else first
    except ValueError:
        return None
    return (first, last) if first and last and first <= last else None


def _clock(hour: str, minute: str | None) -> int | None:
    at = int(hour) * 60 + int(minute or 0)
    return at if int(minute or 0) < 60 and at <= DAY else None


def _part(stretches: Sequence[Stretch]) -> tuple[Stretch, ...]:
    """The same time in stretches of which none overlaps or touches the next."""
    parted: list[Stretch] = []
    for start, end in stretches:
        if parted and start <= parted[-1][1]:
            parted[-1] = (parted[-1][0], max(end, parted[-1][1]))
        else:
            parted.append((start, end))
    return tuple(parted)


def _read_clock(table: Mapping[str, object], key: str, default: int, problems: list[Problem]) -> int:
    value = table.get(key)
    if value is None:
        return default
    match = re.fullmatch(_CLOCK, value.strip()) if isinstance(value, str) else None
    if isinstance(value, dt.time):
        return value.hour * 60 + value.minute
    at = _clock(match[1], match[2]) if match else None
    if at is None:
        problems.append(Problem(f"{WHERE}, {key}", f"{value!r} is no hour", 'write it as "18:00"; it is left out now'))
    return default if at is None else at


def _read_day(
    table: Mapping[str, object], day: str, start: int, until: int, problems: list[Problem]
) -> tuple[Stretch, ...]:
    found = read_stretches(table.get(day, ""), start)
    if found is None:
        told = f"{table[day]!r} tells no hours"
        problems.append(Problem(f"{WHERE}, {day}", told, 'write them as "17:00–20:00", or as a number of hours'))
    return tuple((begin, min(end, until)) for begin, end in found or () if begin < until)


def _read_minutes(table: Mapping[str, object], key: str, default: int, problems: list[Problem]) -> int:
    value = table.get(key, default)
    if isinstance(value, int) and not isinstance(value, bool) and 0 <= value <= DAY:
        return value
    problems.append(Problem(f"{WHERE}, {key}", f"{value!r} is no number of minutes", f"{default} are taken"))
    return default


def _read_days_off(value: object, problems: list[Problem]) -> tuple[tuple[dt.date, dt.date], ...]:
    found = []
    for one in value if isinstance(value, list) else [value]:
        days = read_days(str(one))
        if days is None:
            told = f"{str(one)!r} is no day"
            problems.append(Problem(f"{WHERE}, off", told, 'write it as "2027-02-14" or "2027-02-14 – 2027-02-20"'))
        else:
            found.append(days)
    return tuple(sorted(found))
