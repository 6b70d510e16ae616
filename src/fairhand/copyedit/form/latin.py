"""Latin abbreviations in the running text, which APA keeps for brackets."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.manuscript.parts import Manuscript
from fairhand.model.span import Span

WRITTEN_OUT = {"e.g.": "for example", "i.e.": "that is", "etc.": "and so forth", "cf.": "compare", "viz.": "namely"}
"""Each with what it stands for."""
_LATIN = re.compile(r"(?<![\w.])(?P<one>e\. ?g\.|i\. ?e\.|etc\.|cf\.|viz\.)", re.IGNORECASE)


def find_latin(manuscript: Manuscript, paragraphs: Sequence[OwnParagraph]) -> Iterator[tuple[Span, str]]:
    """The abbreviations outside brackets, notes and captions, each in its usual spelling; *et al.* is let be.

    **Source**: APA 7, 6.29 (from memory): in brackets the abbreviation, in the sentence the words.

    >>> from fairhand.copyedit.own_prose import own_prose
    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("Metals, e.g. copper, bend (e.g., when cold).")
    >>> [short for _, short in find_latin(draft, own_prose(draft, ()))]
    ['e.g.']
    """
    held = [bracket.span for bracket in manuscript.brackets]
    held += [p.span for p in manuscript.paragraphs if p.in_note or p.in_caption]
    for own in paragraphs:
        for found in _LATIN.finditer(own.text):
            span = Span(*found.span()).shifted(own.start)
            if found["one"].isupper() or _is_open(own, found.start()):
                continue
            if not any(each.overlaps(span) for each in held):
                yield span, found["one"].lower().replace(" ", "")


def _is_open(own: OwnParagraph, at: int) -> bool:
    """Whether a bracket that was opened in the sentence is still open."""
    start = max((sentence.start for sentence in own.sentences if sentence.start <= at), default=0)
    return own.text.count("(", start, at) > own.text.count(")", start, at)
