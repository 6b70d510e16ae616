"""A draft and its list of sources, ready to be looked up by place."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import replace

from fairhand.citing.known import Known
from fairhand.citing.mention import Mention
from fairhand.citing.naming import Naming
from fairhand.citing.recognise import default_work, read_paragraphs, short_forms
from fairhand.citing.sighting import sentence_around
from fairhand.manuscript.parts import Manuscript
from fairhand.model.span import Span

LOOK_BACK = 60
"""How many names or citations are looked back over: no writer counts on a reader to remember more."""


class Lookup:
    """What each paragraph of a draft names, with places in the draft."""

    def __init__(self, manuscript: Manuscript, known: Known) -> None:
        self.manuscript = manuscript
        self.known = known
        self.prose = read_paragraphs(manuscript, known)
        self.default = default_work(manuscript, known)
        self.short: Mapping[str, str] = short_forms(manuscript.text)

    def namings(self, paragraph: int, start: int, end: int) -> list[Naming]:
        """The last things that the paragraph names wholly between two places, in order."""
        by = self.manuscript.paragraphs[paragraph].span.start
        namings = self.prose[paragraph].namings
        first = bisect_left(namings, start - by, key=lambda naming: naming.span.start)
        last = bisect_right(namings, end - by, key=lambda naming: naming.span.end)
        found = namings[max(first, last - LOOK_BACK) : last]
        return [replace(naming, span=naming.span.shifted(by)) for naming in found]

    def sentence(self, mention: Mention) -> Span:
        """The sentence that a mention stands in."""
        return sentence_around(self.manuscript.paragraphs[mention.paragraph].sentences, mention.span)


def ids_of(known: Known, works: Sequence[int]) -> tuple[str, ...]:
    """The entry ids of works given by their indices."""
    return tuple(known.works[work].entry.id for work in works)
