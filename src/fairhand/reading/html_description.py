"""What a web page says of itself: its ``citation_`` tags, Dublin Core, JSON-LD, Open Graph, and its title.

**Source**: the ``citation_`` tags as scholarly publishers set them (common practice); Dublin Core in HTML (DCMI,
*Expressing Dublin Core in HTML/XHTML*, 2008); schema.org in JSON-LD 1.1; the Open Graph protocol.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from itertools import islice
from typing import TYPE_CHECKING

from fairhand.model.description import Said
from fairhand.reading.html import parse_html

if TYPE_CHECKING:
    from lxml.etree import _Element

CITATION, DUBLIN_CORE, LINKED_DATA = "its citation tags", "its Dublin Core tags", "its linked data"
OPEN_GRAPH, META, PAGE = "its Open Graph tags", "its meta tags", "the page’s title"
SAVED, CANONICAL = "the browser’s remark on where it was saved", "its canonical address"

_CITATION_FIELDS = {
    "title": "title",
    "journal_title": "container-title",
    "inbook_title": "container-title",
    "book_title": "container-title",
    "conference_title": "container-title",
    "publication_date": "issued",
    "date": "issued",
    "online_date": "issued",
    "year": "issued",
    "volume": "volume",
    "issue": "issue",
    "doi": "DOI",
    "isbn": "ISBN",
    "issn": "ISSN",
    "publisher": "publisher",
    "dissertation_institution": "publisher",
    "technical_report_institution": "publisher",
    "technical_report_number": "number",
    "language": "language",
    "public_url": "URL",
    "abstract_html_url": "URL",
    "fulltext_html_url": "URL",
}
_CITATION_KINDS = {
    "journal_title": "article-journal",
    "inbook_title": "chapter",
    "book_title": "chapter",
    "conference_title": "paper-conference",
    "dissertation_institution": "thesis",
    "technical_report_institution": "report",
    "isbn": "book",
}
"""What kind of work a tag shows, the surest first."""
_DUBLIN_CORE_FIELDS = {
    "title": "title",
    "date.issued": "issued",
    "issued": "issued",
    "date": "issued",
    "publisher": "publisher",
    "language": "language",
    "relation.ispartof": "container-title",
    "ispartof": "container-title",
}
_LINKED_KINDS = {
    "ScholarlyArticle": "article-journal",
    "MedicalScholarlyArticle": "article-journal",
    "NewsArticle": "article-newspaper",
    "ReportageNewsArticle": "article-newspaper",
    "OpinionNewsArticle": "article-newspaper",
    "AnalysisNewsArticle": "article-newspaper",
    "BlogPosting": "post-weblog",
    "Book": "book",
    "Chapter": "chapter",
    "Report": "report",
    "Thesis": "thesis",
    "Dataset": "dataset",
    "Article": "webpage",
    "WebPage": "webpage",
    "TechArticle": "webpage",
}
_PUBLISHED = frozenset(("Book", "Report", "Thesis", "Dataset"))
"""Kinds whose publisher is one; that of a page on the web is the site."""
_IN_PARTS = frozenset(("ScholarlyArticle", "MedicalScholarlyArticle", "Chapter"))
"""Kinds that stand in a journal or a book, which is told apart."""
_SAVED_FROM = re.compile(r"saved from url=\(\d{1,6}\)(https?://\S{1,2000})")
_DOI = re.compile(r"(?:doi:\s?|https?://(?:dx\.)?doi\.org/)?(10\.\d{4,9}/\S{1,200})", re.IGNORECASE)
_MOST_REMARKS = 50
_MOST_TAGS = 4000
_MOST_NODES = 2000
_DEEPEST = 6


def say_of_html(data: bytes, file: str) -> Iterator[Said]:
    """What a page says of itself, in the order in which it is trusted; nothing of it is run.

    Raises:
        InputError: It is no page, or too large a one.

    >>> page = b"<html><head><meta name='citation_title' content='Ebb'><title>Ebb | Shore</title></head></html>"
    >>> [(value, where) for name, value, where in say_of_html(page, "a.html") if name == "title" and value]
    [('Ebb', 'its citation tags'), ('Ebb | Shore', 'the page’s title')]
    """
    root = parse_html(data, file)
    tags = _list_tags(root)
    yield from _say_of_citation_tags(tags)
    yield from _say_of_dublin_core(tags)
    yield from _say_of_linked_data(root)
    yield from _say_of_the_page(root, tags)


def _list_tags(root: _Element) -> dict[str, list[str]]:
    """What the page's ``meta`` elements say, by their names in small letters."""
    tags: dict[str, list[str]] = {}
    for number, meta in enumerate(root.iter("meta")):
        if number == _MOST_TAGS:
            break
        name = (meta.get("name") or meta.get("property") or meta.get("itemprop") or "").strip().lower()
        if name and meta.get("content", "").strip():
            tags.setdefault(name, []).append(meta.get("content", "").strip())
    return tags


def _say_of_citation_tags(tags: Mapping[str, list[str]]) -> Iterator[Said]:
    names = tags.get("citation_author") or [
        name for names in tags.get("citation_authors", []) for name in names.split(";")
    ]
    yield "author", names, CITATION
    yield "editor", tags.get("citation_editor", []), CITATION
    for name, variable in _CITATION_FIELDS.items():
        for value in tags.get(f"citation_{name}", [])[:1]:
            yield variable, _trim_doi(value) if variable == "DOI" else value, CITATION
    ends = [tags.get(f"citation_{end}", [""])[0] for end in ("firstpage", "lastpage")]
    yield "page", "-".join(dict.fromkeys(filter(None, ends))), CITATION
    kinds = (kind for name, kind in _CITATION_KINDS.items() if f"citation_{name}" in tags)
    yield "type", next(kinds, ""), CITATION


def _say_of_dublin_core(tags: Mapping[str, list[str]]) -> Iterator[Said]:
    held: dict[str, list[str]] = {}
    for name, values in tags.items():
        prefix, _, rest = name.replace(":", ".").partition(".")
        if prefix in {"dc", "dcterms"}:
            held.setdefault(rest, []).extend(values)
    yield "author", [*held.get("creator", []), *held.get("creator.personalname", [])], DUBLIN_CORE
    yield "editor", held.get("contributor.editor", []), DUBLIN_CORE
    for name, variable in _DUBLIN_CORE_FIELDS.items():
        for value in held.get(name, [])[:1]:
            yield variable, value, DUBLIN_CORE
    for value in (*held.get("identifier", []), *held.get("identifier.doi", [])):
        yield "DOI", _trim_doi(value), DUBLIN_CORE


def _trim_doi(value: str) -> str:
    """The DOI in an identifier, or nothing."""
    found = _DOI.fullmatch(value.strip())
    return found[1] if found else ""


def _say_of_linked_data(root: _Element) -> Iterator[Said]:
    nodes = [node for script in root.iter("script") if script.get("type", "").lower() == "application/ld+json"
             for node in _nodes(script.text or "")]  # fmt: skip
    order = list(_LINKED_KINDS)
    works = [(min(order.index(kind) for kind in known), place) for place, node in enumerate(nodes)
             if (known := _kinds(node) & _LINKED_KINDS.keys())]  # fmt: skip
    for rank, place in sorted(works)[:1]:
        node, kind = nodes[place], order[rank]
        yield "type", _LINKED_KINDS[kind], LINKED_DATA
        yield "title", _text(node.get("headline")) or _text(node.get("name")), LINKED_DATA
        for role in ("author", "editor", "translator"):
            yield role, _names(node.get(role)), LINKED_DATA
        yield "issued", _text(node.get("datePublished")), LINKED_DATA
        if kind in _PUBLISHED:
            yield "publisher", _text(node.get("publisher")), LINKED_DATA
        elif kind not in _IN_PARTS:
            yield "container-title", _text(node.get("publisher")), LINKED_DATA
        yield "language", _text(node.get("inLanguage")), LINKED_DATA
        yield "ISBN", _text(node.get("isbn")), LINKED_DATA
        for identifier in _texts(node, "sameAs", "identifier", "@id"):
            yield "DOI", _trim_doi(identifier), LINKED_DATA
        yield "URL", _text(node.get("url")) or _text(node.get("mainEntityOfPage")), LINKED_DATA
        ends = [_text(node.get(end)) for end in ("pageStart", "pageEnd")]
        yield "page", _text(node.get("pagination")) or "-".join(filter(None, ends)), LINKED_DATA
        yield from _say_of_whole(node)


def _say_of_whole(node: Mapping[str, object]) -> Iterator[Said]:
    """What is said of the issue, volume and journal, or the book, that the work is part of."""
    part: object = node
    for _ in range(_DEEPEST):
        part = part.get("isPartOf") if isinstance(part, Mapping) else None
        if not isinstance(part, Mapping):
            return
        kinds = _kinds(part)
        if kinds & {"PublicationIssue", "PublicationVolume"}:
            yield "issue", _text(part.get("issueNumber")), LINKED_DATA
            yield "volume", _text(part.get("volumeNumber")), LINKED_DATA
        elif not kinds & {"WebSite", "WebPage"}:
            yield "container-title", _text(part.get("name")), LINKED_DATA
            yield "ISSN", _text(part.get("issn")), LINKED_DATA


def _nodes(text: str) -> list[Mapping[str, object]]:
    """The objects of a JSON-LD text: one, a list of them, or a graph."""
    try:
        value = json.loads(text)
    except (ValueError, RecursionError):
        return []
    waiting: list[object] = [value]
    out: list[Mapping[str, object]] = []
    while waiting and len(out) < _MOST_NODES:
        one = waiting.pop(0)
        if isinstance(one, list):
            waiting.extend(one[:_MOST_NODES])
        elif isinstance(one, dict):
            out.append(one)
            waiting.extend(one[key] for key in ("@graph", "mainEntity") if key in one)
    return out


def _kinds(node: Mapping[str, object]) -> set[str]:
    kind = node.get("@type")
    return {one for one in (kind if isinstance(kind, list) else [kind]) if isinstance(one, str)}


def _text(value: object) -> str:
    """A value as text: itself, or the name, value or address of the thing that it is."""
    if isinstance(value, list):
        value = value[0] if value else ""
    if isinstance(value, Mapping):
        value = next((value[key] for key in ("name", "value", "@value", "@id", "url") if value.get(key)), "")
    return str(value) if isinstance(value, str | int) and not isinstance(value, bool) else ""


def _texts(node: Mapping[str, object], *keys: str) -> Iterator[str]:
    for key in keys:
        value = node.get(key)
        for one in value if isinstance(value, list) else [value]:
            yield _text(one)


def _names(value: object) -> list[str]:
    names = []
    for one in value if isinstance(value, list) else [value]:
        if isinstance(one, Mapping) and one.get("familyName") and one.get("givenName"):
            names.append(f"{_text(one['familyName'])}, {_text(one['givenName'])}")
        else:
            names.append(_text(one))
    return [name for name in names if not name.startswith(("http:", "https:"))]


def _say_of_the_page(root: _Element, tags: Mapping[str, list[str]]) -> Iterator[Said]:
    from lxml import etree

    first = {name: values[0] for name, values in tags.items()}
    yield "title", first.get("og:title", ""), OPEN_GRAPH
    yield "container-title", first.get("og:site_name", ""), OPEN_GRAPH
    yield "issued", first.get("article:published_time", ""), OPEN_GRAPH
    yield "author", [one for one in tags.get("article:author", []) if "://" not in one], OPEN_GRAPH
    yield "author", tags.get("author", []), META
    yield "issued", first.get("date", ""), META
    for link in root.iter("link"):
        if link.get("rel", "").lower() == "canonical" and link.get("href", "").startswith(("https://", "http://")):
            yield "URL", link.get("href", ""), CANONICAL
    yield "URL", first.get("og:url", ""), OPEN_GRAPH
    for comment in (
        *root.itersiblings(etree.Comment, preceding=True),
        *islice(root.iter(etree.Comment), _MOST_REMARKS),
    ):
        if found := _SAVED_FROM.search(comment.text or ""):
            yield "URL", found[1], SAVED
    titles = root.iter("title")
    yield "title", next(("".join(map(str, one.itertext())) for one in titles), ""), PAGE
    yield "language", root.get("lang", ""), META
    yield "type", "webpage", "its being a web page"
