"""What is asked of the public registries of DOIs, ISBNs and PMIDs, and their answers as entries.

A DOI is asked by content negotiation for CSL-JSON; an ISBN in a library catalogue by SRU 1.1 for MODS; a PMID by the
National Library of Medicine's EFetch for the MEDLINE format. Each request tells the registry the number and nothing
else.

**Source**: DOI Content Negotiation (``application/vnd.citationstyles.csl+json``), Crossref and DataCite; SRU 1.1 and
MODS 3.7, Library of Congress; Entrez Programming Utilities Help, NLM. The catalogue's address is from memory.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING
from urllib.parse import quote

from fairhand.citing.described import invert_name, mark_origin, record_of
from fairhand.citing.entries import read_records
from fairhand.citing.identifiers import Identifier
from fairhand.citing.nbib import read_nbib
from fairhand.errors import FileUnreadable
from fairhand.model.description import Said
from fairhand.model.entry import Entry
from fairhand.model.request import WebAnswer, WebRequest
from fairhand.reading.archive import parse_xml
from fairhand.reading.describing import gather

if TYPE_CHECKING:
    from lxml.etree import _Element

CSL_JSON = "application/vnd.citationstyles.csl+json"
ADDRESSES: Mapping[str, str] = {
    "DOI": "https://doi.org/{}",
    "ISBN": "https://sru.k10plus.de/opac-de-627?version=1.1&operation=searchRetrieve&maximumRecords=1"
    "&recordSchema=mods36&query=pica.isb%3D{}",
    "PMID": "https://eutils.ncbi.nlm.nih.gov/entrez/eutils/efetch.fcgi?db=pubmed&rettype=medline&retmode=text&id={}",
}
"""Where each kind is asked for; ``{}`` stands for the number."""
_ACCEPTED = {"DOI": CSL_JSON, "ISBN": "application/xml", "PMID": "text/plain"}
_KEPT_OUT = frozenset(
    ("reference", "abstract", "relation", "license", "link", "funder", "assertion", "indexed", "score")
)
"""What registries send along and no list of references needs."""
_JOURNALS = {"journal-article": "article-journal", "book-chapter": "chapter", "proceedings-article": "paper-conference",
             "dissertation": "thesis", "monograph": "book", "posted-content": "article", "edited-book": "book",
             "reference-entry": "entry-encyclopedia", "reference-book": "book"}  # fmt: skip
"""Types that one registry sends in its own words."""
_MODS_ROLES = {"aut": "author", "author": "author", "verfasser": "author", "edt": "editor", "editor": "editor",
               "hrsg": "editor", "herausgeber": "editor", "trl": "translator", "translator": "translator"}  # fmt: skip


def ask_registry(identifier: Identifier, addresses: Mapping[str, str] = ADDRESSES) -> WebRequest:
    """The request for the record of a work.

    Args:
        identifier: Its number.
        addresses: Where each kind is asked for; ``{}`` stands for the number.

    >>> ask_registry(Identifier("DOI", "10.5555/a b")).address
    'https://doi.org/10.5555/a%20b'
    """
    address = addresses.get(identifier.kind) or ADDRESSES[identifier.kind]
    return WebRequest(address.replace("{}", quote(identifier.value, safe="/")), _ACCEPTED[identifier.kind])


def read_registry(identifier: Identifier, answer: WebAnswer) -> Entry:
    """The entry that a registry's answer holds, each of its fields marked as from there.

    Raises:
        FileUnreadable: It has no such record, or sent something else.
    """
    match identifier.kind:
        case "DOI":
            record = _read_csl(answer.data)
        case "ISBN":
            record = _read_mods(answer.data)
        case "PMID":
            entries, _ = read_nbib(answer.data.decode("utf-8", "replace"), "the answer")
            record = dict(entries[0].csl) if entries else None
    if record is None:
        message = f"{identifier}: the registry has no record of it; look at the number, or write the record by hand"
        raise FileUnreadable(message)
    where = f"the registry’s record of {identifier}"
    record = {**record, "id": "", identifier.kind: record.get(identifier.kind) or identifier.value}
    entries, _ = read_records([(mark_origin(record, where), where)], with_ids=False)
    if not entries:
        message = f"{identifier}: the registry’s record says nothing to cite; write the record by hand"
        raise FileUnreadable(message)
    return replace(entries[0], id="", csl={**entries[0].csl, "id": ""})


def _read_csl(data: bytes) -> dict[str, object] | None:
    try:
        found = json.loads(data)
    except (ValueError, RecursionError):
        return None
    if not isinstance(found, dict):
        return None
    record = {str(name): _single(value) for name, value in found.items() if name not in _KEPT_OUT}
    record["type"] = _JOURNALS.get(str(record.get("type", "")), record.get("type", "document"))
    for role in ("author", "editor", "translator"):
        if isinstance(record.get(role), list):
            record[role] = [_plain_person(person) for person in record[role] if isinstance(person, dict)]  # type: ignore[attr-defined]
    kept = {name: value for name, value in record.items() if value not in ("", [], {}, None)}
    return kept if kept.get("title") else None


def _single(value: object) -> object:
    """A value that one registry gives as a list of one (``title``, ``ISSN``)."""
    return value[0] if isinstance(value, list) and value and all(isinstance(one, str) for one in value) else value


def _plain_person(person: Mapping[str, object]) -> dict[str, object]:
    parts = ("family", "given", "literal", "suffix", "dropping-particle", "non-dropping-particle")
    kept = {name: person[name] for name in parts if isinstance(person.get(name), str)}
    return kept or {"literal": str(person.get("name", ""))}


def _read_mods(data: bytes) -> dict[str, object] | None:
    try:
        root = parse_xml(data, "the answer")
    except FileUnreadable:
        return None
    mods = next(root.iter("{*}mods"), None)
    if mods is None:
        return None
    record = record_of(gather(_say_of_mods(mods)))
    return record if record.get("title") else None


def _say_of_mods(mods: _Element) -> Iterator[Said]:
    """What a MODS record says."""
    for title in mods.findall("{*}titleInfo"):
        if not title.get("type"):
            article = _text(title, "nonSort")
            whole = f"{article} {_text(title, 'title')}".strip()
            yield "title", ": ".join(filter(None, (whole, _text(title, "subTitle")))), "MODS"
    people: dict[str, list[str]] = {}
    for name in mods.findall("{*}name"):
        roles = [str(one.text or "").strip().lower() for one in name.iter("{*}roleTerm")]
        role = next((_MODS_ROLES[one] for one in roles if one in _MODS_ROLES), "" if roles else "author")
        if role:
            people.setdefault(role, []).append(_mods_name(name))
    for role, names in people.items():
        yield role, names, "MODS"
    for origin in mods.findall("{*}originInfo"):
        for tag, variable in (("publisher", "publisher"), ("edition", "edition")):
            yield variable, _text(origin, tag), "MODS"
        places = [one for one in origin.iter("{*}placeTerm") if one.get("type") == "text"]
        yield "publisher-place", (places[0].text or "") if places else "", "MODS"
        for date in (*origin.findall("{*}dateIssued"), *origin.findall("{*}copyrightDate")):
            yield "issued", (date.text or "").strip(" [].©c"), "MODS"
    yield "language", next((one.text or "" for one in mods.iter("{*}languageTerm")), ""), "MODS"
    yield "type", "book", "MODS"


def _mods_name(name: _Element) -> str:
    parts = {part.get("type", ""): (part.text or "").strip() for part in name.findall("{*}namePart")}
    if parts.get("family"):
        return ", ".join(filter(None, (parts["family"], parts.get("given"))))
    return invert_name(parts.get("", "")) if name.get("type") == "personal" else parts.get("", "")


def _text(element: _Element, tag: str) -> str:
    found = element.find(f"{{*}}{tag}")
    return "".join(map(str, found.itertext())).strip() if found is not None else ""
