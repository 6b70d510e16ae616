"""Which proof-correction mark stands for what each check finds, and where exactly it goes.

**Source**: BS 5261-2 and ISO 5776 (forms from memory): substitute, a stroke through and the new matter; insert, a caret
and the new matter; delete, a stroke through and the looped *d*; words of doubtful accuracy, ringed, and a ringed
question mark; *stet*, dots under and a ringed tick. Which of them a check calls for is our own table.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Literal

from fairhand.manuscript.draft import quotation_offsets
from fairhand.manuscript.parts import Manuscript
from fairhand.model.finding import Finding, Wordings
from fairhand.model.span import Span

Sign = Literal["substitute", "insert", "delete", "query", "stet"]

SIGNS: Mapping[str, Sign] = {
    "quotation-differs": "substitute",
    "quotation-gap": "insert",
    "quotation-elsewhere": "query",
    "citation-year": "substitute",
    "citation-page-missing": "insert",
    "aside-left": "delete",
    "placeholder-left": "substitute",
    "plural-missing": "substitute",
    "agreement": "substitute",
    "verb-form": "substitute",
    "article": "substitute",
    "comma-splice": "substitute",
    "semicolon": "delete",
    "comma-nonrestrictive": "insert",
    "comma-unneeded": "delete",
    "fused-sentence": "insert",
    "comma-opening": "insert",
    "pronoun-case": "substitute",
    "pronoun-agreement": "substitute",
    "paired-words": "substitute",
    "doubled-word": "delete",
    "mark-spacing": "delete",
    "dash": "delete",
    "citation-stop": "delete",
    "citation-names": "delete",
    "quotation-mechanics": "delete",
    "heading-form": "delete",
}
"""The mark of each check; of any other, the query's ring."""

_WORD = re.compile(r"\S+")
_EDGE = re.compile(r"\A\W+|\W+\Z")


@dataclass(frozen=True, slots=True)
class Place:
    """One place of the draft with a mark on it."""

    span: Span
    """What is marked; empty for a caret."""
    sign: Sign
    words: str = ""
    """The new matter."""


def place_marks(finding: Finding, manuscript: Manuscript, *, stet: bool = False) -> tuple[Place, ...]:
    """The places of a finding in the draft, in order, each with its mark; none where it is about the whole paper.

    Args:
        finding: What was found.
        manuscript: The draft that it was found in.
        stet: Whether it is let stand.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> found = Finding("doubled-word", "copy-edit", "should", Span(3, 10), "", "")
    >>> place_marks(found, read_manuscript("We did did it."))
    (Place(span=Span(start=3, end=10), sign='delete', words=''),)
    """
    if finding.span is None:
        return ()
    if stet:
        return (Place(finding.span, "stet"),)
    sign = SIGNS.get(finding.check, "query")
    places = [Place(one.span, _sign_for(one.span, one.words, sign), one.words) for one in finding.instead]
    if not places and finding.wordings is not None:
        places = list(_differing(finding.span, finding.wordings, manuscript))
    if finding.weight == "query":
        ringed = (place.span if len(place.span) else finding.span for place in places)  # a ring stands round words
        places = [Place(span, "query") for span in dict.fromkeys(ringed)]
    if places:
        return tuple(places)
    if finding.weight == "query":
        return (Place(finding.span, "query"),)
    end = Span(finding.span.end, finding.span.end)
    return (Place(end if sign == "insert" else finding.span, sign),)


def _sign_for(span: Span, words: str, sign: Sign) -> Sign:
    """The mark at a place for which a check says what belongs there."""
    if words:
        return "substitute" if len(span) else "insert"
    return sign if len(span) or sign == "insert" else "query"


def _differing(span: Span, wordings: Wordings, manuscript: Manuscript) -> Iterator[Place]:
    """The words of a quotation that differ from its source's, as the fewest changes that restore them."""
    quotation = next((q for q in manuscript.quotations if span.contains(q.span) and q.text == wordings.draft), None)
    if quotation is None:
        return
    at = quotation_offsets(manuscript, quotation)
    mine, theirs = _words(wordings.draft), _words(wordings.source)
    matcher = SequenceMatcher(None, _keys(wordings.draft, mine), _keys(wordings.source, theirs), autojunk=False)
    for kind, i, j, m, n in matcher.get_opcodes():
        here = Span(mine[i].start, mine[j - 1].end) if i < j else None
        there = Span(theirs[m].start, theirs[n - 1].end) if m < n else None
        marked = _meets(here, wordings.draft_differs) or _meets(there, wordings.source_differs)
        if kind == "equal" or not marked:
            continue
        new = there.of(wordings.source) if there else ""
        if here is None:
            place = at[mine[i - 1].end - 1] + 1 if i else at[0]
            yield Place(Span(place, place), "insert", new)
            continue
        struck = _without_edges(wordings.draft, here)
        place_span = Span(at[struck.start], at[struck.end - 1] + 1)
        yield Place(place_span, "substitute" if new else "delete", _EDGE.sub("", new))


def _words(text: str) -> list[Span]:
    return [Span(*found.span()) for found in _WORD.finditer(text)]


def _keys(text: str, words: Sequence[Span]) -> list[str]:
    """The words as they are compared: without the points around them, and without capitals."""
    return [_EDGE.sub("", span.of(text)).casefold() or span.of(text) for span in words]


def _meets(span: Span | None, differs: Sequence[Span]) -> bool:
    return span is not None and any(span.overlaps(other) for other in differs)


def _without_edges(text: str, span: Span) -> Span:
    """The words without the points around them."""
    words = span.of(text)
    start = len(words) - len(words.lstrip("“”\"'‘’([.,;:"))
    end = len(words.rstrip("“”\"'‘’)].,;:"))
    return Span(span.start + start, span.start + end) if start < end else span
