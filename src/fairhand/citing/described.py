"""A record made of what a file says of its work, and where each field of a record came from.

Where a field came from stands in the record itself, under ``custom``, which CSL-JSON 1.0.2 keeps for what it has no
variable for; a field that the writer has since changed is the writer's own, and nothing is told of it.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from fairhand.citing.entry_form import FIELDS, fields_of, fill_record, tell_field
from fairhand.citing.names import PARTICLES, is_body
from fairhand.model.description import Description

if TYPE_CHECKING:
    from fairhand.model.entry import Entry

FROM = "fairhand-from"
"""The key in ``custom`` under which it stands where each field came from, and what it then was."""
_UNFIELDED = ("ISBN", "ISSN", "language", "PMID")
"""Variables that no form asks for and a file may still give."""
_MOST_WORDS = 6
"""Words of a person's name; what is longer is left whole."""


def record_of(description: Description) -> dict[str, object]:
    """The CSL-JSON record of what a file says, without an id, each field with where it came from.

    >>> from fairhand.model.description import Field
    >>> said = {"title": Field("Salt", "the first page"), "author": Field(("Ada van der Lind",), "the first page")}
    >>> record = record_of(Description(said))
    >>> record["author"], record["custom"]["fairhand-from"]["title"]
    ([{'family': 'van der Lind', 'given': 'Ada'}], ['the first page', 'Salt'])
    """
    kind = description.fields["type"].words if "type" in description.fields else "document"
    written, record = {}, dict[str, object]({"id": ""})
    for name, field in description.fields.items():
        if name in FIELDS:
            names = (field.value,) if isinstance(field.value, str) else field.value
            written[name] = "\n".join(map(invert_name, names)) if FIELDS[name].kind == "names" else field.words
            if FIELDS[name].kind == "date":
                written[name] = _plain_date(written[name])
        elif name in _UNFIELDED:
            record[name] = field.words
    record = fill_record(record, written, kind)
    origins = {name: [field.from_, _told(record, name)] for name, field in description.fields.items() if name in record}
    return {**record, "custom": {FROM: origins}}


def mark_origin(record: Mapping[str, object], where: str) -> dict[str, object]:
    """The record with the same origin told of each of its fields."""
    return {**record, "custom": {FROM: {name: [where, _told(record, name)] for name in record if name in FIELDS}}}


def origins_of(record: Mapping[str, object]) -> dict[str, str]:
    """Where each field of a record came from, of those that still read as they did then."""
    custom = record.get("custom")
    held = custom.get(FROM) if isinstance(custom, Mapping) else None
    return {
        str(name): str(origin[0])
        for name, origin in (held.items() if isinstance(held, Mapping) else ())
        if isinstance(origin, list) and len(origin) == 2 and origin[1] == _told(record, str(name))
    }


def list_missing(entry: Entry) -> tuple[str, ...]:
    """What a record of its type is asked for and does not have, of what every list of references needs.

    >>> from fairhand.model.entry import Entry
    >>> list_missing(Entry("a", "article-journal", title="Salt", csl={"title": "Salt"}))
    ('who wrote it', 'when it appeared', 'the journal')
    """
    asked = {field.name for field in fields_of(entry.type)}
    missing = []
    if not (entry.authors or entry.editors or entry.csl.get("director")):
        missing.append("who wrote it")
    if entry.issued is None:
        missing.append("when it appeared")
    if entry.type in _STANDS_IN and not entry.container_title:
        missing.append(_STANDS_IN[entry.type])
    if entry.type == "document":
        missing.append("what kind of work it is")
    if "publisher" in asked and entry.type in ("book", "chapter", "thesis", "report") and not entry.publisher:
        missing.append("its publisher")
    return tuple(missing)


_STANDS_IN = {
    "article-journal": "the journal",
    "article-magazine": "the magazine",
    "article-newspaper": "the newspaper",
    "chapter": "the book that it stands in",
}


def invert_name(name: str) -> str:
    """A person's name with the surname first; a body's, and one that is inverted already, as it is.

    >>> invert_name("Ada B. Lind"), invert_name("Lind, Ada"), invert_name("Harbour Museum"), invert_name("Ame Ba, Jr.")
    ('Lind, Ada B.', 'Lind, Ada', 'Harbour Museum', 'Ba, Ame, Jr.')
    """
    person, _, suffix = name.partition(", ")
    if suffix and suffix.rstrip(".").lower() not in {"jr", "sr", "ii", "iii", "iv"}:
        return name
    words = person.split()
    if not 2 <= len(words) <= _MOST_WORDS or is_body(person):
        return name
    at = len(words) - 1
    while at > 1 and words[at - 1].lower() in PARTICLES:
        at -= 1
    return ", ".join(filter(None, (" ".join(words[at:]), " ".join(words[:at]), suffix)))


def _plain_date(date: str) -> str:
    """A date as the form has it: ``2016/09/01`` and ``2016-09-01T10:00`` alike.

    >>> _plain_date("2016/09/01"), _plain_date("2016-09-01T10:00Z"), _plain_date("May 3, 2019")
    ('2016-09-01', '2016-09-01', 'May 3, 2019')
    """
    return date.replace("/", "-").partition("T")[0] if date[:4].isdigit() else date


def _told(record: Mapping[str, object], name: str) -> str:
    return tell_field(record, FIELDS[name]) if name in FIELDS else str(record.get(name, ""))
