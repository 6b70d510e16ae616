"""Marks that are set wrong in themselves: a blank before one, none after it, or one mark too many.

Blanks in a row and typewriter marks are not looked for: the fair copy sets them right by itself.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.manuscript.bare import OPAQUE
from fairhand.model.span import Span

Fault = Literal["blank before", "blank inside", "no blank after", "twice"]

_BLANK = r"[ \t\u00a0\u202f]"
_BEFORE = re.compile(rf"(?<=[\w)\]”\"’%*{OPAQUE}]){_BLANK}+([,;:!?]|\.(?!{_BLANK}?\.))(?=[\s\"”’)\]]|\Z)")
_INSIDE = re.compile(rf"(?<=[(\[])({_BLANK}+)(?=\w)|(?<=\w)({_BLANK}+)(?=[)\]])")
_AFTER = re.compile(
    r"(?<=[^\W\d_A-Z]{2})[,;](?=[^\W\d_]{2})"
    r"|(?<=[^\W\d_A-Z]{3})[.?!](?=[A-Z][a-z’']{1,20}[ ,])"
    r"|(?<=[^\W\d_A-Z]{3}[,;])(?=[“(])"
)
_TWICE = re.compile(rf"(?<!\])([,;:]){_BLANK}?\1(?=\s)|(?<![.…\s])(?<!{_BLANK}\.)\.\.(?=\s|\Z)|(?<!\]),\.(?=\s|\Z)")
_ADDRESS = re.compile(r"\S*(?:/|@|\.[a-z\d]{2,4}\b)\S*")


@dataclass(frozen=True, slots=True)
class Misset:
    """A mark that is set wrong."""

    fault: Fault
    span: Span
    """The mark with the letter or blank beside it, in the draft."""
    instead: Span
    """Where something is to go, or to come."""
    words: str = ""
    """What belongs there; empty where nothing does."""
    mark: str = ""


def find_misset(own: OwnParagraph) -> Iterator[Misset]:
    """The marks of a paragraph that are set wrong.

    Ratios (*1 : 2*), spaced points of omission and file names are let be.

    **Source**: common practice of typesetting in English; APA 7, 6.1; Chicago 17, 6.7–6.11 (from memory).

    >>> [found.fault for found in find_misset(OwnParagraph("It rained , and the bell,once lost, rang.", 0, ()))]
    ['blank before', 'no blank after']
    """
    text = own.text
    found = [*_blanks(text), *_missing(text), *_doubled(text)]
    for one in sorted(found, key=lambda each: each.span):
        yield Misset(one.fault, one.span.shifted(own.start), one.instead.shifted(own.start), one.words, one.mark)


def _blanks(text: str) -> Iterator[Misset]:
    for hit in _BEFORE.finditer(text):
        if hit[1] == ":" and text[hit.start() - 1].isdigit():
            continue
        blank = Span(hit.start(), hit.start(1))
        yield Misset("blank before", Span(_word_start(text, hit.start()), hit.end()), blank, mark=hit[1])
    for hit in _INSIDE.finditer(text):
        blank = Span(*hit.span())
        at = hit.start() - 1 if hit[1] else hit.end()
        if hit[2] and "(" not in text[: hit.start()] and "[" not in text[: hit.start()]:
            continue
        yield Misset("blank inside", Span(min(at, hit.start()), max(at + 1, hit.end())), blank, mark=text[at])


def _missing(text: str) -> Iterator[Misset]:
    for hit in _AFTER.finditer(text):
        start, end = _word_start(text, hit.start()), _word_end(text, hit.end())
        token = text[start:end]
        if _ADDRESS.fullmatch(token) or OPAQUE in token:
            continue
        mark = hit[0] or text[hit.start() - 1]
        yield Misset("no blank after", Span(start, end), Span(hit.end(), hit.end()), " ", mark)


def _doubled(text: str) -> Iterator[Misset]:
    for hit in _TWICE.finditer(text):
        second = Span(hit.start() + 1, hit.end())
        yield Misset("twice", Span(_word_start(text, hit.start()), hit.end()), second, mark=hit[0][0])


def _word_start(text: str, at: int) -> int:
    while at and not text[at - 1].isspace() and text[at - 1] not in '([“"':
        at -= 1
    return at


def _word_end(text: str, at: int) -> int:
    while at < len(text) and (text[at].isalnum() or text[at] in "’'-/.@"):
        at += 1
    return at
