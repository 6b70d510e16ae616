"""A quotation taken apart: its words, and the marks by which the writer says that something was changed."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from fairhand.fidelity.prepared import LETTER, WORD, fold
from fairhand.model.span import Span

_PIECE = re.compile(
    r"(?P<ellipsis>\[\s{0,3}(?:…|\.(?:\s{0,2}\.){2,3})\s{0,3}\]|…|\.(?:\s{0,2}\.){2,3})"
    rf"|(?P<part>(?:{LETTER}|['’](?={LETTER})|-(?={LETTER}))*+"
    rf"(?:(?<={LETTER})\[[^\[\]\s]{{0,30}}\]|\[[^\[\]\s]{{0,30}}\](?=['’-]?{LETTER}))"
    rf"(?:{LETTER}|['’-](?={LETTER})|\[[^\[\]\s]{{0,30}}\])*+)"
    r"|(?P<bracket>\[[^\[\]]{0,400}\])"
    r"|(?P<sic>\(sic\.?\))"
    rf"|(?P<word>{WORD.pattern})"
)
_EDITORIAL = re.compile(
    r"\s*(?:sic\b|(?:\w+\s+)?(?:emphasis|italics?|underlining|translation)\b|(?:my|our)\s+(?:emphasis|italics|translation)\b"
    r"|NB\b|n\.\s?b\.|TK)",
    re.IGNORECASE,
)
_LETTERS_IN_BRACKETS = re.compile(r"\[[^\]]*\]")


@dataclass(frozen=True, slots=True)
class Token:
    """One word of a quotation."""

    word: str
    """As it is compared; of a word with letters in brackets, what stands outside them; empty where letters were cut."""
    span: Span
    """Its place in the quotation's text."""
    kind: Literal["plain", "bracketed", "part"] = "plain"
    """``bracketed``: the writer's own, in brackets; ``part``: the source's word with letters changed in brackets."""
    tail: str = ""
    """Of a ``part``, what stands after the brackets."""

    def matches(self, word: str) -> bool:
        """Whether this is ``word``, a folded word of the source.

        A word with bracketed letters matches where all that stands outside the brackets agrees.
        """
        if self.kind == "plain":
            return self.word == word
        if self.kind == "bracketed":
            return False
        return word.startswith(self.word) and word.endswith(self.tail) and len(word) >= len(self.word) + len(self.tail)


@dataclass(frozen=True, slots=True)
class Segment:
    """The words between two ellipses."""

    tokens: tuple[Token, ...]
    ellipsis: Span | None = None
    """The ellipsis before it."""

    @property
    def plain(self) -> tuple[str, ...]:
        """Its words that claim to be the source's own."""
        return tuple(token.word for token in self.tokens if token.kind == "plain")


@dataclass(frozen=True, slots=True)
class Quoted:
    """The words of a quotation."""

    text: str
    segments: tuple[Segment, ...]
    """The parts between its ellipses, each with a word of the source's own."""
    marked: bool
    """Whether an ellipsis or bracket stands in it."""

    @property
    def length(self) -> int:
        """Number of words that claim to be the source's own."""
        return sum(len(segment.plain) for segment in self.segments)


@lru_cache(maxsize=4096)
def take_apart(text: str) -> Quoted:
    """The words of a quotation, parted at its ellipses; remarks such as ``[sic]`` are left out.

    >>> [segment.plain for segment in take_apart("[t]he quay . . . was [soon] sold [sic]").segments]
    [('quay',), ('was', 'sold')]
    """
    segments: list[Segment] = []
    tokens: list[Token] = []
    ellipsis: Span | None = None
    marked = False
    for piece in _PIECE.finditer(text):
        span = Span(*piece.span())
        marked = marked or piece.lastgroup != "word"
        if piece.lastgroup == "ellipsis":
            segments.append(Segment(tuple(tokens), ellipsis))
            tokens, ellipsis = [], span
        else:
            tokens.extend(_tokens_of(piece.lastgroup, piece.group(), span))
    segments.append(Segment(tuple(tokens), ellipsis))
    return Quoted(text, tuple(segment for segment in segments if segment.plain), marked)


def _tokens_of(kind: str | None, piece: str, span: Span) -> tuple[Token, ...]:
    """The tokens of one piece of the quotation."""
    if kind == "word":
        return (Token(fold(piece), span),)
    if kind == "part":
        outside = _LETTERS_IN_BRACKETS.split(fold(piece))
        return (Token(outside[0], span, "part", outside[-1]),)
    inner = piece[1:-1]
    if kind == "sic" or _EDITORIAL.match(inner):
        return ()
    words = [Token(fold(w.group()), Span(*w.span()).shifted(span.start + 1), "bracketed") for w in WORD.finditer(inner)]
    return tuple(words) or (Token("", span, "bracketed"),)
