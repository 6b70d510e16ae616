"""The data sets that are measured on, read as drafts or as sources; nothing of them stands in the project."""

from __future__ import annotations

import ast
import csv
import os
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.source import Page, SourceText

ROOT = Path(__file__).resolve().parents[2]
DATA = Path(os.environ.get("FAIRHAND_DATA", ROOT.parent / "shared"))
PAGE = 2400
"""Characters a page, about those of a printed one."""
ITALIC = frozenset({"italic", "emphasis", "term"})
FORMULAS = frozenset({"inline-formula", "disp-formula", "inline-graphic", "math"})


@dataclass(frozen=True, slots=True)
class Shelved:
    """A source with its whole text, so that a place in it leads to its page."""

    entry: Entry
    text: str
    starts: tuple[int, ...]
    """Where each page begins in ``text``."""
    first: int
    """The first page's number."""

    def pages_of(self, start: int, end: int) -> tuple[int, int]:
        """The numbers of the first and last page of a stretch of the text."""
        return self._page_at(start), self._page_at(end - 1)

    def source(self) -> SourceText:
        """Its text as the checks see it."""
        ends = (*self.starts[1:], len(self.text))
        pages = (
            Page(str(self.first + n), self.text[a:b]) for n, (a, b) in enumerate(zip(self.starts, ends, strict=True))
        )
        return SourceText(self.entry.id, tuple(pages), paged=True)

    def _page_at(self, at: int) -> int:
        return self.first + sum(start <= at for start in self.starts) - 1


def shelve(entry: Entry, text: str, first: int) -> Shelved:
    """A text in pages that end between two words."""
    starts = [0]
    while starts[-1] + PAGE < len(text):
        starts.append(text.index(" ", starts[-1] + PAGE) + 1 if " " in text[starts[-1] + PAGE :] else len(text))
    return Shelved(entry, text, tuple(dict.fromkeys(s for s in starts if s < len(text))), first)


@cache
def novel() -> Shelved:
    """The novel of the quotation corpus."""
    text = (DATA / "data/quotations/alice/novel_text.txt").read_text("utf-8")
    entry = Entry(
        "novel", "book", "Alice's Adventures in Wonderland", authors=(Name("Carroll", "Lewis"),), issued=Issued(1865)
    )
    return shelve(entry, text, 1)


@cache
def speeches() -> tuple[tuple[tuple[int, int], ...], ...]:
    """The places of each speech of the novel, in its unbroken parts."""
    with (DATA / "data/quotations/alice/quotation_info.csv").open(encoding="utf-8", newline="") as file:
        return tuple(tuple((a, b) for a, b in ast.literal_eval(row["quoteByteSpans"])) for row in csv.DictReader(file))


@dataclass(frozen=True, slots=True)
class Article:
    """A published article: what it is, its paragraphs as a draft would have them, and what it cites."""

    name: str
    entry: Entry
    paragraphs: tuple[str, ...]
    references: tuple[str, ...]

    def shelved(self, first: int) -> Shelved:
        """The article as a source, its list of references included."""
        plain = "\n".join(p.replace("*", "") for p in (*self.paragraphs, "References", *self.references))
        return shelve(self.entry, plain, first)


@cache
def articles() -> tuple[Article, ...]:
    """The open-access articles."""
    return tuple(_article(path) for path in sorted((DATA / "data/articles-jats").glob("*.xml")))


def _article(path: Path) -> Article:
    from lxml import etree

    root: Any = etree.parse(path).getroot()
    meta = root.find(".//article-meta")
    name = path.stem.removeprefix("journal.")
    names = tuple(
        Name(one.findtext("surname", ""), one.findtext("given-names", "") or "")
        for one in meta.iterfind("contrib-group/contrib[@contrib-type='author']/name")
        if one.findtext("surname")
    )
    title = " ".join("".join(meta.find(".//article-title").itertext()).split())
    entry = Entry(
        name,
        "article-journal",
        title,
        authors=names,
        issued=Issued(int(meta.findtext("pub-date/year") or 0) or None),
        doi=meta.findtext("article-id[@pub-id-type='doi']") or "",
    )
    paragraphs = tuple(filter(None, (written(p) for p in root.iterfind(".//body//p"))))
    references = tuple(filter(None, (_reference(one) for one in root.iterfind(".//ref-list//ref"))))
    return Article(name, entry, paragraphs, references)


def _reference(ref: Any) -> str:
    """One entry of a list of references, as a printed list has it."""
    names = [" ".join(filter(None, (n.findtext("surname"), n.findtext("given-names")))) for n in ref.iter("name")]
    year = ref.findtext(".//year") or ""
    title = ref.find(".//article-title")
    rest = [ref.findtext(f".//{part}") or "" for part in ("source", "volume", "fpage")]
    words = "" if title is None else " ".join("".join(title.itertext()).split())
    return " ".join(filter(None, (", ".join(names), f"({year})" if year else "", words, *rest)))


def written(element: Any) -> str:
    """A paragraph of XML on one line, its italics between asterisks and a sign for each formula."""
    return " ".join("".join(_written(element)).split()).replace("* *", " ")


def _written(element: Any) -> Iterator[str]:
    tag = element.tag.rpartition("}")[2] if isinstance(element.tag, str) else ""
    if tag in FORMULAS:
        yield "∘"
    elif tag:
        mark = "*" if tag in ITALIC and "".join(element.itertext()).strip() else ""
        yield mark
        yield element.text or ""
        for child in element:
            yield from _written(child)
            yield child.tail or ""
        yield mark


@dataclass(frozen=True, slots=True)
class Found:
    """Prose as it was found."""

    corpus: str
    name: str
    paragraphs: tuple[str, ...]


def prose() -> Iterator[Found]:
    """All the prose that people wrote for others to read."""
    for path in sorted((DATA / "data/sentences").glob("*.conllu")):
        yield Found("GUM", path.stem.removeprefix("GUM_"), tuple(_annotated(path)))
    for article in articles():
        yield Found("articles", article.name, article.paragraphs)
    yield from student_prose()


def student_prose() -> Iterator[Found]:
    """The prose of students and learners."""
    from lxml import etree

    for path in sorted((DATA / "data/student-drafts").glob("draft*/*.txt")):
        yield Found("student drafts", path.stem, tuple(path.read_text("utf-8", errors="replace").split("\n")))
    for path in sorted((DATA / "data/student-papers").glob("*.cnxml")):
        yield Found("student papers", path.stem, tuple(written(p) for p in etree.parse(path).iter("{*}para")))
    for path in sorted((DATA / "data/near-copies").glob("g*.txt")):
        yield Found("short answers", path.stem, tuple(path.read_text("utf-8", errors="replace").split("\n\n")))
    learners = (DATA / "data/learner-sentences/dev/dev.src").read_text("utf-8").splitlines()
    yield Found("learners' sentences", "dev", tuple(learners))


def _annotated(path: Path) -> Iterator[str]:
    """The paragraphs of running text of a file of Universal Dependencies."""
    block: list[str] = []
    running = False
    for line in (*path.read_text("utf-8").splitlines(), "# newpar_block"):
        if line.startswith("# newpar_block"):
            if block:
                yield " ".join(block)
            block, running = [], " p " in f"{line.partition('=')[2]} "
        elif line.startswith("# text = ") and running:
            block.append(line.removeprefix("# text = ").strip())
