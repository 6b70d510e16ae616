"""BibTeX and BibLaTeX, read into CSL-JSON records.

**Source**: the fields and types of *BibLaTeX*, version 3.20, sections 2.1 and 2.2, and of BibTeX 0.99; to CSL by common
practice.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import TYPE_CHECKING

from fairhand.citing.entries import iso_parts, read_records
from fairhand.model.entry import Entry
from fairhand.model.problem import Problem

if TYPE_CHECKING:
    from bibtexparser.model import Block

TYPES = {
    "article": "article-journal",
    "book": "book",
    "mvbook": "book",
    "collection": "book",
    "mvcollection": "book",
    "proceedings": "book",
    "reference": "book",
    "inbook": "chapter",
    "bookinbook": "chapter",
    "suppbook": "chapter",
    "incollection": "chapter",
    "inreference": "entry-encyclopedia",
    "inproceedings": "paper-conference",
    "conference": "paper-conference",
    "phdthesis": "thesis",
    "mastersthesis": "thesis",
    "thesis": "thesis",
    "techreport": "report",
    "report": "report",
    "manual": "report",
    "booklet": "pamphlet",
    "unpublished": "manuscript",
    "online": "webpage",
    "electronic": "webpage",
    "www": "webpage",
    "dataset": "dataset",
    "software": "software",
    "patent": "patent",
    "periodical": "periodical",
    "video": "motion_picture",
    "movie": "motion_picture",
    "image": "graphic",
    "letter": "personal_communication",
    "legislation": "legislation",
    "jurisdiction": "legal_case",
}
GENRES = {"phdthesis": "PhD dissertation", "mastersthesis": "Master's thesis"}
KINDS_OF_ARTICLE = {"magazine": "article-magazine", "newspaper": "article-newspaper"}
KINDS_OF_THESIS = {"phdthesis": "PhD dissertation", "mathesis": "Master's thesis", "mastersthesis": "Master's thesis"}

FIELDS = {
    "journaltitle": "container-title",
    "journal": "container-title",
    "booktitle": "container-title",
    "publisher": "publisher",
    "school": "publisher",
    "institution": "publisher",
    "organization": "publisher",
    "location": "publisher-place",
    "address": "publisher-place",
    "volume": "volume",
    "pages": "page",
    "edition": "edition",
    "series": "collection-title",
    "doi": "DOI",
    "url": "URL",
    "isbn": "ISBN",
    "issn": "ISSN",
    "chapter": "chapter-number",
    "shorttitle": "title-short",
    "language": "language",
    "langid": "language",
    "note": "note",
    "abstract": "abstract",
    "keywords": "keyword",
    "eventtitle": "event-title",
    "type": "genre",
    "version": "version",
}
"""Fields that are taken over as text; of two for one, the first that is filled."""
ROLES = {"author": "author", "editor": "editor", "translator": "translator", "bookauthor": "container-author"}
DATES = {"date": "issued", "urldate": "accessed", "origdate": "original-date"}
VERBATIM = frozenset({"doi", "url", "isbn", "issn"})
MONTHS = "jan feb mar apr may jun jul aug sep oct nov dec".split(" ")
NAMELESS_IN_PARENT = frozenset({"title", "subtitle", "shorttitle", "author"})

ADDRESS = re.compile(r"\\url\{([^{}\s]{1,2000})\}|(https?://\S{1,2000})")
SLANTED = re.compile(r"\\(emph|textit|textbf|textsuperscript|textsubscript)\s?\{([^{}]{0,400})\}")
TAGS = {"emph": "i", "textit": "i", "textbf": "b", "textsuperscript": "sup", "textsubscript": "sub"}


def read_bibtex(text: str, where: str) -> tuple[tuple[Entry, ...], tuple[Problem, ...]]:
    """The entries of a BibTeX file, each faulty one named and the others kept.

    Args:
        text: the file's text.
        where: its name, for the problems.

    >>> entries, problems = read_bibtex("@book{ame, author = {Ame, Ana}, title = {Salt}, year = 2001}", "a.bib")
    >>> entries[0].authors[0].given, entries[0].issued.year, problems
    ('Ana', 2001, ())
    """
    import logging

    import bibtexparser
    from bibtexparser.model import DuplicateBlockKeyBlock, ParsingFailedBlock
    from bibtexparser.model import Entry as Block

    logging.getLogger("bibtexparser").setLevel(logging.CRITICAL)
    library = bibtexparser.parse_string(text)
    blocks: list[Block] = []
    faults: list[Problem] = []
    for block in library.blocks:
        if isinstance(block, DuplicateBlockKeyBlock) and isinstance(block.ignore_error_block, Block):
            blocks.append(block.ignore_error_block)
        elif isinstance(block, ParsingFailedBlock):
            told = " ".join((block.raw or "").split())[:60]
            mend = "close its braces and quotation marks; the other entries were read"
            faults.append(Problem(_line(where, block), f"the entry cannot be read: {told}", mend))
        elif isinstance(block, Block):
            blocks.append(block)
    if not blocks and not faults and text.strip():
        faults.append(Problem(where, "it holds no BibTeX entry", "give a file with entries such as @book{…}"))
    fields = {block.key: {name.lower(): str(one.value) for name, one in block.fields_dict.items()} for block in blocks}
    records = []
    for block in blocks:
        own = {name.lower(): str(one.value) for name, one in block.fields_dict.items()}
        parent = fields.get(own.get("crossref", ""), {})
        records.append(
            (_record(block.key, block.entry_type.lower(), own, parent), f"{_line(where, block)}, {block.key}")
        )
    entries, problems = read_records(records)
    return entries, (*faults, *problems)


def _line(where: str, block: Block) -> str:
    return f"{where}, line {(block.start_line or 0) + 1}"


def _record(key: str, kind: str, own: Mapping[str, str], parent: Mapping[str, str]) -> dict[str, object]:
    inherited = {name: value for name, value in parent.items() if name not in NAMELESS_IN_PARENT}
    if parent.get("title"):
        inherited["booktitle"] = parent["title"]
    raw = {**inherited, **own}
    record: dict[str, object] = {"id": key, "type": TYPES.get(kind, "document")}
    if kind in {"misc", ""} and (raw.get("url") or "\\url" in raw.get("howpublished", "")):
        record["type"] = "webpage"
    if kind == "article":
        record["type"] = KINDS_OF_ARTICLE.get(raw.get("entrysubtype", "").lower(), "article-journal")
    title = ": ".join(filter(None, (_decoded(raw.get("title", "")), _decoded(raw.get("subtitle", "")))))
    if title:
        record["title"] = title
    for name, variable in FIELDS.items():
        value = raw.get(name, "").strip()
        if value and variable not in record:
            record[variable] = value if name in VERBATIM else _decoded(value)
    if raw.get("number"):
        variable = {"article": "issue", "periodical": "issue", "book": "collection-number"}.get(kind, "number")
        record[variable] = _decoded(raw["number"])
    if raw.get("issue"):
        record["issue"] = _decoded(raw["issue"])
    address = ADDRESS.search(raw.get("howpublished", ""))
    if address and "URL" not in record:
        record["URL"] = address[1] or address[2]
    if record["type"] == "thesis":
        genre = str(record.get("genre", ""))
        record["genre"] = KINDS_OF_THESIS.get(genre.lower(), genre) or GENRES.get(kind, "Thesis")
    for role, variable in ROLES.items():
        names = _names(raw.get(role, ""))
        if names:
            record[variable] = names
    for name, variable in DATES.items():
        if raw.get(name):
            words = raw[name].split("/")[0]
            record[variable] = {"date-parts": [iso_parts(words)]} if iso_parts(words) else {"literal": words}
    if "issued" not in record and raw.get("year"):
        record["issued"] = _date(raw)
    return record


def _date(raw: Mapping[str, str]) -> dict[str, object]:
    year = _decoded(raw["year"])
    if not re.fullmatch(r"\d{1,4}", year):
        return {"literal": year}
    month = raw.get("month", "").strip().lower()
    number = (
        MONTHS.index(month[:3]) + 1 if month[:3] in MONTHS else int(month) if re.fullmatch(r"\d{1,2}", month) else 0
    )
    parts = [int(year)]
    if number in range(1, 13):
        parts.append(number)
        if re.fullmatch(r"\d{1,2}", raw.get("day", "")):
            parts.append(int(raw["day"]))
    return {"date-parts": [parts]}


def _names(value: str) -> list[dict[str, str]]:
    """Names, taken apart before LaTeX is decoded, so that braces still hold a body's name together."""
    from bibtexparser.middlewares.names import parse_single_name_into_parts, split_multiple_persons_names

    names = []
    for name in split_multiple_persons_names(value):
        if name.strip().lower() == "others" or not name.strip():
            continue
        if name.startswith("{") and name.endswith("}"):
            names.append({"literal": _decoded(name)})
            continue
        parts = parse_single_name_into_parts(name, strict=False)
        parted = {
            "family": " ".join(map(_decoded, parts.last)),
            "given": " ".join(map(_decoded, parts.first)),
            "non-dropping-particle": " ".join(map(_decoded, parts.von)),
            "suffix": " ".join(map(_decoded, parts.jr)),
        }
        names.append({part: words for part, words in parted.items() if words})
    return names


def _decoded(value: str) -> str:
    """LaTeX as plain text, slanted words in CSL's own markup."""
    if re.search(r"[\\{}$~`]|--|''", value):
        from pylatexenc.latex2text import LatexNodes2Text

        marked = SLANTED.sub(lambda found: f"<{TAGS[found[1]]}>{found[2]}</{TAGS[found[1]]}>", value)
        value = LatexNodes2Text(math_mode="verbatim").latex_to_text(marked)
    return " ".join(value.split())
