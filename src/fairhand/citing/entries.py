"""Bibliographic records into entries, each fault named and the rest kept."""

from __future__ import annotations

import re
from collections.abc import Container, Iterable, Mapping
from dataclasses import replace
from itertools import chain, count

from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.problem import Problem

TYPE_NAMES = """
    article article-journal article-magazine article-newspaper bill book broadcast chapter classic
    collection dataset document entry entry-dictionary entry-encyclopedia event figure graphic hearing
    interview legal_case legislation manuscript map motion_picture musical_score pamphlet
    paper-conference patent performance periodical personal_communication post post-weblog regulation
    report review review-book software song speech standard thesis treaty webpage
"""
TYPES = frozenset(TYPE_NAMES.split())
"""The types of work that CSL 1.0.2 knows. **Source**: CSL 1.0.2 specification, appendix III."""

MARKUP = re.compile(r"</?(?:i|b|sup|sub|sc|span)\b[^<>]{0,80}>")
ISO_DATE = re.compile(r"(-?\d{1,4})(?:-(\d{1,2})(?:-(\d{1,2}))?)?(?:T.*)?")
YEAR = re.compile(r"-?\d{1,4}(?!\d)")


def read_entry(record: object, where: str) -> tuple[Entry | None, tuple[Problem, ...]]:
    """One CSL-JSON record as an entry, with what is wrong in it; None where nothing in it can be cited.

    Args:
        record: the record as JSON gives it.
        where: the file and the record's place in it, for the problems.

    >>> entry, problems = read_entry({"id": 7, "type": "book", "title": "Tides", "issued": "1999"}, "record 1")
    >>> entry.id, entry.issued.year, problems
    ('7', 1999, ())
    """
    if not isinstance(record, Mapping):
        return None, (Problem(where, "it is not a record in braces", "write it as {…}, or remove it"),)
    csl = {str(key): value for key, value in record.items()}
    if not any(csl.get(key) for key in ("title", "author", "editor", "container-title", "URL", "DOI")):
        mend = "add a title or an author, or remove the record"
        return None, (Problem(where, "it has no title, author or address to cite", mend),)
    faults: list[Problem] = []
    if not csl.get("title"):
        faults.append(Problem(where, "it has no title", "add one, as it stands on the work"))
    kind = text_of(csl, "type")
    if kind not in TYPES:
        what = f'its type "{kind}" is not one of CSL' if kind else "it has no type"
        faults.append(Problem(where, f"{what}; it is read as a document", "name its type, such as book or chapter"))
        kind = "document"
    people: dict[str, tuple[Name, ...]] = {}
    for role in ("author", "editor", "translator"):
        people[role], unread = _names(csl.get(role))
        if unread:
            mend = 'write each as {"family": …, "given": …} or {"literal": …}'
            faults.append(Problem(where, f"a name under {role} cannot be read", mend))
    issued, dated = _date(csl.get("issued"))
    if not dated:
        mend = 'write it as {"date-parts": [[2019, 5, 31]]}, or leave it out'
        faults.append(Problem(where, "its date of issue cannot be read", mend))
    original, _ = _date(csl.get("original-date"))
    csl["id"] = text_of(csl, "id")
    entry = Entry(
        id=csl["id"],
        type=kind,
        title=_unmarked(text_of(csl, "title")),
        title_short=_unmarked(text_of(csl, "title-short") or text_of(csl, "shortTitle")),
        container_title=_unmarked(text_of(csl, "container-title")),
        authors=people["author"],
        editors=people["editor"],
        translators=people["translator"],
        issued=issued,
        original_year=original.year if original else None,
        page=text_of(csl, "page"),
        doi=text_of(csl, "DOI"),
        url=text_of(csl, "URL"),
        publisher=text_of(csl, "publisher"),
        year_suffix=text_of(csl, "year-suffix"),
        csl=csl,
    )
    return entry, tuple(faults)


def read_records(
    records: Iterable[tuple[object, str]], *, with_ids: bool = True
) -> tuple[tuple[Entry, ...], tuple[Problem, ...]]:
    """Records as entries with ids of their own, in order.

    A record without an id gets one from its author and year; of two records with one id the second gets another, and
    an exact double is left out; each is told.

    Args:
        records: each record, with its place for the problems.
        with_ids: whether the format gives each record an id; where not, a missing one is no fault.
    """
    entries: dict[str, Entry] = {}
    problems: list[Problem] = []
    for record, where in records:
        entry, faults = read_entry(record, where)
        problems += faults
        if entry is None:
            continue
        first = entries.get(entry.id)
        if first is not None and first.csl == entry.csl:
            problems.append(Problem(where, f'it repeats the record "{entry.id}" word for word', "remove one of them"))
            continue
        if not entry.id or first is not None:
            name = name_entry(entry, entries)
            what = f'another record has the id "{entry.id}" too' if entry.id else "it has no id"
            if entry.id or with_ids:
                problems.append(Problem(where, f'{what}; it is called "{name}" here', "give it an id of its own"))
            entry = replace(entry, id=name, csl={**entry.csl, "id": name})
        entries[entry.id] = entry
    return tuple(entries.values()), tuple(problems)


def made_id(entry: Entry) -> str:
    """The id that is made of an entry's first author, or else its title, and its year.

    >>> made_id(Entry("", "book", title="Salt, and Other Roads"))
    'salt-and-nd'
    """
    people = entry.authors or entry.editors
    name = people[0].surname if people else entry.title
    words = re.findall(r"\w+", name.lower())[:2]
    year = entry.issued.year if entry.issued else None
    return "-".join([*words, str(year or "nd")])


def name_entry(entry: Entry, taken: Container[str]) -> str:
    """The entry's id, or where it has none the one made for it; numbered where others have that one already.

    >>> name_entry(Entry("salt", "book"), {"salt", "salt-2"})
    'salt-3'
    """
    wanted = entry.id or made_id(entry)
    numbered = (f"{wanted}-{number}" for number in count(2))
    return next(name for name in chain([wanted], numbered) if name not in taken)


def text_of(csl: Mapping[str, object], key: str) -> str:
    """A field as text on one line; numbers are written out, anything else is empty."""
    value = csl.get(key, "")
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        return ""
    return " ".join(str(value).split())


def _unmarked(title: str) -> str:
    """A title without CSL's markup."""
    return MARKUP.sub("", title)


def _names(value: object) -> tuple[tuple[Name, ...], bool]:
    """The names of one role, and whether any could not be read."""
    if value is None:
        return (), False
    if not isinstance(value, list):
        value = [value]
    names = [_name(each) for each in value]
    return tuple(name for name in names if name is not None), None in names


def _name(value: object) -> Name | None:
    if isinstance(value, str) and value.strip():
        return Name(literal=" ".join(value.split()))
    if not isinstance(value, Mapping):
        return None
    particles = (text_of(value, "dropping-particle"), text_of(value, "non-dropping-particle"))
    name = Name(
        family=text_of(value, "family"),
        given=text_of(value, "given"),
        literal=text_of(value, "literal"),
        particle=" ".join(filter(None, particles)),
        suffix=text_of(value, "suffix"),
    )
    if name.given and not name.family and not name.literal:
        name = replace(name, family=name.given, given="")
    return name if name.family or name.literal else None


def _date(value: object) -> tuple[Issued | None, bool]:
    """A CSL date, and whether it could be read; a missing date is read as None."""
    if value is None or value in ("", {}, []):
        return None, True
    if isinstance(value, str | int) and not isinstance(value, bool):
        value = {"raw": str(value)}
    if not isinstance(value, Mapping):
        return None, False
    parts = value.get("date-parts")
    if isinstance(parts, list) and parts and isinstance(parts[0], list):
        numbers = [_number(part) for part in parts[0][:3]]
        if not numbers or numbers[0] is None:
            return None, False
        year, month, day = (*numbers, None, None)[:3]
        return Issued(year, month, day, text_of(value, "literal")), True
    words = text_of(value, "raw") or text_of(value, "literal")
    dated = iso_parts(words)
    if dated:
        year, month, day = (*dated, None, None)[:3]
        return Issued(year, month, day), True
    found = YEAR.search(words)
    return (Issued(year=int(found[0]) if found else None, literal=words), True) if words else (None, not parts)


def iso_parts(words: str) -> list[int]:
    """Year, month and day of an ISO date as far as it gives them; empty where it is none.

    >>> iso_parts("2019-05"), iso_parts("in press")
    ([2019, 5], [])
    """
    found = ISO_DATE.fullmatch(words)
    return [int(part) for part in found.groups() if part] if found else []


def _number(part: object) -> int | None:
    digits = str(part).strip()
    return int(digits) if re.fullmatch(r"-?\d{1,5}", digits) else None
