"""The paper as it is read aloud: sentence by sentence, with citations, notes and headings read or left out."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.language.words import words
from fairhand.manuscript.bare import read_bare
from fairhand.manuscript.parts import Manuscript
from fairhand.model.span import Span

PACE = 183
"""Words a minute, read aloud. **Source**: Brysbaert 2019, Journal of Memory and Language 109."""
LeftOut = Literal["citations", "notes", "headings"]
"""What may be left out."""
LEFT_OUT: tuple[LeftOut, ...] = ("citations", "notes")
"""What is left out unless the reader wants it."""
_QUOTED = re.compile(r"\n[ \t]*(?:>[ \t]?)+")
_BEFORE_POINT = re.compile(r"\s+(?=[.,;:!?)\]’”])")


@dataclass(frozen=True, slots=True)
class Spoken:
    """One sentence, or a heading."""

    kind: Literal["text", "heading", "note"]
    span: Span
    """Where it stands in the draft."""
    says: str
    """As it is read with its citations."""
    bare: str
    """As it is read without them."""
    opens: bool = False
    """Whether a paragraph begins with it."""


def list_spoken(manuscript: Manuscript, citations: Sequence[Span] = ()) -> tuple[Spoken, ...]:
    r"""Everything that is read, in order; asides, matter to come, tables and code are not, and notes come last.

    Args:
        manuscript: The draft.
        citations: Where its citations in brackets stand.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> text = "# Tides\n\nIt *ebbs* (Orr 2). It flows."
    >>> [(one.kind, one.bare) for one in list_spoken(read_manuscript(text), [Span(19, 26)])]
    [('heading', 'Tides'), ('text', 'It ebbs.'), ('text', 'It flows.')]
    """
    text, gone = manuscript.text, manuscript.left_matter
    out = [
        Spoken("heading", section.heading.span, section.title, section.title, opens=True)
        for section in manuscript.sections
        if section.heading and section.title.strip()
    ]
    for paragraph in manuscript.paragraphs:
        if paragraph.in_table:
            continue
        opens = True
        for span in paragraph.sentences:
            says, bare = _read(text, span, gone), _read(text, span, (*gone, *citations))
            if any(letter.isalnum() for letter in says):
                out.append(Spoken("note" if paragraph.in_note else "text", span, says, bare, opens))
                opens = False
    return tuple(sorted(out, key=lambda one: (one.kind == "note", one.span)))


def count_spoken(spoken: Sequence[Spoken], left_out: Collection[LeftOut] = LEFT_OUT) -> int:
    """How many words are read.

    >>> count_spoken([Spoken("text", Span(0, 9), "It ebbs (Orr 2).", "It ebbs.")])
    2
    """
    return sum(
        sum(1 for _ in words(one.bare if "citations" in left_out else one.says))
        for one in spoken
        if f"{one.kind}s" not in left_out
    )


def seconds_aloud(many: int, pace: int = PACE) -> int:
    """How long so many words take, in seconds.

    >>> seconds_aloud(183), seconds_aloud(900)
    (60, 295)
    """
    return round(many * 60 / max(1, pace))


def _read(text: str, span: Span, gone: Sequence[Span]) -> str:
    """What a stretch of the draft says without some of it."""
    pieces, at = [], span.start
    for hole in sorted(gone):
        if hole.end <= at or hole.start >= span.end:
            continue
        pieces.append(text[at : max(at, hole.start)])
        at = max(at, hole.end)
    pieces.append(text[at : span.end])
    said = read_bare(_QUOTED.sub("\n", "".join(pieces))).text
    return _BEFORE_POINT.sub("", " ".join(said.split()))
