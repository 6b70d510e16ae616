"""Dates and hours as sheets write them.

**Source**: a small grammar of our own: no library reads dates in prose rightly often enough, and all of them see dates
where there are none.
"""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import dataclass
from functools import lru_cache

from fairhand.brief.numbers import COUNT, number_value

_MONTHS = "january february march april may june july august september october november december".split()
_MONTH = (
    r"(?:Jan(?:uary)?|Feb(?:ruary)?|Mar(?:ch)?|Apr(?:il)?|May|June?|July?|Aug(?:ust)?|Sept?(?:ember)?|Oct(?:ober)?"
    r"|Nov(?:ember)?|Dec(?:ember)?)\b\.?"
)
_DAYS = "monday tuesday wednesday thursday friday saturday sunday".split()
_DAY = (
    r"(?:Mon(?:day)?|Tue(?:s(?:day)?)?|Wed(?:nesday|s)?|Thu(?:r(?:s(?:day)?)?)?|Fri(?:day)?|Sat(?:urday)?"
    r"|Sun(?:day)?)\b\.?"
)

_DATE = re.compile(
    rf"(?:\b(?P<weekday>{_DAY}),? (?:the |on )?|(?<![\w/.:-]))(?:"
    rf"(?P<d1>\d{{1,2}})(?:st|nd|rd|th)?(?: of)? (?P<m1>{_MONTH})(?:,? (?P<y1>(?:19|20)\d\d)\b)?"
    rf"|(?P<m2>{_MONTH}) (?:the )?(?P<d2>\d{{1,2}})(?:st|nd|rd|th)?(?![\d:])(?:,? (?P<y2>(?:19|20)\d\d)\b)?"
    rf"|(?P<y3>20\d\d)-(?P<m3>\d\d)-(?P<d3>\d\d)"
    rf"|(?P<n1>\d{{1,2}})/(?P<n2>\d{{1,2}})(?:/(?P<y4>(?:20)?\d\d))?(?![\d/%]| (?:of |an? )*(?:letter"
    rf"|grade|notch|page|mark))"
    rf"|(?P<n3>\d{{1,2}})[.-](?P<n4>\d{{1,2}})[.-](?P<y5>(?:20)?\d\d)(?![\d/%]))",
    re.IGNORECASE,
)
_RELATIVE = re.compile(
    rf"\b(?:(?P<n>{COUNT}|an?) (?P<unit>days?|weeks?|fortnights?|months?) from (?:today|now|this date"
    rf"|the date of (?:this|issue)\w*)"
    rf"|(?P<named>{_DAY}),? (?:the )?(?P<dom>\d{{1,2}})(?:st|nd|rd|th)\b(?! (?:of |century|edition|week|{_MONTH}))"
    rf"|(?P<which>next|this|on|by|due) (?P<day>Monday|Tuesday|Wednesday|Thursday|Friday|Saturday"
    rf"|Sunday)\b(?! of\b|,? (?:the )?\d|,? {_MONTH}))",
    re.IGNORECASE,
)
_TIME = re.compile(
    r"\b(?P<eod>(?:the )?end of (?:the |that )?day)\b|\b12 ?(?:o'clock )?(?P<noon12>noon|midday|midnight)\b"
    r"|\b(?P<noon>noon|midday|midnight)\b"
    r"|(?<![\d/.:])(?P<h>\d{1,2})(?:[:.](?P<min>[0-5]\d))? ?(?P<half>[ap])\.?m\b\.?"
    r"|(?<![\d/.:])(?P<hdot>1[3-9]|2[0-3])\.(?P<mdot>[0-5]\d)(?![\d%.])"
    r"|(?<![\d/.:])(?P<h24>[01]?\d|2[0-3])[:h](?P<m24>[0-5]\d)(?![\d:]) ?(?:hrs?|hours)?"
    r"|(?<![\d/.:])(?P<h4>[01]\d|2[0-3])(?P<m4>[0-5]\d) ?(?:(?:hrs?|hours|h)\b|(?=on\b))"
    rf"|\b(?P<oclock>\d{{1,2}}|{COUNT})(?: o'clock|(?= in the (?:morning|afternoon|evening)))"
    r"(?: in the (?P<part>morning|afternoon|evening)| at (?P<night>night))?",
    re.IGNORECASE,
)

_MORNING = 7
"""The first full hour that is one of the morning where neither morning nor afternoon is said."""


@dataclass(frozen=True, slots=True)
class Dated:
    """A date that stands in a text."""

    start: int
    end: int
    on: dt.date | None
    """The day, or None where the year cannot be told."""
    doubt: str = ""
    """What is not certain about it, as a question to the writer; empty where nothing is."""
    explicit_year: bool = False


@dataclass(frozen=True, slots=True)
class Timed:
    """An hour that stands in a text."""

    start: int
    end: int
    at: str
    """``HH:MM``, 24 hours."""
    doubt: str = ""


def _month(word: str) -> int:
    return next(i for i, name in enumerate(_MONTHS, 1) if name.startswith(word.lower().rstrip(".")[:3]))


def _weekday(word: str | None) -> int | None:
    return next((i for i, name in enumerate(_DAYS) if word and name.startswith(word.lower()[:3])), None)


def _day(year: int, month: int, day: int) -> dt.date | None:
    try:
        return dt.date(year, month, day)
    except ValueError:
        return None


def _place_year(month: int, day: int, weekday: int | None, given: dt.date) -> dt.date | None:
    """The day in the year that the sheet's own day and its weekday point to."""
    candidates = [d for year in (given.year, given.year + 1, given.year - 1) if (d := _day(year, month, day))]
    coming = [d for d in candidates if given <= d <= given + dt.timedelta(days=366)]
    if weekday is not None:
        agreeing = [d for d in candidates if d.weekday() == weekday]
        if ahead := [d for d in agreeing if d in coming]:
            return ahead[0]
        near = [d for d in agreeing if abs((d - given).days) < 45]
        if near and not coming:
            return near[0]
    return coming[0] if coming else (candidates[0] if candidates else None)


def _read_date(match: re.Match[str], given: dt.date | None, *, day_first: bool | None, british: bool) -> Dated | None:
    weekday = _weekday(match["weekday"])
    doubt = ""
    year_word = match["y1"] or match["y2"] or match["y3"] or match["y4"] or match["y5"]
    if match["m1"] or match["m2"]:
        month, day = _month(match["m1"] or match["m2"]), int(match["d1"] or match["d2"])
        orders = [(month, day)]
    elif match["y3"]:
        orders = [(int(match["m3"]), int(match["d3"]))]
    else:
        a, b = int(match["n1"] or match["n3"]), int(match["n2"] or match["n4"])
        # Points and hyphens part the figures where the day is written first, unless the sheet shows otherwise.
        orders = [(b, a), (a, b)] if day_first or ((match["n3"] or british) and day_first is None) else [(a, b), (b, a)]
        orders = [o for o in dict.fromkeys(orders) if 1 <= o[0] <= 12 and 1 <= o[1] <= 31]
    orders = [(m, d) for m, d in orders if _day(2024, m, d)]
    if not orders:
        return None
    year = (int(year_word) if len(year_word) == 4 else 2000 + int(year_word)) if year_word else None
    days = []
    for month, day in orders:
        on = _day(year, month, day) if year else _place_year(month, day, weekday, given) if given else None
        if on:
            days.append(on)
    if not days:
        return Dated(match.start(), match.end(), None, f"which year is meant by “{match.group()}”?")
    agreeing = [d for d in days if weekday is None or d.weekday() == weekday]
    likely = agreeing or days
    # Of two readings, a day that lies before the sheet was given out is hardly meant; it is asked all the same.
    on = next((d for d in likely if given is None or d > given), likely[0])
    words = match.group().strip()
    if len(days) > 1 and day_first is None and (weekday is None or len(agreeing) != 1):
        doubt = f"“{words}” is read as {on.isoformat()}: are day and month in that order?"
    elif weekday is not None and on.weekday() != weekday:
        said, true = _DAYS[weekday].capitalize(), _DAYS[on.weekday()].capitalize()
        doubt = f"“{words}” is not a {said}, but a {true}: which day is meant?"
    return Dated(match.start(), match.end(), on, doubt, explicit_year=bool(year))


def _coming(given: dt.date, day: int, weekday: int | None) -> dt.date | None:
    """The next day of that number in its month that is that day of the week, within the year ("Tuesday the 27th")."""
    days = (given + dt.timedelta(days=n) for n in range(366))
    return next((d for d in days if d.day == day and d.weekday() == weekday), None)


def _read_relative(match: re.Match[str], given: dt.date) -> Dated | None:
    if match["n"]:
        number = 1 if match["n"].lower() in {"a", "an"} else int(number_value(match["n"]))
        unit = match["unit"].lower().rstrip("s")
        days = {"day": 1, "week": 7, "fortnight": 14, "month": 30}[unit] * number
        return Dated(match.start(), match.end(), given + dt.timedelta(days=days)) if days < 1000 else None
    if match["named"]:
        on = _coming(given, int(match["dom"]), _weekday(match["named"]))
        return Dated(match.start(), match.end(), on) if on else None
    weekday = _weekday(match["day"])
    if weekday is None:
        return None
    ahead = (weekday - given.weekday()) % 7 or 7
    on = given + dt.timedelta(days=ahead)
    return Dated(
        match.start("day"), match.end(), on, f"“{match.group()}” is read as {on.isoformat()}: is that the day?"
    )


@lru_cache(maxsize=16)
def writes_day_first(text: str) -> bool | None:
    """Whether the numeric dates of ``text`` have the day before the month; None where nothing tells.

    >>> writes_day_first("due 21/3, draft 3/3"), writes_day_first("due 9/23"), writes_day_first("due 3/4")
    (True, False, None)
    """
    first = second = 0
    for match in _DATE.finditer(text):
        a, b = match["n1"] or match["n3"], match["n2"] or match["n4"]
        if not a or not b:
            continue
        if int(a) > 12 >= int(b):
            first += 1
        elif int(b) > 12 >= int(a):
            second += 1
    return None if first == second else first > second


_BRITISH = re.compile(
    r"\b(?:per cent|centred?|colour\w*|favour\w*|honour\w*|programmes?|modules?|summarise\w*|organise\w*|recognise\w*"
    r"|analyse[ds]?|judgement|tutors?|candidate number|British|UK|A4|\d ?cm)\b|£"
)
_AMERICAN = re.compile(
    r"\b(?:centered?|colors?|favor\w*|honor\w*|program|summarize\w*|organize\w*|analyze[ds]?|judgment|American"
    r"|semester|syllabus|letter grades?|GPA|freshm[ae]n|\d[ -]?inch(?:es)?)\b|\$\d"
)


@lru_cache(maxsize=16)
def seems_british(text: str) -> bool:
    """Whether a sheet's spelling and words are plainly more British than American.

    >>> seems_british("Sixty per cent of the module; print on A4."), seems_british("The syllabus is here.")
    (True, False)
    """
    here, there = len(_BRITISH.findall(text)), len(_AMERICAN.findall(text))
    return here >= 2 and here > 2 * there


def find_dates(
    text: str, given: dt.date | None, *, day_first: bool | None = None, british: bool = False
) -> list[Dated]:
    """The dates in ``text``, in order, their year placed after ``given`` and by their weekday.

    Where nothing tells day from month (``day_first``), the day is put first for a British sheet, and asked.

    >>> find_dates("by Friday 19 March", dt.date(2027, 3, 1))[0].on
    datetime.date(2027, 3, 19)
    """
    found = [
        d for match in _DATE.finditer(text) if (d := _read_date(match, given, day_first=day_first, british=british))
    ]
    if given:
        for match in _RELATIVE.finditer(text):
            dated = _read_relative(match, given)
            if dated and not any(d.start < dated.end and dated.start < d.end for d in found):
                found.append(dated)
    return sorted(found, key=lambda d: d.start)


def find_times(text: str) -> list[Timed]:
    """The hours in ``text``, in order; midnight is the end of the day, and asked.

    >>> [t.at for t in find_times("12 noon, 5.00 pm, 23:59, four o'clock in the afternoon")]
    ['12:00', '17:00', '23:59', '16:00']
    """
    found = []
    for match in _TIME.finditer(text):
        doubt = ""
        if match["eod"]:
            hour, minute = 23, 59
        elif word := match["noon12"] or match["noon"]:
            hour, minute = 12, 0
            if word.lower() == "midnight":
                hour, minute = 23, 59
                doubt = "“midnight” is read as the end of that day (23:59): is that meant?"
        elif match["half"]:
            hour, minute = int(match["h"]), int(match["min"] or 0)
            if not 1 <= hour <= 12:
                continue
            hour = hour % 12 + (12 if match["half"].lower() == "p" else 0)
        elif match["h24"] or match["hdot"]:
            hour, minute = int(match["h24"] or match["hdot"]), int(match["m24"] or match["mdot"])
            if len(match["h24"] or "00") == 1 and 1 <= hour < _MORNING:  # "4:00", where no zero says that it is early
                hour += 12
        elif match["h4"]:
            hour, minute = int(match["h4"]), int(match["m4"])
        else:
            hour, minute = int(number_value(match["oclock"])), 0
            if not 1 <= hour <= 12:
                continue
            part = (match["part"] or match["night"] or "").lower()
            # Nobody hands in before the morning: five o'clock alone is that of the afternoon.
            if part in {"afternoon", "evening", "night"} or (not part and hour < _MORNING):
                hour = hour % 12 + 12
        found.append(Timed(match.start(), match.end(), f"{hour:02d}:{minute:02d}", doubt))
    return found
