"""The small print of lateness: of what a share is taken, which days count, tiers, grace, floors and caps."""

from __future__ import annotations

import re
from collections.abc import Iterable

from fairhand.brief.dates import find_times
from fairhand.brief.late_rule import write_tier
from fairhand.brief.numbers import COUNT, NUMBER, number_value
from fairhand.model.late_rule import Tier
from fairhand.model.requirement import Value

LATE_TERMS: tuple[str, ...] = (
    "of",
    "days",
    "every",
    "tiers",
    "at_most",
    "compound",
    "day_from",
    "grace_minutes",
    "refused_after_hours",
    "floor",
    "cap",
)
"""Values of a late requirement beside the four that every sheet has."""

_OF_TOTAL = re.compile(
    r"\bof the (?:(?:total|maximum|available|possible|full|full-credit|assignment's|item's|paper's|task's|assessment's)"
    r" (?:available |possible |total |maximum )?(?:mark|grade|score|point|value|worth|credit)s?|(?:mark|point)s"
    r" (?:available|possible)|(?:total|maximum)(?: (?:mark|grade|score|point)s?)?)\b"
    r"|\bpercentage points?\b",
    re.IGNORECASE,
)
_OF_MARK = re.compile(
    r"\bof (?:the|your|its) (?:(?:final |awarded |earned |original |actual )?(?:mark|grade|score)"
    r"|(?:mark|grade|score|points) (?:awarded|achieved|obtained|earned|gained|received|you (?:would|have)))\b"
    r"|\bof what (?:it|you|the \w+) (?:would|earn|get|gain)",
    re.IGNORECASE,
)
_WORKING = re.compile(
    r"\b(?:working|business|school|week)[ -]?days?\b|\bweekends? (?:(?:do|are|is|does) )?(?:not|n't|never|excluded)"
    r"|\b(?:excluding|not counting|without|except) (?:the )?weekends?\b|\bweekends (?:don't|aren't) ",
    re.IGNORECASE,
)
_CALENDAR = re.compile(
    r"\bcalendar days?\b|\b(?:including|counting|and) (?:the )?weekends?\b"
    r"|\bweekends? (?:days )?(?:are )?(?:included|counted|count|too)\b",
    re.IGNORECASE,
)
_COMPOUND = re.compile(
    r"\b(?:of (?:the remaining|what(?:ever)? (?:is left|remains))|compound(?:ed|s)?|cumulative percentage)\b",
    re.IGNORECASE,
)
_TIMES = re.compile(
    r"(?:multipl(?:y|ied|ies) by|×|\bx|\btimes) ?0?\.(?P<first>\d{1,2})"
    r"(?P<more>(?:,? ?(?:and |then )?0?\.\d{1,2}\b){0,9})",
    re.IGNORECASE,
)
_WEEKLY = re.compile(
    r"\b(?:(?:per|an?|each|every|for each|for every) (?:late |full |started )?week|weekly)\b", re.IGNORECASE
)
_DAY_FROM = re.compile(
    r"\bdays?(?: of lateness| late)?(?: (?:is|are))? (?:runs?|running|starts?|begins?|counts?|counted|ends?|reckoned)"
    r"(?: \w+)? (?:from|at)\b(?P<when>.{0,25})",
    re.IGNORECASE,
)
_GRACE = re.compile(
    rf"\b(?P<n>{COUNT}|an?)[- ](?P<unit>minute|hour|min)s?'?(?: of|'s)? ?(?:grace|leeway)"
    rf"|\b(?:grace(?: period)?|leeway)(?: period)? (?:is |of |lasts )(?:for )?(?P<n2>{COUNT}|an?)[- ]"
    rf"(?P<unit2>minute|hour|min)",
    re.IGNORECASE,
)
_FLOOR = re.compile(
    rf"\b(?:not|n't|never|nor)\b[^.;]{{0,45}}\b(?:below|beneath|under)\b[^.;\d]{{0,35}}?(?P<n>{NUMBER})"
    rf"|\b(?:down )?to (?:a |the )?(?:minimum|floor|pass mark)(?: mark)? of (?P<n2>{NUMBER})",
    re.IGNORECASE,
)
_CAP = re.compile(
    rf"\b(?:capped at|cap of|(?:maximum|highest|best) (?:possible )?(?:mark|grade|score)(?: \w+){{0,3}} (?:of|is|be))"
    rf"(?: (?:the|a) (?:bare )?pass(?: mark)?(?: of| \()?)? ?(?P<n>{NUMBER})",
    re.IGNORECASE,
)
_MOST_LOST = re.compile(
    rf"\b(?:(?:up )?to a (?:maximum|total)(?: \w+)? of|maximum (?:penalty|deduction|loss)(?: is| of){{1,2}}"
    rf"|(?:no|not) more than) (?P<n>{NUMBER}) ?(?P<unit>%|per ?cent|points?|marks?)",
    re.IGNORECASE,
)
_AMOUNT = re.compile(
    rf"(?P<n>{NUMBER}) ?(?:%|per ?cent(?:age)?(?: points?)?|percent(?:age)?(?: points?)?|marks?\b|points?\b|pts?\b)",
    re.IGNORECASE,
)
_EACH = re.compile(r"\b(?:per|a|an|each|every) (?:\w+ )?(?:day|hour|24 hours)|\b(?:daily|hourly)\b", re.IGNORECASE)
_AFTERWARDS = re.compile(
    r"\b(?:(?:each|every|any|per|a|an) (?:further|additional|subsequent|following|extra|other|later|succeeding)"
    r"|(?:each|every) (?:day |hour )?(?:after|thereafter)|thereafter|after (?:that|this|which)|the (?:next|following)"
    r"|subsequent|and then|then)\b",
    re.IGNORECASE,
)
_UNIT = r"(?:calendar |working |school |business |full |late )?(?P<unit{0}>days?|hours?|hrs?|h\b|weeks?)"
_UPTO = re.compile(
    rf"\b(?:the )?first (?:(?P<n1>{COUNT}) )?{_UNIT.format(1)}"
    rf"|\b(?:up to|within|less than|under|not more than|no more than) (?P<n2>{COUNT}|an?) {_UNIT.format(2)}"
    rf"|\b(?P<from>\d{{1,3}}) ?(?:-|to|and|h?rs? to) ?(?P<n3>\d{{1,3}}) {_UNIT.format(3)}"
    rf"|\b(?P<n4>{COUNT}) {_UNIT.format(4)}(?: late|:)",
    re.IGNORECASE,
)
_PER_UNIT = {"h": 1, "d": 24, "w": 168}


def _scope(words: str) -> int | None:
    """Until how many hours an amount's own words say that it holds: 0 for all that follow, None where they do not."""
    if match := _UPTO.search(words):
        number = match["n1"] or match["n2"] or match["n3"] or match["n4"] or "1"
        unit = match["unit1"] or match["unit2"] or match["unit3"] or match["unit4"]
        each = _PER_UNIT[unit[0].lower()]
        return each * (1 if number.lower() in {"a", "an"} else int(number_value(number)))
    return 0 if _AFTERWARDS.search(words) else None


def read_tiers(text: str, per: str) -> tuple[Tier, ...]:
    """The tiers of a rule whose first amount is counted ``per`` day or hour; none where it has one amount only.

    >>> read_tiers("10 % for the first day and 5 % for each further day", "day")
    (Tier(amount=10, to=1, in_all=False), Tier(amount=5, to=None, in_all=False))
    >>> read_tiers("Up to 24 hours late: 10 marks; 24 to 72 hours: 25 marks", "day")
    (Tier(amount=10, to=1, in_all=False), Tier(amount=25, to=3, in_all=True))
    """
    amounts = _amounts(text)
    unit = 1 if per == "hour" else 24
    if len(amounts) < 2:
        return ()
    scope_first = _scope(text[: amounts[0].start()]) is not None
    tiers: list[Tier] = []
    for i, amount in enumerate(amounts):
        before = text[amounts[i - 1].end() if i else 0 : amount.start()]
        after = re.split(r"[.;]", text[amount.end() : amounts[i + 1].start() if i + 1 < len(amounts) else None])[0]
        own = f"{before} {after[:20]}" if scope_first else f"{before[-12:] if i else ''} {after}"
        scope = _scope(own)
        each = _EACH.search(own)
        if scope is None or (each and ("hour" in each.group().lower()) != (per == "hour") and "24" not in each.group()):
            return ()
        to = None if scope == 0 else max(1, scope // unit)
        last = tiers[-1].to if tiers else 0
        if last is None or (to is not None and to <= last):
            return ()
        tiers.append(Tier(number_value(amount["n"]), to, in_all=not (to is None or each or (to == 1 and not tiers))))
    return tuple(tiers)


def _amounts(text: str) -> list[re.Match[str]]:
    """The amounts that are taken off, without those that only bound them."""
    bounds = [match.span() for pattern in (_FLOOR, _CAP, _MOST_LOST) for match in pattern.finditer(text)]
    return [
        match
        for match in _AMOUNT.finditer(text)
        if number_value(match["n"]) and not any(start <= match.start() < end for start, end in bounds)
    ]


def read_multipliers(text: str) -> tuple[float, int, bool] | None:
    """What a rule of multiplication takes off: percent, for how many units it is listed (0: for all), and compound.

    >>> read_multipliers("multiplied by 0.9, 0.8, 0.7"), read_multipliers("× 0.95 for each day")
    ((10.0, 3, False), (5.0, 0, True))
    """
    match = _TIMES.search(text)
    if not match:
        return None
    share = float(f"0.{match['first']}")
    listed = 1 + len(re.findall(r"\.\d", match["more"]))
    return round(100 * (1 - share), 2), 0 if listed == 1 else listed, listed == 1


def read_terms(sentences: Iterable[str], per: str | None) -> dict[str, Value]:
    """The small print in the sentences on lateness, by the names of `LATE_TERMS`; what is not said is left out."""
    text = " ".join(sentences)
    found: dict[str, Value] = {}
    if _OF_TOTAL.search(text):
        found["of"] = "total"
    elif _OF_MARK.search(text):
        found["of"] = "mark"
    if _WORKING.search(text):
        found["days"] = "working"
    elif _CALENDAR.search(text):
        found["days"] = "calendar"
    if _COMPOUND.search(text):
        found["compound"] = True
    if per is None and _WEEKLY.search(text):
        found["every"] = "week"
    if (match := _DAY_FROM.search(text)) and (times := find_times(match["when"])):
        found["day_from"] = times[0].at
    if match := _GRACE.search(text):
        number, unit = match["n"] or match["n2"], (match["unit"] or match["unit2"]).lower()
        count = 1 if number.lower() in {"a", "an"} else number_value(number)
        found["grace_minutes"] = int(count * (60 if unit == "hour" else 1))
    if match := _CAP.search(text):
        found["cap"] = number_value(match["n"])
    if match := _FLOOR.search(text):
        found["floor"] = number_value(match["n"] or match["n2"])
    if match := _MOST_LOST.search(text):
        found["at_most"] = number_value(match["n"])
    tiers = read_tiers(text, "hour" if per == "hour" else "day")
    if tiers:
        found["tiers"] = tuple(write_tier(tier) for tier in tiers)
    return found
