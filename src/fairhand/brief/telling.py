"""A requirement in plain words: what it is called, and what it asks."""

from __future__ import annotations

import calendar
import datetime as dt
import re
from collections.abc import Callable, Mapping

from fairhand.model.requirement import Requirement, Value

_NAMES: Mapping[str, str] = {
    "length": "length",
    "due": "due",
    "sources": "sources",
    "sources_banned": "sources barred",
    "style": "style",
    "task": "task",
    "submit": "hand-in",
    "late": "lateness",
    "rubric": "marking",
    "policy": "policy",
}
"""What a kind of requirement is called."""
STYLES: Mapping[str, str] = {
    "mla": "MLA",
    "apa": "APA",
    "chicago-notes": "Chicago, notes and bibliography",
    "chicago-author-date": "Chicago, author-date",
    "harvard": "Harvard",
    "ieee": "IEEE",
    "ama": "AMA",
    "vancouver": "Vancouver",
    "asa": "ASA",
    "any-consistent": "any one style, throughout",
}
"""The styles that a sheet may name."""
POLICIES: Mapping[str, str] = {
    "ai": "artificial intelligence",
    "tools": "tools that check the language",
    "collaboration": "working together",
    "reuse": "work used before",
    "integrity": "honesty",
}
"""What a sheet has rules on."""
RULES: Mapping[str, str] = {
    "forbidden": "not allowed",
    "allowed": "allowed",
    "disclose": "to be disclosed",
    "ask": "ask first",
}
"""What such a rule says."""
KINDS_OF_SOURCE: Mapping[str, str] = {
    "any": "sources",
    "scholarly": "scholarly sources",
    "peer-reviewed": "peer-reviewed sources",
    "book": "books",
    "article": "articles or chapters",
    "primary": "primary sources",
    "news": "news sources",
    "print": "printed sources",
    "data": "sources of data",
    "website": "websites",
    "outside": "sources from beyond the course",
}
"""The kinds of source that a sheet may ask for."""
_BARRED: Mapping[str, str] = {
    "encyclopedia": "encyclopedias",
    "blog": "blogs",
    "ai-generated": "text from generative AI",
    "course-readings": "the course’s own readings",
    "website": "websites",
    "dictionary": "dictionaries",
    "textbook": "textbooks",
}
WAYS: Mapping[str, str] = {"upload": "by upload", "email": "by e-mail", "print": "in print", "in-class": "in class"}
"""How a paper may be handed in."""
LATE_UNITS: Mapping[str, str] = {"percent": "percent", "points": "points", "grade-step": "thirds of a grade"}
"""In what a loss by lateness is counted."""
LATE_PER: Mapping[str, str] = {"day": "for each day", "hour": "for each hour", "once": "once"}
"""For what it is counted."""
_SMALL_PRINT: Mapping[str, str] = {
    "tiers": "in steps: {}",
    "of": "reckoned on the {}",
    "days": "by {} days",
    "every": "counted by the {}",
    "at_most": "{} at most",
    "compound": "each of what the one before left",
    "day_from": "a further day from {}",
    "grace_minutes": "{} minutes of grace",
    "refused_after_hours": "refused after {} hours",
    "floor": "never below {}",
    "cap": "a late paper gets {} at most",
}
"""How the rest of a rule on lateness is told."""
_PLURAL = re.compile(r"s(?= or | of | from |$)")
"""Where the nouns that are counted here have the plural's letter."""


def name_requirement(requirement: Requirement) -> str:
    """What a requirement is called, in a word or two.

    >>> from fairhand.model.span import Span
    >>> name_requirement(Requirement("format", {"what": "font-size", "value": "12 pt"}, "", Span(0, 0)))
    'font size'
    >>> name_requirement(Requirement("length", {"part": "abstract"}, "", Span(0, 0)))
    'length, abstract'
    """
    kind, values = requirement.kind, requirement.values
    match kind:
        case "section":
            return f"section “{values.get('name')}”"
        case "element" | "format":
            return _plain(values.get("what")) or kind
        case "length":
            beside = "" if values.get("part") in {None, "paper"} else _plain(values["part"])
        case "due":
            beside = "" if values.get("what") in {None, "final"} else _plain(values["what"])
        case "sources":
            beside = "" if values.get("type") in {None, "any"} else _plain(values["type"])
        case "policy":
            beside = POLICIES.get(str(values.get("what")), _plain(values.get("what")))
        case "rubric":
            beside = str(values.get("criterion"))
        case _:
            beside = ""
    return f"{_NAMES[kind]}, {beside}" if beside else _NAMES[kind]


def tell_requirement(requirement: Requirement) -> str:
    """What a requirement asks, in one line of plain words; what the sheet leaves unsaid is left out.

    >>> from fairhand.model.span import Span
    >>> asked = {"unit": "words", "min": 900, "max": 1200, "excludes": ("headings", "references"), "part": "paper"}
    >>> tell_requirement(Requirement("length", asked, "", Span(0, 0)))
    '900 to 1,200 words; headings and references are not counted'
    >>> tell_requirement(Requirement("due", {"what": "final", "on": "2027-02-19", "at": "16:00"}, "", Span(0, 0)))
    'on Friday 19 February 2027, 16:00'
    >>> tell_requirement(Requirement("sources", {"min": 2, "type": "book", "since": 2010}, "", Span(0, 0), "should"))
    'at least 2 books, none from before 2010 (should)'
    >>> tell_requirement(Requirement("policy", {"what": "collaboration", "rule": "allowed"}, "", Span(0, 0), "may"))
    'allowed'
    """
    said = _TELLERS[requirement.kind](requirement.values)
    is_plain = requirement.force == "must" or (requirement.kind == "policy" and requirement.force == "may")
    return said if is_plain else f"{said} ({requirement.force})"


def say_day(written: str) -> str:
    """A day as one says it; what is no day stays as it is written.

    >>> say_day("2027-02-19"), say_day("next week")
    ('Friday 19 February 2027', 'next week')
    """
    try:
        day = dt.date.fromisoformat(written)
    except ValueError:
        return written
    return f"{calendar.day_name[day.weekday()]} {day.day} {calendar.month_name[day.month]} {day.year}"


def _plain(value: Value) -> str:
    """A value as it is said: words for hyphens, a comma after each thousand."""
    if isinstance(value, bool) or value is None:
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return f"{value:,g}" if abs(value) < 1_000_000 else f"{value:g}"
    if isinstance(value, tuple):
        return _and(tuple(_plain(one) for one in value))
    return value.replace("-", " ").replace("_", " ")


def _and(words: tuple[str, ...], last: str = "and") -> str:
    return f" {last} ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))


def _range(values: Mapping[str, Value], noun: str, at_all: str = "") -> str:
    """From least to most of something."""
    low, high = values.get("min"), values.get("max")
    if (low if high is None else high) == 1:
        noun = _PLURAL.sub("", noun)
    about = "about " if values.get("about") else ""
    if low is None and high is None:
        return at_all or noun
    if high == 0:
        return f"no {noun}"
    if low == high:
        return f"{about}{_plain(low)} {noun}"
    if high is None:
        return f"{about or 'at least '}{_plain(low)} {noun}"
    if low is None:
        return f"{about or 'at most '}{_plain(high)} {noun}"
    return f"{about}{_plain(low)} to {_plain(high)} {noun}"


def _length(values: Mapping[str, Value]) -> str:
    excludes = values.get("excludes")
    not_counted = excludes if isinstance(excludes, tuple) else (excludes,) if isinstance(excludes, str) else ()
    rate = f", of {_plain(values['words_per_page'])} words each" if values.get("words_per_page") else ""
    verb = "is" if len(not_counted) == 1 and not _plain(not_counted[0]).endswith("s") else "are"
    out = f"; {_plain(tuple(not_counted))} {verb} not counted" if not_counted else ""
    return _range(values, _plain(values.get("unit") or "words")) + rate + out


def _due(values: Mapping[str, Value]) -> str:
    said = str(values.get("on") or "")
    on = f"on {say_day(said)}" if said else "on a day that the sheet does not name"
    return f"{on}, {values['at']}" if values.get("at") else on


def _sources(values: Mapping[str, Value]) -> str:
    noun = KINDS_OF_SOURCE.get(str(values.get("type")), _plain(values.get("type")))
    since = f", none from before {values['since']}" if values.get("since") else ""
    cited = ", each of them cited" if values.get("cited") else ""
    return _range(values, noun) + since + cited


def _style(values: Mapping[str, Value]) -> str:
    name = STYLES.get(str(values.get("style")), _plain(values.get("style")))
    return f"{name}, edition {values['edition']}" if values.get("edition") else name


def _format(values: Mapping[str, Value]) -> str:
    value = values.get("value")
    return "asked for" if value is True else "not wanted" if value is False else str(value)


def _element(values: Mapping[str, Value]) -> str:
    return f"at least {_plain(values['min'])}" if values.get("min") else "asked for"


def _late(values: Mapping[str, Value]) -> str:
    penalty, refused = values.get("penalty"), values.get("refused_after_days")
    said = []
    if penalty is not None:
        unit = LATE_UNITS.get(str(values.get("unit")), "")
        unit = "third of a grade" if unit.startswith("thirds") and penalty == 1 else unit
        amount = " ".join(filter(None, (_plain(penalty), unit, "off")))
        per = LATE_PER.get(str(values.get("per")), "")
        said.append(f"{amount}{', ' if per == 'once' else ' '}{per}".rstrip())
    terms = ((words, values.get(name)) for name, words in _SMALL_PRINT.items())
    said += [words.format(_plain(value)) for words, value in terms if value not in {None, False, ()}]
    if refused is not None:
        said.append("late work is refused" if refused == 0 else f"refused after {_plain(refused)} days")
    return "; ".join(said)


def _barred(values: Mapping[str, Value]) -> str:
    what = values.get("what")
    kinds = what if isinstance(what, tuple) else (_plain(what),)
    return f"no {_and(tuple(_BARRED.get(kind, _plain(kind)) for kind in kinds), 'or')}"


def _submit(values: Mapping[str, Value]) -> str:
    way = WAYS.get(str(values.get("by")), _plain(values.get("by")))
    return f"{way}, {values['where']}" if values.get("where") else way


_TELLERS: Mapping[str, Callable[[Mapping[str, Value]], str]] = {
    "task": lambda values: f"the paper is to {_plain(values.get('verb'))}",
    "length": _length,
    "due": _due,
    "sources": _sources,
    "sources_banned": _barred,
    "style": _style,
    "section": lambda values: "not wanted" if values.get("needed") is False else "asked for",
    "element": _element,
    "format": _format,
    "submit": _submit,
    "late": _late,
    "policy": lambda values: RULES.get(str(values.get("rule")), _plain(values.get("rule"))),
    "rubric": lambda values: f"{_plain(values.get('weight'))} {_plain(values.get('unit') or '')}".strip(),
}
"""How each kind is told."""
