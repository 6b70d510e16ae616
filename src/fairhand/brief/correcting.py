"""A requirement's values as the writer sees and corrects them."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from fairhand.brief.kinds import ROW_OF
from fairhand.brief.length_counts import list_excludes
from fairhand.brief.telling import KINDS_OF_SOURCE, LATE_PER, LATE_UNITS, POLICIES, RULES, STYLES, WAYS
from fairhand.errors import FairhandError
from fairhand.model.requirement import Requirement, Value

Sort = Literal["number", "day", "hour", "yes or no", "list", "series", "words or yes", "words"]
"""What may be written in a value; a series is a list whose order tells."""

_SORTS: Mapping[str, Sort] = {
    "on": "day",
    "at": "hour",
    "day_from": "hour",
    **dict.fromkeys(("excludes", "uncounted", "counted"), "list"),
    "tiers": "series",
    "value": "words or yes",
    **dict.fromkeys(("about", "needed", "compound"), "yes or no"),
    **dict.fromkeys(("min", "max", "words_per_page", "since", "edition", "weight", "penalty"), "number"),
    **dict.fromkeys(
        ("refused_after_days", "refused_after_hours", "at_most", "grace_minutes", "floor", "cap"), "number"
    ),
}
_LABELS: Mapping[str, str] = {
    "min": "at least",
    "max": "at most",
    "on": "day",
    "at": "hour",
    "words_per_page": "words a page",
    "about": "only about",
    "uncounted": "not counted",
    "part": "of which part",
    "type": "kind of source",
    "since": "none from before",
    "per": "for each",
    "of": "reckoned on",
    "tiers": "in steps",
}
_PIECES = ("annotated-bibliography", "draft", "outline", "peer-review", "presentation", "proposal", "reflection")


def _said_plainly(*values: str) -> Mapping[str, str]:
    return {value: value.replace("-", " ") for value in values}


_CHOICES: Mapping[tuple[str, str], Mapping[str, str]] = {
    ("length", "unit"): _said_plainly("words", "pages"),
    ("length", "part"): _said_plainly("paper", "abstract", "annotated-bibliography", "proposal", "reflection"),
    ("due", "what"): _said_plainly("final", *_PIECES),
    ("sources", "type"): KINDS_OF_SOURCE,
    ("sources", "cited"): {"all": "each that is listed"},
    ("style", "style"): STYLES,
    ("submit", "by"): WAYS,
    ("late", "unit"): LATE_UNITS,
    ("late", "per"): LATE_PER,
    ("late", "of"): _said_plainly("mark", "total"),
    ("late", "days"): _said_plainly("working", "calendar"),
    ("late", "every"): _said_plainly("week"),
    ("policy", "what"): POLICIES,
    ("policy", "rule"): RULES,
    ("rubric", "unit"): _said_plainly("percent", "points"),
}
"""The values that take one of a few words, each with how it is said."""
_YES_OR_NO: Mapping[str, str] = {"yes": "yes", "no": "no"}
_TRUTHS: Mapping[str, bool] = {"yes": True, "true": True, "no": False, "false": False}
_NUMBER = re.compile(r"\d{1,9}(?:\.\d{1,4})?")
_HOUR = re.compile(r"(?:[01]?\d|2[0-3]):[0-5]\d")


@dataclass(frozen=True, slots=True)
class Field:
    """One value of a requirement, to be looked at and corrected."""

    name: str
    """As ``paper.toml`` has it."""
    label: str
    sort: Sort
    written: str
    """The value as it is written; empty where the sheet says nothing."""
    choices: Mapping[str, str] = field(default_factory=dict)
    """What it may be, where that is one of a few words, each with how it is said."""
    usual: bool = True
    """Whether a form asks for it: not for small print on lateness that the sheet leaves unsaid, nor for what is only a
    wider word for another value."""


def list_fields(requirement: Requirement) -> tuple[Field, ...]:
    """Every value that the requirement may have, in the order of its kind.

    >>> from fairhand.model.span import Span
    >>> asked = Requirement("due", {"what": "final", "on": "2027-02-19", "at": None}, "", Span(0, 0))
    >>> [(field.label, field.written) for field in list_fields(asked)]
    [('what', 'final'), ('day', '2027-02-19'), ('hour', '')]
    """
    return tuple(_field(requirement, name) for name in ROW_OF[requirement.kind].names)


def write_value(value: Value) -> str:
    """A value as one writes it.

    >>> write_value(1200), write_value(("figures", "headings")), write_value(True), write_value(None)
    ('1200', 'figures, headings', 'yes', '')
    """
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return ", ".join(value)
    return "" if value is None else f"{value:.15g}" if isinstance(value, float) else str(value)


def read_corrections(requirement: Requirement, written: Mapping[str, str]) -> dict[str, Value]:
    """The values that were written otherwise than the sheet has them.

    Args:
        requirement: As it was read off the sheet.
        written: What stands in each field, by name; a field that is not there says nothing.

    Raises:
        FairhandError: There is no such value, a number, a day or an hour is none, or what the sheet says was left
            empty.

    >>> from fairhand.model.span import Span
    >>> asked = Requirement("length", {"unit": "words", "min": 900, "max": 1200}, "", Span(0, 0))
    >>> read_corrections(asked, {"min": "900", "max": "1,500"})
    {'max': 1500}
    """
    fields = list_fields(requirement)
    for name in written.keys() - {one.name for one in fields}:
        message = f"{name}: it is no value of a {requirement.kind}; its values are {', '.join(f.name for f in fields)}"
        raise FairhandError(message)
    out: dict[str, Value] = {}
    for one in fields:
        said = " ".join(written.get(one.name, one.written).split())
        if said == " ".join(one.written.split()):
            continue
        if not said and one.sort not in {"list", "series"}:
            message = f"{one.label}: it cannot be left empty; where the sheet no longer holds, waive it"
            raise FairhandError(message)
        value = _read(one, said)
        if value != requirement.values.get(one.name):
            out[one.name] = value
    if isinstance(uncounted := out.get("uncounted"), tuple):
        out["excludes"] = list_excludes(uncounted)  # the wider list says nothing else than the exact one
    return out


def _field(requirement: Requirement, name: str) -> Field:
    value = requirement.values.get(name)
    sort = "list" if isinstance(value, tuple) and name not in _SORTS else _SORTS.get(name, "words")
    written = write_value(value)
    choices = _YES_OR_NO if sort == "yes or no" else _CHOICES.get((requirement.kind, name), {})
    if choices and written and written not in choices:
        choices = {written: written, **choices}
    usual = name != "excludes" and (requirement.kind != "late" or name in requirement.values)
    return Field(name, _LABELS.get(name, name.replace("_", " ")), sort, written, choices, usual)


def _read(one: Field, said: str) -> Value:
    match one.sort:
        case "number":
            plain = said.replace(",", "")
            if _NUMBER.fullmatch(plain):
                return float(plain) if "." in plain else int(plain)
            wanted = "a number, as 1200"
        case "day":
            try:
                return dt.date.fromisoformat(said).isoformat()
            except ValueError:
                wanted = "a day, as 2027-03-01"
        case "hour":
            if _HOUR.fullmatch(said):
                return said.zfill(5)
            wanted = "an hour, as 16:00"
        case "yes or no":
            if said.lower() in _TRUTHS:
                return _TRUTHS[said.lower()]
            wanted = "yes or no"
        case "list" | "series":
            parts = [part.strip() for part in said.split(",") if part.strip()]
            return tuple(sorted(parts) if one.sort == "list" else parts)
        case "words or yes":
            return _TRUTHS.get(said.lower(), said)
        case "words":
            if not one.choices or said in one.choices:
                return said
            wanted = f"one of {', '.join(one.choices)}"
    message = f"{one.label}: “{said[:40]}” is not {wanted}"
    raise FairhandError(message)
