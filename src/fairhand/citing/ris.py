"""RIS, read into CSL-JSON records.

**Source**: the tags of the RIS format of 2011 as its vendors document them; to CSL by common practice.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from fairhand.citing.entries import read_records
from fairhand.model.entry import Entry
from fairhand.model.problem import Problem

LINE = re.compile(r"([A-Z][A-Z0-9]) {1,2}- ?(.*)")

TYPES = {
    "JOUR": "article-journal",
    "JFULL": "article-journal",
    "EJOUR": "article-journal",
    "ABST": "article-journal",
    "BOOK": "book",
    "EBOOK": "book",
    "EDBOOK": "book",
    "CHAP": "chapter",
    "ECHAP": "chapter",
    "CONF": "paper-conference",
    "CPAPER": "paper-conference",
    "THES": "thesis",
    "RPRT": "report",
    "GOVDOC": "report",
    "NEWS": "article-newspaper",
    "MGZN": "article-magazine",
    "ELEC": "webpage",
    "WEB": "webpage",
    "ICOMM": "webpage",
    "BLOG": "post-weblog",
    "ENCYC": "entry-encyclopedia",
    "DICT": "entry-dictionary",
    "MPCT": "motion_picture",
    "VIDEO": "motion_picture",
    "SOUND": "song",
    "MUSIC": "musical_score",
    "ART": "graphic",
    "MAP": "map",
    "DATA": "dataset",
    "COMP": "software",
    "UNPB": "manuscript",
    "MANSCPT": "manuscript",
    "PAT": "patent",
    "CASE": "legal_case",
    "STAT": "legislation",
    "BILL": "bill",
    "HEAR": "hearing",
    "PCOMM": "personal_communication",
    "STAND": "standard",
    "PAMP": "pamphlet",
    "GEN": "document",
}
FIELDS = {
    "ID": "id",
    "TI": "title",
    "T1": "title",
    "CT": "title",
    "T2": "container-title",
    "JF": "container-title",
    "JO": "container-title",
    "BT": "container-title",
    "JA": "container-title",
    "J2": "container-title",
    "T3": "collection-title",
    "ST": "title-short",
    "VL": "volume",
    "IS": "issue",
    "PB": "publisher",
    "CY": "publisher-place",
    "PP": "publisher-place",
    "ET": "edition",
    "DO": "DOI",
    "UR": "URL",
    "AB": "abstract",
    "N1": "note",
    "LA": "language",
    "DB": "source",
    "DP": "source",
    "M3": "genre",
}
"""Tags that are taken over as text; of two for one variable, the first that is filled."""
ROLES = {"AU": "author", "A1": "author", "A2": "editor", "ED": "editor", "A3": "collection-editor", "A4": "translator"}
DATES = {"PY": "issued", "Y1": "issued", "DA": "issued", "Y2": "accessed", "OP": "original-date"}

Tags = dict[str, list[str]]


def read_ris(text: str, where: str) -> tuple[tuple[Entry, ...], tuple[Problem, ...]]:
    """The entries of an RIS file, and what is wrong in it.

    A record that does not end is ended by the next one, and told.

    Args:
        text: the file's text.
        where: its name, for the problems.

    >>> record = ("TY  - BOOK", "AU  - Ame, Ana", "TI  - Salt", "PY  - 2001", "ER  - ")
    >>> entries, problems = read_ris(chr(10).join(record), "a.ris")
    >>> entries[0].id, entries[0].issued.year, problems
    ('ame-2001', 2001, ())
    """
    faults: list[Problem] = []
    records: list[tuple[object, str]] = []
    for line, tags, ended in _split(text):
        place = f"{where}, record {len(records) + 1} (line {line})"
        if not ended:
            faults.append(Problem(place, "it has no ER line at its end", "add one; the record was read up to the next"))
        records.append((_record(tags), place))
    if not records and text.strip():
        faults.append(Problem(where, "it holds no RIS record", "give a file whose records begin with a TY line"))
    entries, problems = read_records(records, with_ids=False)
    return entries, (*faults, *problems)


def _split(text: str) -> Iterator[tuple[int, Tags, bool]]:
    """Each record's first line, its tags, and whether it ends in an ER line."""
    tags: Tags | None = None
    start, last = 0, ""
    for number, line in enumerate(text.removeprefix("\ufeff").splitlines(), 1):
        found = LINE.fullmatch(line.rstrip()) or LINE.fullmatch(f"{line.rstrip()} ")
        tag = found[1] if found else ""
        if tag == "TY":
            if tags is not None:
                yield start, tags, False
            tags, start = {}, number
        if tags is None:
            continue
        if tag == "ER":
            yield start, tags, True
            tags = None
        elif found:
            tags.setdefault(tag, []).append(found[2].strip())
            last = tag
        elif line.strip() and last in tags:
            tags[last][-1] += f" {line.strip()}"
    if tags is not None:
        yield start, tags, False


def _record(tags: Mapping[str, Sequence[str]]) -> dict[str, object]:
    record: dict[str, object] = {"id": "", "type": TYPES.get(tags["TY"][0].upper(), "document")}
    for tag, variable in FIELDS.items():
        value = next(filter(None, tags.get(tag, ())), "")
        if value and not record.get(variable):
            record[variable] = value
    for tag, variable in ROLES.items():
        names = [_name(name) for name in tags.get(tag, ()) if name]
        if names and variable not in record:
            record[variable] = names
    for tag, variable in DATES.items():
        value = next(filter(None, tags.get(tag, ())), "")
        if value and variable not in record:
            record[variable] = _date(value)
    pages = [tags[tag][0] for tag in ("SP", "EP") if tags.get(tag) and tags[tag][0]]
    if pages:
        record["page"] = pages[0] if "-" in pages[0] else "-".join(dict.fromkeys(pages))
    if tags.get("SN"):
        record["ISBN" if record["type"] in {"book", "chapter"} else "ISSN"] = tags["SN"][0]
    if tags.get("KW"):
        record["keyword"] = ", ".join(tags["KW"])
    return record


def _name(value: str) -> dict[str, str]:
    family, *rest = (part.strip() for part in value.split(","))
    if not any(rest):
        return {"literal": family}
    name = {"family": family, "given": rest[0], "suffix": rest[1] if len(rest) > 1 else ""}
    return {part: words for part, words in name.items() if words}


def _date(value: str) -> dict[str, object]:
    found = re.fullmatch(r"(\d{1,4})(?:[/-](\d{0,2}))?(?:[/-](\d{0,2}))?(?:/.*)?", value)
    if not found:
        return {"literal": value}
    parts: list[int] = []
    for part in found.groups():
        if not part or int(part) == 0:
            break
        parts.append(int(part))
    return {"date-parts": [parts]} if parts else {"literal": value}
