"""Brackets and quotation marks of which one of the two is missing, and stops outside a closing mark."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.manuscript.bare import read_bare
from fairhand.manuscript.parts import Manuscript, Quotation
from fairhand.model.span import Span

_BRACKETS = re.compile(r"[()]")
_LISTED = re.compile(r"(?:(?<![\w.])|(?<=\()|\A)(?:\d{1,3}|[A-Za-z]{1,2}|[ivx]{1,5})\)")
_INTERVAL = re.compile(r"\([^\s()\[\],]{1,12}, ?[^\s()\[\],]{1,12}\]|\[[^\s()\[\],]{1,12}, ?[^\s()\[\],]{1,12}\)")
_FACE = re.compile(r"[:;=]-?[()]")
_DOUBLE = frozenset('"“”')
_ENDS = frozenset(".,?!…—–")


def find_unpaired_brackets(manuscript: Manuscript) -> Iterator[Span]:
    """The round brackets that nothing closes in their paragraph, or that nothing opened; *1)* and *(0, 1]* let be.

    Two in one paragraph are let be as well: there the brackets mean something else.

    **Source**: common practice.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> [s.start for s in find_unpaired_brackets(read_manuscript("It (the tide rose. So (it is) said."))]
    [3]
    """
    quoted = [quotation.span for quotation in manuscript.quotations]
    for paragraph in manuscript.paragraphs:
        if paragraph.in_quote or paragraph.in_table or len(paragraph.span) > _LONGEST:
            continue
        start = paragraph.span.start
        bare = read_bare(paragraph.span.of(manuscript.text))
        lone = [Span(bare.starts[at], bare.ends[at]).shifted(start) for at in _lone(bare.scan)]
        if len(lone) == 1 and not any(span.overlaps(lone[0]) for span in quoted):
            yield lone[0]


def _lone(scan: str) -> list[int]:
    """The places of brackets that are no pair, most of them none."""
    scan = _INTERVAL.sub(lambda found: " " * len(found[0]), scan)
    skipped = {found.end() - 1 for pattern in (_LISTED, _FACE) for found in pattern.finditer(scan)}
    opened: list[int] = []
    lone: list[int] = []
    for found in _BRACKETS.finditer(scan):
        if found[0] == "(":
            opened.append(found.start())
        elif opened:
            opened.pop()
        elif found.start() not in skipped:
            lone.append(found.start())
    return lone + [at for at in opened if at not in skipped]


_LONGEST = 20_000
"""A paragraph of more signs is no prose."""


def find_open_quotations(manuscript: Manuscript) -> Iterator[Span]:
    r"""The opening double marks that nothing closes in their paragraph, unless the next one opens it again.

    **Source**: common practice; a quotation that goes on is opened again in each paragraph (Chicago 17, 13.32, from
    memory).

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> [s.start for s in find_open_quotations(read_manuscript("She said “it rained. They left.\n\nHe said “no.”"))]
    [9]
    """
    starts = {p.index: manuscript.text[p.span.start : p.span.start + 1] for p in manuscript.paragraphs}
    for quotation in manuscript.quotations:
        mark = manuscript.text[quotation.span.start]
        if quotation.closed or quotation.kind == "block" or mark not in _DOUBLE or quotation.within is not None:
            continue
        if manuscript.paragraphs[quotation.paragraph].in_quote or starts.get(quotation.paragraph + 1) in _DOUBLE:
            continue
        yield Span(quotation.span.start, quotation.span.start + 1)


def find_stops_outside(manuscript: Manuscript) -> Iterator[tuple[Quotation, Span]]:
    r"""The quotations in double marks with a full stop or comma after the closing mark, and the place of both.

    What is quoted as a sign (a letter, an address, a command) is let be, since a stop within would be read as its part.

    **Source**: MLA 9, 6.53; APA 7, 6.8; Chicago 17, 6.9 (from memory): American usage sets both within.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("It was “a low tide”, and “dry”.")
    >>> [place.of(draft.text) for _, place in find_stops_outside(draft)]
    ['”,', '”.']
    """
    text = manuscript.text
    for quotation in manuscript.quotations:
        if quotation.kind == "block" or not quotation.closed or manuscript.paragraphs[quotation.paragraph].in_quote:
            continue
        end = quotation.span.end
        if (
            text[end - 1 : end] not in _DOUBLE
            or text[end : end + 1] not in (".", ",")
            or text[end + 1 : end + 2] == "."
        ):
            continue
        said = quotation.text.rstrip("*_")
        if len(said) > 1 and said[-1] not in _ENDS and not _is_sign(said) and _goes_on(text[end + 1 : end + 2]):
            yield quotation, Span(end - 1, end + 1)


def _is_sign(said: str) -> bool:
    """Whether the words are no words: they hold signs that no sentence has, or no letter."""
    return re.search(r"[/\\@_{}<>=|~^#]", said) is not None or not any(sign.isalpha() for sign in said)


def _goes_on(after: str) -> bool:
    return not after or after.isspace() or after in "*_)[—"
