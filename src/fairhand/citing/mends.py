"""Rules of the manuals that no engine applies, applied to a record before it is rendered.

Each mend is a small function over one record; the table at the end says which manuals ask for which. The engine's style
files stay as they are.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from fairhand.citing.entries import text_of
from fairhand.citing.records import Item, clean_record
from fairhand.citing.style_rules import StyleRules
from fairhand.citing.title_mends import (
    LEADING_ARTICLE,
    drop_article_of_newspaper,
    drop_tags_unmatched,
    keep_prepositions,
    shorten_title,
    shorten_without_article,
    trim_titles,
)
from fairhand.model.entry import Entry

PERIODICAL = frozenset(
    {"article-journal", "article-magazine", "article-newspaper", "periodical", "review", "review-book"}
)
ONLINE = frozenset({"webpage", "post", "post-weblog"})

DOI = re.compile(r"10\.\d{4,9}/\S+")
EDITION_WORD = re.compile(r"(?i)\s*\b(?:edition|edn|ed)\b\.?$")
ORDINAL = re.compile(r"(?i)(\d+)(?:st|nd|rd|th)")
ORDINAL_WORDS = {word: str(number) for number, word in enumerate("second third fourth fifth sixth".split(), 2)}
CATALOGUES = re.compile(r"(?i)crossref|catalog|worldcat|isbn|google|amazon|doi\.org|arxiv\.org|wiley online|^https?:")
FIRST_EDITION = frozenset({"1", "first", "1st"})
CORPORATE_FORM = re.compile(r",?\s+(?:Incorporated|Inc\.?|Limited|Ltd\.?|LLC|L\.L\.C\.|GmbH|plc)(?=$|,|\s*[/;])")
BUSINESS_WORDS = re.compile(
    r",?\s+(?:(?:and|&)\s+)?(?:Company|Co\.?|Corporation|Corp\.?|Incorporated|Inc\.?|Limited|Ltd\.?|LLC|L\.L\.C\.|GmbH|plc)"
    r"(?=$|,|\s*[/;])"
)
UNIVERSITY = re.compile(r"\b(?:University|Univ\.)(?!\w)")
PRESS = re.compile(r"\bPress\b")
DOCTORAL = re.compile(
    r"(?i)^\s*(?:unpublished\s+)?(?:ph\.?\s?d\.?|d\.?phil\.?|doctoral)\s+(thesis|diss(?:ertation)?\.?)\s*$"
)


def tidy_identifiers(item: Item) -> None:
    """A DOI stands bare, whatever was put before it. **Source**: APA 7, 9.35; the DOI handbook, 3.8.

    >>> item = {"DOI": "https://10.1126/science.9"}; tidy_identifiers(item); item["DOI"]
    '10.1126/science.9'
    """
    for key in ("DOI", "URL"):
        found = DOI.search(text_of(item, key))
        if found and (key == "DOI" or ("doi.org/" in text_of(item, key) and "DOI" not in item)):
            item["DOI"] = found[0].rstrip(".,;")


def tidy_numbers(item: Item) -> None:
    """Pages stand without *pp.*, an edition without *ed.*; a first edition is not named.

    **Source**: MLA 9, 5.51; APA 7, 9.50; CMOS 17, 14.113.
    """
    if "page" in item:
        page = re.sub(r"(?i)^\s*p(?:p|ages?)?\b\.?\s*", "", text_of(item, "page"))
        item["page"] = re.sub(r"(?<=\w)\s*[‐‑–—−]+\s*(?=\w)|(?<=\w)--(?=\w)", "-", page)
    edition = EDITION_WORD.sub("", text_of(item, "edition"))
    number = ORDINAL.fullmatch(edition)
    edition = number[1] if number else ORDINAL_WORDS.get(edition.lower(), edition)
    if edition.lower() in FIRST_EDITION:
        edition = ""
    item["edition"] = edition


def name_database(item: Item) -> None:
    """The database that an article or thesis was read in is named; the catalogue of its record is not.

    Reference lists keep either under ``source``, and the database often under ``archive``. **Source**: MLA 9, 5.31;
    APA 7, 10.6; common practice of reference lists.
    """
    if CATALOGUES.search(text_of(item, "source")):
        _drop(item, "source")
    if item["type"] not in PERIODICAL | {"thesis"} or item.get("archive_location"):
        return
    old, new = ("source", "archive") if item["type"] == "thesis" else ("archive", "source")
    if item.get(old) and not item.get(new):
        item[new] = item.pop(old)


def place_preprint(item: Item) -> None:
    """A preprint's archive stands as its publisher. **Source**: APA 7, 10.8."""
    if item["type"] == "article" and not item.get("publisher") and item.get("container-title"):
        item["publisher"] = item.pop("container-title")


def drop_publisher_of_periodical(item: Item) -> None:
    """A periodical's publisher and place are not named. **Source**: MLA 9, 5.66; APA 7, 9.29; CMOS 17, 14.182."""
    if item["type"] in PERIODICAL:
        _drop(item, "publisher", "publisher-place")


def drop_repeated_publisher(item: Item) -> None:
    """A publisher that is the author, or whose name the site bears, is not said twice.

    **Source**: APA 7, 9.29 and 10.16; MLA 9, 5.65; for sites, CMOS 17, 14.207.
    """
    if _same(text_of(item, "publisher"), _author_of(item)) or _same(item.get("publisher"), item.get("container-title")):
        _drop(item, "publisher", "publisher-place")


def drop_repeated_site(item: Item) -> None:
    """A site that bears its author's name is not named again. **Source**: APA 7, 10.16; CMOS 17, 14.207."""
    if item["type"] in ONLINE:
        for key in ("container-title", "publisher"):
            if _same(item.get(key), _author_of(item)):
                _drop(item, key)
        if _same(item.get("publisher"), item.get("container-title")):
            _drop(item, "publisher")


def abbreviate_publisher(item: Item) -> None:
    """*University* and *Press* of a university press are *U* and *P*; words of business and a first *The* go.

    An ampersand is *and*. **Source**: MLA 9, 5.61–5.64, in part from memory.

    >>> item = {"type": "book", "publisher": "University of Chicago Press"}; abbreviate_publisher(item)
    >>> item["publisher"]
    'U of Chicago P'
    """
    publisher = LEADING_ARTICLE.sub("", BUSINESS_WORDS.sub("", text_of(item, "publisher")), count=1)
    if UNIVERSITY.search(publisher) and (PRESS.search(publisher) or item["type"] == "thesis"):
        publisher = PRESS.sub("P", UNIVERSITY.sub("U", publisher)).replace("U P", "UP")
    publisher = publisher.replace(" & ", " and ")
    if publisher:
        item["publisher"] = publisher


def drop_corporate_form(item: Item) -> None:
    """A publisher's *Inc.*, *Ltd.* or first *The* is not printed. **Source**: APA 7, 9.29; CMOS 17, 14.133."""
    publisher = text_of(item, "publisher")
    if publisher:
        item["publisher"] = LEADING_ARTICLE.sub("", CORPORATE_FORM.sub("", publisher), count=1)


def call_report_number(item: Item) -> None:
    """A report's number stands as *Report No. 7*. **Source**: APA 7, 10.4."""
    number = text_of(item, "number")
    if item["type"] == "report" and number:
        item["genre"] = text_of(item, "genre") or "Report"
        item["number"] = number if re.match(r"(?i)no\b", number) else f"No. {number}"


def name_dissertation(genre: str) -> Callable[[Item], None]:
    """A doctoral dissertation is called ``genre``. **Source**: APA 7, 10.6; MLA 9, 5.68; CMOS 17, 14.215."""

    def mend(item: Item) -> None:
        """A thesis's genre in the manual's words."""
        found = DOCTORAL.fullmatch(text_of(item, "genre"))
        if item["type"] == "thesis" and found and not (genre == "PhD diss." and found[1].lower() == "thesis"):
            item["genre"] = genre

    return mend


MENDS: tuple[tuple[str, Callable[[Item], None]], ...] = (
    ("", drop_tags_unmatched),
    ("", trim_titles),
    ("", tidy_identifiers),
    ("", tidy_numbers),
    ("", name_database),
    ("apa", place_preprint),
    ("mla apa chicago", drop_publisher_of_periodical),
    ("mla apa", drop_repeated_publisher),
    ("apa chicago", drop_repeated_site),
    ("", shorten_title),
    ("mla chicago", shorten_without_article),
    ("mla chicago-17", keep_prepositions),
    ("mla", abbreviate_publisher),
    ("apa chicago", drop_corporate_form),
    ("apa", call_report_number),
    ("apa", name_dissertation("Doctoral dissertation")),
    ("mla", name_dissertation("PhD dissertation")),
    ("chicago", name_dissertation("PhD diss.")),
    ("chicago", drop_article_of_newspaper),
)
"""The manuals that ask for each mend (none: all of them), in the order in which the mends are made."""


def mend_record(entry: Entry, rule: StyleRules) -> Item:
    """The entry's record as the style's manual wants it rendered; the entry itself is not touched."""
    item = clean_record(entry.csl)
    asking = {rule.manual, f"{rule.manual}-{rule.edition}"}
    for manuals, mend in MENDS:
        if not manuals or asking & set(manuals.split()):
            mend(item)
    return {key: value for key, value in item.items() if value not in ("", [], {})}


def _author_of(item: Item) -> str:
    """The name of the body that wrote it alone, or empty."""
    authors = item.get("author")
    if isinstance(authors, list) and len(authors) == 1 and isinstance(authors[0], dict):
        return str(authors[0].get("literal", ""))
    return ""


def _same(one: object, other: object) -> bool:
    return bool(one) and re.sub(r"^the |\W", "", str(one).lower()) == re.sub(r"^the |\W", "", str(other).lower())


def _drop(item: Item, *keys: str) -> None:
    for key in keys:
        item.pop(key, None)
