"""A reference that was taken apart, as a record of CSL-JSON: what it says, and what of it is guessed.

Nothing is added that the reference does not say, but for the kind of work, which is told from what it names: a journal
with a volume, a house that publishes, a degree.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from fairhand.citing.telltales import MONTHS
from fairhand.leads.people import read_people
from fairhand.leads.reference import Reference

_YEAR = re.compile(r"(?<!\d)(?:1[4-9]|20)\d\d(?!\d)")
_DAY = re.compile(r"(?<!\d)([12]?\d|3[01])(?:st|nd|rd|th)?(?!\d)")
_MEETING = re.compile(
    r"\b(?:proc(?:eedings|\.)|conf(?:erence|\.)|symp(?:osium|\.)|workshop|congress|colloquium|meeting)", re.IGNORECASE
)
_DEGREE = re.compile(r"thesis|dissertation|\bph\.?\s?d\b|habilitation|\bdiploma", re.IGNORECASE)
_EPRINT = re.compile(r"arxiv|biorxiv|medrxiv|preprint|e-?print", re.IGNORECASE)
_DOI = re.compile(r"10\.\d{4,9}/\S+")
_RANGE = re.compile(r"([A-Za-z]{0,2}\d+|[ivxlc]+)\s?(?:[-‐–—]{1,2})\s?([A-Za-z]{0,2}\d+|[ivxlc]+)")
_ORDINAL = re.compile(r"(\d{1,2})(?:st|nd|rd|th)?\b")
_LOOKED_AT = re.compile(r"retrieved|accessed|viewed|cited|abgerufen|consulté", re.IGNORECASE)
_WITHOUT_PAGES = frozenset({"book", "thesis", "webpage", "report", "document"})
_TRANSLATES = re.compile(r"\btrans(?:\.|lat)|\bübers", re.IGNORECASE)


@dataclass(frozen=True)
class LeadRecord:
    """What a reference says of a work."""

    csl: Mapping[str, object]
    """CSL-JSON, without an id."""
    guessed: frozenset[str]
    """The fields of it that the reference does not say outright."""


def record_of(reference: Reference) -> LeadRecord:
    """The record of a reference.

    >>> from fairhand.leads.fields import read_reference
    >>> found = record_of(read_reference("Lind, A. (2001). The salt roads. Journal of Trade, 12(3), 113–28."))
    >>> found.csl["type"], found.csl["title"], found.csl["page"], found.csl["issued"]
    ('article-journal', 'The salt roads', '113-128', {'date-parts': [[2001]]})
    """
    out: dict[str, object] = {}
    author = read_people(reference.text("author"))
    if author.names:
        out["author"] = list(author.names)
    for text in reference.texts("editor"):
        names = read_people(text).names
        role = "translator" if _TRANSLATES.search(_before(reference, text)) else "editor"
        if names:
            out.setdefault(role, list(names))
    for field, variable in (
        ("title", "title"),
        ("container", "container-title"),
        ("series", "collection-title"),
        ("volume", "volume"),
        ("issue", "issue"),
        ("publisher", "publisher"),
        ("place", "publisher-place"),
    ):
        if reference.text(field):
            out[variable] = reference.text(field)
    if pages := reference.text("pages"):
        out["page"] = plain_pages(pages)
    _put_dates(out, reference)
    if edition := reference.text("edition"):
        number = _ORDINAL.search(edition)
        out["edition"] = number[1] if number else edition
    _put_addresses(out, reference)
    report = " ".join(reference.texts("report"))
    kind, sure = _kind_of(out, report)
    if kind in _WITHOUT_PAGES:
        out.pop("page", None)  # the page that was cited, and not those that it takes up
    out = {"type": kind, **out}
    if report:
        _put_report(out, report, kind)
    guessed = set() if sure else {"type"}
    if author.et_al:
        guessed.add("author")
    return LeadRecord(out, frozenset(guessed))


def _before(reference: Reference, text: str) -> str:
    """The few words before a field."""
    at = reference.raw.find(text)
    return reference.raw[max(0, at - 16) : at]


def _put_dates(out: dict[str, object], reference: Reference) -> None:
    """When it appeared, and when it was looked at."""
    issued = []
    for text in reference.texts("date"):
        if _LOOKED_AT.search(_before(reference, text)):
            out.setdefault("accessed", read_date(text))
        else:
            issued.append(text)
    if issued:
        out["issued"] = read_date(max(issued, key=lambda one: bool(_YEAR.search(one))))


def _put_addresses(out: dict[str, object], reference: Reference) -> None:
    for text in (*reference.texts("doi"), *reference.texts("url")):
        doi = _DOI.search(text.replace(" ", ""))
        if doi:
            out.setdefault("DOI", doi[0].rstrip(".,;"))
        elif "." in text:
            out.setdefault("URL", text if "://" in text else f"https://{text}" if text.startswith("www.") else text)


def _kind_of(out: Mapping[str, object], report: str) -> tuple[str, bool]:
    """The kind of work, and whether the reference says it outright."""
    container = str(out.get("container-title", ""))
    if _DEGREE.search(report):
        return "thesis", True
    if _EPRINT.search(report) and not container:
        return "article", True
    if report and not container:
        return "report", True
    if _MEETING.search(container):
        return "paper-conference", True
    if container and ("editor" in out or ("publisher" in out and "issue" not in out and "volume" not in out)):
        return "chapter", "editor" in out
    if container and ("volume" in out or "issue" in out):
        return "article-journal", True
    if container:
        return ("webpage" if "URL" in out and "page" not in out else "article-journal"), False
    if "publisher" in out or "edition" in out or "publisher-place" in out:
        return "book", "edition" in out
    if "URL" in out:
        return "webpage", False
    return "document", False


def _put_report(out: dict[str, object], report: str, kind: str) -> None:
    """The kind and the number of a report, apart where they can be told."""
    if kind == "thesis":
        out["genre"] = report
        return
    number = re.search(
        r"(?:\bno\.?\s*)?((?:[A-Za-z]{1,8}[\s:/-]?)?\d[\w./-]*(?:\s?[-/]\s?[\w./]+)*)\W*$", report, re.IGNORECASE
    )
    eprint = re.search(r"arxiv\s?:?\s?(\S+)", report, re.IGNORECASE)
    if eprint:
        out["number"] = f"arXiv:{eprint[1].rstrip('.,;')}"
    elif number:
        genre = report[: number.start()].strip(" ,.:-")
        out["number"] = number[1]
        if genre:
            out["genre"] = genre
    else:
        out["genre"] = report


def read_date(text: str) -> dict[str, object]:
    """A date as CSL-JSON has it: year, month and day as far as they are said; else its words.

    >>> read_date("12 May 1994"), read_date("in press")
    ({'date-parts': [[1994, 5, 12]]}, {'literal': 'in press'})
    """
    year = _YEAR.search(text)
    if not year:
        return {"literal": " ".join(text.split())}
    parts = [int(year[0])]
    lowered = text.lower()
    found = [(lowered.find(name[:3].lower()), n) for n, name in enumerate(MONTHS, 1) if name[:3].lower() in lowered]
    if found:
        parts.append(min(found)[1])
        rest = text[: year.start()] + text[year.end() :]
        day = _DAY.search(rest)
        if day:
            parts.append(int(day[1]))
    return {"date-parts": [parts]}


def plain_pages(text: str) -> str:
    """A range of pages with a plain hyphen and its last page whole.

    >>> plain_pages("1186–92"), plain_pages("e1001473"), plain_pages("12 -- 19")
    ('1186-1192', 'e1001473', '12-19')
    """
    found = _RANGE.search(text)
    if not found:
        return text.strip()
    first, last = found[1], found[2]
    if first.isdigit() and last.isdigit() and len(last) < len(first):
        last = first[: len(first) - len(last)] + last
    return f"{first}-{last}"
