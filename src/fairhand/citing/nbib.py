"""The MEDLINE display format, as nbib files and a PMID's answer have it, read into CSL-JSON records.

**Source**: *MEDLINE/PubMed Data Element (Field) Descriptions*, National Library of Medicine; to CSL by common practice.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from fairhand.citing.entries import read_records
from fairhand.citing.telltales import MONTHS
from fairhand.model.entry import Entry
from fairhand.model.problem import Problem

_LINE = re.compile(r"([A-Z][A-Z0-9]{1,3}) {0,3}- ?(.*)")
_FIELDS = {
    "TI": "title",
    "BTI": "container-title",
    "JT": "container-title",
    "TA": "container-title",
    "CTI": "collection-title",
    "VI": "volume",
    "IP": "issue",
    "PB": "publisher",
    "PL": "publisher-place",
    "EN": "edition",
    "AB": "abstract",
    "LA": "language",
    "PMID": "PMID",
    "PMC": "PMCID",
}
"""Tags that are taken over as text; of two for one variable, the first that is filled."""
_ROLES = {"FAU": "author", "AU": "author", "FED": "editor", "ED": "editor"}
_KINDS = {
    "Book": "book",
    "Book Chapter": "chapter",
    "Dataset": "dataset",
    "Technical Report": "report",
    "Newspaper Article": "article-newspaper",
}
_LONG = re.compile(r"(\d{1,6})-(\d{1,6})")
_DATE = re.compile(r"(\d{4})(?:[ /]([A-Z][a-z]{2}|\d{1,2})(?:[ /](\d{1,2}))?)?(?:[-/ ].{0,40})?")
_SHORT_MONTHS = [month[:3] for month in MONTHS]

Tags = dict[str, list[str]]


def read_nbib(text: str, where: str) -> tuple[tuple[Entry, ...], tuple[Problem, ...]]:
    r"""The entries of a file in the MEDLINE format, and what is wrong in it.

    Args:
        text: The file's text.
        where: Its name, for the problems.

    >>> record = "PMID- 123\nTI  - Salt marsh fever.\nFAU - Ame, Ana\nDP  - 2001 May\nJT  - Marsh medicine\nIS  - 1"
    >>> entries, problems = read_nbib(record, "a.nbib")
    >>> entries[0].id, entries[0].title, entries[0].issued.month, problems
    ('ame-2001', 'Salt marsh fever', 5, ())
    """
    found = [(_record(tags), f"{where}, record {number} (line {line})")
             for number, (line, tags) in enumerate(_split(text), 1)]  # fmt: skip
    entries, problems = read_records(found, with_ids=False)
    if not found and text.strip():
        problems = (Problem(where, "it holds no record", "give a file whose records begin with a PMID line"),)
    return entries, problems


def _split(text: str) -> Iterator[tuple[int, Tags]]:
    """Each record's first line and its tags; a record begins at its PMID, or after an empty line."""
    tags: Tags = {}
    start, last = 1, ""
    for number, line in enumerate(text.removeprefix("\ufeff").splitlines(), 1):
        found = _LINE.fullmatch(line)
        if tags and (not line.strip() or (found and found[1] == "PMID" and "PMID" in tags)):
            yield start, tags
            tags, last = {}, ""
        if found:
            start = start if tags else number
            last = found[1]
            tags.setdefault(last, []).append(found[2].strip())
        elif line.strip() and last:
            tags[last][-1] += f" {line.strip()}"
    if tags:
        yield start, tags


def _record(tags: Mapping[str, Sequence[str]]) -> dict[str, object]:
    kinds = (_KINDS[one] for one in tags.get("PT", ()) if one in _KINDS)
    record: dict[str, object] = {"id": "", "type": next(kinds, "article-journal")}
    for tag, variable in _FIELDS.items():
        value = next(filter(None, tags.get(tag, ())), "")
        if value and variable not in record:
            record[variable] = value
    if "title" not in record and "BTI" in tags:
        record["title"] = record.pop("container-title")
    record["title"] = str(record.get("title", "")).removesuffix(".").removeprefix("[").removesuffix("]")
    for tag, variable in _ROLES.items():
        if tags.get(tag) and variable not in record:
            record[variable] = [_name(name) for name in tags[tag] if name]
    if tags.get("CN"):
        bodies = [{"literal": name} for name in tags["CN"] if name]
        people = record.get("author")
        record["author"] = [*(people if isinstance(people, list) else ()), *bodies]
    dates = [*tags.get("DP", ()), *tags.get("DEP", ())]
    if dates:
        record["issued"] = _date(dates[0])
    if tags.get("PG"):
        record["page"] = _page(tags["PG"][0])
    for tag in ("LID", "AID"):
        for value in tags.get(tag, ()):
            if value.endswith("[doi]"):
                record.setdefault("DOI", value.removesuffix("[doi]").strip())
    for tag, variable in (("ISBN", "ISBN"), ("IS", "ISSN")):
        if tags.get(tag):
            record[variable] = tags[tag][0].partition(" ")[0]
    return {name: value for name, value in record.items() if value or name == "id"}


def _name(value: str) -> dict[str, str]:
    """A name in full, ``Ame, Ana B``, or in short, ``Ame AB``."""
    family, _, given = value.partition(", ")
    if not given:
        family, _, given = value.rpartition(" ")
    return {"family": family, "given": given} if family and given else {"literal": value}


def _page(value: str) -> str:
    """A page range whose last page is cut short, whole.

    >>> _page("1201-9"), _page("e14")
    ('1201-1209', 'e14')
    """
    found = _LONG.fullmatch(value)
    if found and len(found[2]) < len(found[1]):
        return f"{found[1]}-{found[1][: -len(found[2])]}{found[2]}"
    return value


def _date(value: str) -> dict[str, object]:
    """A date as the format has it: ``2001 May 3``, ``20010503``, ``2001 May-Jun``, ``2001 Winter``.

    >>> _date("2001 May-Jun"), _date("20010503"), _date("2001 Winter")
    ({'date-parts': [[2001, 5]]}, {'date-parts': [[2001, 5, 3]]}, {'date-parts': [[2001]], 'season': 4})
    """
    whole = re.fullmatch(r"(\d{4})(\d{2})(\d{2})", value)
    if whole:
        return {"date-parts": [[int(part) for part in whole.groups()]]}
    season = re.fullmatch(r"(\d{4}) (Spring|Summer|Fall|Autumn|Winter)", value)
    if season:
        number = {"Spring": 1, "Summer": 2, "Fall": 3, "Autumn": 3, "Winter": 4}[season[2]]
        return {"date-parts": [[int(season[1])]], "season": number}
    found = _DATE.fullmatch(value)
    if not found:
        return {"literal": value}
    parts = [int(found[1])]
    month = found[2] or ""
    if month in _SHORT_MONTHS:
        parts.append(_SHORT_MONTHS.index(month) + 1)
        parts += [int(found[3])] if found[3] else []
    return {"date-parts": [parts]}
