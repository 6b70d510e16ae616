"""Points of omission that are set close in one place and with blanks in another."""

from __future__ import annotations

import re

from fairhand.manuscript.parts import Manuscript
from fairhand.model.span import Span

_SPACED = re.compile(r"(?<!\.)(?<!\. )\. \. \.(?! ?\.\S)")
_CLOSE = re.compile(r"(?<!\.)\.{3,4}(?!\.)|…")


def find_mixed_points(manuscript: Manuscript) -> tuple[Span, int, int] | None:
    """The first of the fewer kind, with how many are close and how many spaced; None where all are of one kind.

    Those of quotations are held against each other, and those of the writer's own sentences against each other.

    **Source**: MLA 9, 6.58; APA 7, 8.31; Chicago 17, 13.50 (from memory): three points with blanks, or the one
    sign, the same throughout.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> find_mixed_points(read_manuscript("He said “a . . . b”, “c . . . d” and “e ... f”."))[1:]
    (1, 2)
    """
    text = manuscript.text
    quoted = [quotation.span for quotation in manuscript.quotations]
    prose = [p.span for p in manuscript.paragraphs]

    def places(pattern: re.Pattern[str], *, within: bool) -> list[Span]:
        spans = [Span(*hit.span()) for one in prose for hit in pattern.finditer(text, one.start, one.end)]
        return [span for span in spans if any(each.contains(span) for each in quoted) == within]

    for within in (True, False):
        close, spaced = places(_CLOSE, within=within), places(_SPACED, within=within)
        if close and spaced:
            return min(close if len(close) <= len(spaced) else spaced), len(close), len(spaced)
    return None
