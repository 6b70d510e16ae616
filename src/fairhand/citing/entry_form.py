"""What a source's record is asked for, by the type of work, and a record filled in from what was written there.

A field that still reads as it was shown leaves what the record has as it is, so that nothing is lost that a line of
type cannot hold: a particle, a season, a second date.

**Source**: the types and variables are those of the CSL 1.0.2 specification, appendices III and IV; which of them a
type is asked for is common practice: what the manuals' examples for that type of work give.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.citing.entries import iso_parts, text_of
from fairhand.citing.names import is_body
from fairhand.citing.telltales import MONTH, MONTHS

_SPACE = re.compile(r"\s+")
_WORDED = re.compile(rf"(?:(?P<day>\d{{1,2}}) )?(?P<month>{MONTH})(?: (?P<day_after>\d{{1,2}}))?,? (?P<year>\d{{4}})")
_MONTHS = [month[:3] for month in MONTHS]


@dataclass(frozen=True, slots=True)
class Field:
    """One thing that a record is asked for."""

    name: str
    """The variable of CSL."""
    label: str
    kind: Literal["line", "names", "date"] = "line"


FIELDS = {
    field.name: field
    for field in (
        Field("author", "Authors, one a line: Lind, Ada; a body as it is named", "names"),
        Field("title", "Title"),
        Field("container-title", "The work that it stands in: journal, newspaper, book, site"),
        Field("editor", "Editors, one a line", "names"),
        Field("translator", "Translators, one a line", "names"),
        Field("interviewer", "Interviewers, one a line", "names"),
        Field("edition", "Edition, if not the first"),
        Field("volume", "Volume"),
        Field("issue", "Number of the issue"),
        Field("number", "Number of the report"),
        Field("genre", "Kind of work, as it calls itself"),
        Field("publisher", "Publisher, university or institution"),
        Field("publisher-place", "Place of publication"),
        Field("event-title", "Conference"),
        Field("issued", "When it appeared: 2019, or 31 May 2019", "date"),
        Field("original-date", "When it first appeared, if long before", "date"),
        Field("page", "Pages, from the first to the last: 55-71"),
        Field("DOI", "DOI"),
        Field("URL", "Address on the web"),
        Field("accessed", "When you last looked at it there: 25 November 2026", "date"),
    )
}
"""Everything that is asked for, in the order in which it is asked."""

_OF_TYPE: Mapping[str, tuple[str, str]] = {
    "book": ("Book", "editor translator edition volume publisher publisher-place original-date DOI URL"),
    "chapter": ("Chapter, or piece in a collection", "container-title editor edition publisher publisher-place page"),
    "article-journal": ("Article in a journal", "container-title volume issue page DOI URL"),
    "article-magazine": ("Article in a magazine", "container-title volume issue page URL"),
    "article-newspaper": ("Article in a newspaper", "container-title edition page URL"),
    "webpage": ("Page on the web", "container-title publisher URL accessed"),
    "post-weblog": ("Post", "container-title URL accessed"),
    "report": ("Report", "number publisher publisher-place page URL"),
    "thesis": ("Thesis", "genre publisher URL"),
    "paper-conference": ("Paper given at a conference", "container-title event-title publisher page DOI URL"),
    "entry-encyclopedia": ("Entry in a reference work", "container-title editor edition publisher page URL accessed"),
    "interview": ("Interview", "interviewer container-title genre URL"),
    "motion_picture": ("Film, or broadcast", "genre publisher URL"),
    "manuscript": ("Manuscript, or what was never published", "genre publisher publisher-place"),
    "document": ("Something else", "container-title genre publisher page URL"),
}
_ALWAYS = ("author", "title", "issued")
TYPES_ASKED: Mapping[str, str] = {kind: label for kind, (label, _) in _OF_TYPE.items()}
"""The types of work that can be chosen, in words."""


def fields_of(kind: str, record: Mapping[str, object] | None = None) -> tuple[Field, ...]:
    """What a type of work is asked for, and whatever else of the kind the record has.

    >>> [field.name for field in fields_of("thesis", {"volume": "2"})]
    ['author', 'title', 'volume', 'genre', 'publisher', 'issued', 'URL']
    """
    wanted = {*_ALWAYS, *_OF_TYPE.get(kind, _OF_TYPE["document"])[1].split(), *(record or ())}
    return tuple(field for name, field in FIELDS.items() if name in wanted)


def tell_field(record: Mapping[str, object], field: Field) -> str:
    r"""What a record has in a field, as it is written there.

    >>> tell_field({"author": [{"family": "Lind", "given": "Ada"}, {"literal": "WHO"}]}, FIELDS["author"])
    'Lind, Ada\nWHO'
    >>> tell_field({"issued": {"date-parts": [[2019, 5, 3]]}}, FIELDS["issued"])
    '2019-05-03'
    """
    value = record.get(field.name)
    if field.kind == "names":
        names = value if isinstance(value, list) else [value] if value else []
        return "\n".join(_tell_name(name) for name in names)
    if field.kind == "date":
        return _tell_date(value)
    return text_of(record, field.name)


def fill_record(record: Mapping[str, object], written: Mapping[str, str], kind: str) -> dict[str, object]:
    """The record with what was written in its fields; a field left empty is taken out, every other one stays.

    Args:
        record: The record as it was.
        written: What was written, by the fields' names; a field that was not shown is not in it.
        kind: The type of work.

    >>> fill_record({"id": "a", "note": "x", "DOI": "10.1"}, {"title": " Tides ", "DOI": ""}, "book")
    {'id': 'a', 'note': 'x', 'type': 'book', 'title': 'Tides'}
    """
    out: dict[str, object] = {**record, "type": kind}
    for name, text in written.items():
        field = FIELDS[name]
        if _plain(text, field) == _plain(tell_field(record, field), field):
            continue
        value = _read_field(text, field, record.get(name))
        if value:
            out[name] = value
        else:
            out.pop(name, None)
    return out


def _read_field(text: str, field: Field, before: object) -> object:
    plain = _plain(text, field)
    if field.kind == "names":
        known = {_tell_name(name): name for name in (before if isinstance(before, list) else ())}
        names = (known.get(line) or _read_name(line) for line in plain.split("\n"))
        return [name for name in names if name]
    return _read_date(plain) if field.kind == "date" and plain else plain


def _plain(text: str, field: Field) -> str:
    """What was written without needless space; names keep their lines."""
    lines: Sequence[str] = text.split("\n") if field.kind == "names" else [text]
    return "\n".join(filter(None, (_SPACE.sub(" ", line).strip() for line in lines)))


def _read_name(line: str) -> dict[str, str]:
    """A name: surname, given names and suffix by commas; a body whole; nothing where there is none.

    >>> _read_name("King, Martin Luther, Jr."), _read_name("Department of Parks, Leeds")
    ({'family': 'King', 'given': 'Martin Luther', 'suffix': 'Jr.'}, {'literal': 'Department of Parks, Leeds'})
    """
    parts = [part.strip() for part in line.split(",", 2) if part.strip(" ,")]
    if len(parts) > 1 and not is_body(line):
        return dict(zip(("family", "given", "suffix"), parts, strict=False))
    return {"literal": line.strip(" ,")} if parts else {}


def _read_date(plain: str) -> dict[str, object]:
    """A date in figures or in words, as far as it goes; what is no day stays as it was written.

    >>> _read_date("31 May 2019"), _read_date("2019-02-30")
    ({'date-parts': [[2019, 5, 31]]}, {'literal': '2019-02-30'})
    """
    found = _WORDED.fullmatch(plain)
    parts = iso_parts(plain)
    if found:
        day = found["day"] or found["day_after"]
        parts = [int(found["year"]), _MONTHS.index(found["month"][:3]) + 1, *([int(day)] if day else [])]
    try:
        if len(parts) > 1:
            dt.date(*[*parts, 1][:3])
    except ValueError:
        parts = []
    return {"date-parts": [parts]} if parts else {"literal": plain}


def _tell_name(name: object) -> str:
    if not isinstance(name, Mapping):
        return _SPACE.sub(" ", str(name)).strip()
    if text_of(name, "literal"):
        return text_of(name, "literal")
    parts = ("dropping-particle", "non-dropping-particle", "family")
    family = " ".join(filter(None, (text_of(name, part) for part in parts)))
    return ", ".join(filter(None, (family, text_of(name, "given"), text_of(name, "suffix"))))


def _tell_date(value: object) -> str:
    if not isinstance(value, Mapping):
        return text_of({"date": value}, "date")
    parts = value.get("date-parts")
    if isinstance(parts, list) and parts and isinstance(parts[0], list):
        year, *rest = [str(part) for part in parts[0][:3]] or [""]
        return "-".join([year, *(part.zfill(2) for part in rest)])
    return text_of(value, "raw") or text_of(value, "literal")
