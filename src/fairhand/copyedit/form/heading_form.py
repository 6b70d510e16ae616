"""Headings that end in a stop, and headings of one level that are capitalised in two ways."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import groupby, pairwise

from fairhand.language.words import words
from fairhand.manuscript.parts import Manuscript
from fairhand.manuscript.sections import named_sections
from fairhand.model.span import Span

_STOP = re.compile(r"(?<=[^\W_][^\W_])[.:;,]\Z")
_SHORT = re.compile(r"\b(?:Co|Inc|Ltd|etc|Jr|Sr|St|vs|al|ca|No|Corp|Bros)\.\Z", re.IGNORECASE)
_LETTERED = re.compile(r"\.\w+\.\Z")
_LONG = 4
"""Letters of the words that title case capitalises whatever they are (APA 7, 6.17)."""
_MINOR = frozenset(
    "about above across after against along among around before behind below beneath beside between beyond down during"
    " except from into like near onto over past since than that through throughout till toward towards under until unto"
    " upon versus with within without when where while which whose what".split()
)
"""Long words that some manuals leave small."""


def find_stopped_headings(manuscript: Manuscript) -> Iterator[tuple[Span, Span, str]]:
    r"""Each heading on a line of its own that ends in a mark, with its place and the mark; abbreviations are let be.

    **Source**: common practice; Chicago 17, 2.18; APA 7, 2.27 (from memory): only a heading that is run in has a stop.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> [mark for *_, mark in find_stopped_headings(read_manuscript("# T\n\n## Rain.\n\nIt fell."))]
    ['.']
    """
    for section in manuscript.sections:
        title = section.title.rstrip()
        if section.heading is None or not _STOP.search(title) or _SHORT.search(title) or _LETTERED.search(title):
            continue
        content = section.heading.content
        at = manuscript.text.rfind(title[-1], content.start, content.end)
        if at >= 0 and not manuscript.text[at + 1 : content.end].strip("*_ \t"):
            yield content, Span(at, at + 1), title[-1]


def find_mixed_capitals(manuscript: Manuscript) -> Iterator[tuple[Span, str, str]]:
    r"""The first heading of each level that is capitalised unlike most: it, its title, and the way that most have.

    A heading is in title case where a word after its first has a capital that it has not in the text, and in sentence
    case where a long word after its first has none; any other tells nothing, and neither does a name that the text has
    with the same capitals.

    **Source**: MLA 9, 1.5; APA 7, 2.27; Chicago 17, 2.18 and 8.158 (from memory): headings of one level are alike.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("# T\n\n## Heavy Rain\n\nThe rain fell.\n\n## The second winter\n\nIt came.")
    >>> [title for _, title, _ in find_mixed_capitals(draft)]
    ['The second winter']
    """
    named = {section.span for _, section in named_sections(manuscript)}
    headed = [
        section
        for section in manuscript.sections
        if section.heading and section.heading.content != manuscript.title and section.span not in named
    ]
    if not any(_plain(_later(section.title)) for section in headed):
        return
    body = "\n".join(paragraph.span.of(manuscript.text) for paragraph in manuscript.paragraphs)
    small = frozenset(word.text for word in words(body))
    telling = [(section, case) for section in headed if (case := _case(section.title, small, body))]
    telling.sort(key=lambda one: one[0].level)
    for _, group in groupby(telling, key=lambda one: one[0].level):
        alike = sorted(group, key=lambda one: one[0].span.start)
        titled = [section for section, case in alike if case == "title"]
        plain = [section for section, case in alike if case == "sentence"]
        if titled and plain:
            odd, most = (plain, "title case") if len(plain) <= len(titled) else (titled, "sentence case")
            heading = odd[0].heading
            if heading is not None:
                yield heading.content, odd[0].title, most


def _case(title: str, small: frozenset[str], body: str) -> str:
    """``title`` or ``sentence``, or nothing where it cannot be told."""
    later = _later(title)
    capital = [word for _, word in later if word[:1].isupper() and not word.isupper() and word.lower() in small]
    if capital and not _plain(later):
        pairs = (f"{before} {word}" for before, word in later if before[:1].isupper() and word[:1].isupper())
        return "" if any(pair in body for pair in pairs) else "title"
    return "sentence" if _plain(later) and not capital else ""


def _later(title: str) -> list[tuple[str, str]]:
    """The words of a heading after the first of each part, each with the word before it; brackets are left out."""
    said = re.sub(r"\([^()]*\)", "", title)
    parts = ([word.text for word in words(part)] for part in re.split(r"[:?!.—–]\s*", said))
    return [pair for part in parts for pair in pairwise(part)]


def _plain(later: list[tuple[str, str]]) -> bool:
    """Whether a long word after the first has no capital."""
    return any(word.islower() and len(word) >= _LONG and word not in _MINOR for _, word in later)
