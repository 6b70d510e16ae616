"""Where in a source its references are listed: the lines after a heading that says so, to the next heading or the end.

**Source**: common practice of printing; the headings are those that the style manuals and journals use.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from fairhand.leads.page_edges import drop_edges
from fairhand.model.source import Page

_NUMBER = r"(?:(?:\d{1,2}(?:\.\d{1,2})*|[IVX]{1,5}|[A-Z])[.:)]?\s+)?"
_OPENS = re.compile(
    rf"\W{{0,3}}{_NUMBER}(?:(?:(?:list of|selected|select|cited|key|general|further|suggested|additional|main|"
    r"primary|secondary)\s+)?(?:references?(?:\s+(?:and|&)\s+(?:notes|further reading))?|bibliography|readings?|"
    r"literature(?:\s+cited)?|sources(?:\s+cited)?|works\s+(?:cited|consulted))|(?:reference|works cited)\s+list|"
    r"notes\s+and\s+references|literature\s+references|references\s+cited|works\s+cited|literaturverzeichnis|"
    r"bibliographie|références|bibliografía|referencias)\W{0,3}",
    re.IGNORECASE,
)
_NOTES = re.compile(rf"\W{{0,3}}{_NUMBER}(?:end\s?notes|notes|footnotes|citations)\W{{0,3}}", re.IGNORECASE)
_CLOSES = re.compile(
    rf"\W{{0,3}}{_NUMBER}(?:appendi(?:x|ces)\b.{{0,60}}|acknowledge?ments?|author contributions?|"
    r"authors?’? information|"
    r"(?:electronic\s+)?supp(?:orting|lementa(?:ry|l))\s+(?:information|material|data|files?)\b.{0,40}|"
    r"(?:figure|table)\s+legends?|figures?|tables|about the authors?|index|competing interests|conflicts? of interest|"
    r"funding|copyright|external links|see also|biograph(?:y|ies)|contributors?|notes on contributors|"
    r"data availability|(?:table|figure|fig\.)\s+\d{1,2}\b.{0,80}|contents|abstract|introduction|notes|"
    r"received\b.{0,60}|correspondence\b.{0,60})\W{0,3}",
    re.IGNORECASE,
)
_YEAR = re.compile(r"(?<!\d)(?:1[5-9]|20)\d\d[a-z]?(?!\d)|\b(?:n\.d\.|in press|forthcoming)", re.IGNORECASE)
_LONGEST_HEADING = 60
_LINES_LOOKED_AT = 24
"""Lines after a heading by which it is told whether references follow."""


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a source."""

    text: str
    page: str
    """The label of its page, or an empty string."""
    paragraph: bool = False
    """Whether a blank line stands before it."""


@dataclass(frozen=True, slots=True)
class ListFound:
    """A list of references as it stands in a source."""

    heading: str
    """Its heading, as printed."""
    lines: tuple[Line, ...]


def find_lists(pages: Sequence[Page]) -> tuple[ListFound, ...]:
    r"""Every list of references in a source, in order; of two that follow the same heading style each is one.

    >>> page = Page("9", "The quay was sold.\nReferences\nLind, A. (2001). Salt. Hull: Marsh.\nOkafor, B. (1999). Ebb.")
    >>> [(one.heading, len(one.lines)) for one in find_lists([page])]
    [('References', 2)]
    """
    lines = _lines_of(pages)
    opened = [n for n, line in enumerate(lines) if _is_heading(line, _OPENS)]
    found = [one for n in opened if (one := _list_from(lines, n)) is not None]
    if not found:
        noted = [n for n, line in enumerate(lines) if _is_heading(line, _NOTES)]
        found = [one for n in noted if (one := _list_from(lines, n)) is not None]
    return tuple(found)


def _lines_of(pages: Sequence[Page]) -> list[Line]:
    lines = []
    for page, texts in zip(pages, drop_edges(pages, _heads_or_ends), strict=True):
        blank = False
        for text in texts:
            words = " ".join(text.split())
            if words:
                lines.append(Line(words, page.label or "", blank))
            blank = not words
    return lines


def _heads_or_ends(text: str) -> bool:
    return _closes(Line(" ".join(text.split()), ""))


def _is_heading(line: Line, pattern: re.Pattern[str]) -> bool:
    return len(line.text) <= _LONGEST_HEADING and pattern.fullmatch(line.text) is not None


def _list_from(lines: Sequence[Line], heading: int) -> ListFound | None:
    """The list after a heading, or None where what follows it is none, as in a table of contents."""
    end = heading + 1
    while end < len(lines) and not _closes(lines[end]):
        end += 1
    following = lines[heading + 1 : end]
    if not following or not _looks_like_references(following[:_LINES_LOOKED_AT]):
        return None
    return ListFound(lines[heading].text, tuple(following))


def _closes(line: Line) -> bool:
    return _is_heading(line, _CLOSES) or _is_heading(line, _OPENS) or _is_heading(line, _NOTES)


def _looks_like_references(lines: Sequence[Line]) -> bool:
    """Whether years stand in them as often as references have them, about one in 350 signs and never none."""
    signs = sum(len(line.text) for line in lines)
    years = sum(len(_YEAR.findall(line.text)) for line in lines)
    return years > 0 and signs / years < 350
