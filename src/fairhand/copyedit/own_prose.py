"""The writer's own words: what is quoted, cited, set in italics, or code made opaque, every place kept."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from fairhand.manuscript.bare import OPAQUE, read_bare
from fairhand.manuscript.parts import Manuscript
from fairhand.manuscript.sections import named_sections
from fairhand.model.span import Span

_ITALIC = re.compile(r"(?<![\w*_])([*_]{1,3})(?=[^\s*_])(.{1,300}?)(?<=[^\s*_])\1(?![\w*_])", re.DOTALL)
"""Titles, words of other languages, species and words as words: let be."""


@dataclass(frozen=True, slots=True)
class OwnParagraph:
    """A paragraph of the draft as far as it is the writer's own."""

    text: str
    """As long as the paragraph; ``OPAQUE`` for each character that is not the writer's own prose."""
    start: int
    """Where it begins in the draft."""
    sentences: tuple[Span, ...]
    """Its sentences, by interval of ``text``."""


def own_prose(manuscript: Manuscript, cited: Sequence[Span]) -> tuple[OwnParagraph, ...]:
    r"""Each paragraph outside block quotations, tables and the list of works.

    Args:
        manuscript: The draft, taken apart.
        cited: The places of its in-text citations.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> own = own_prose(read_manuscript("He said “wots up” in *Moby Dick*."), ())
    >>> own[0].text.replace("\ufffc", "-")
    'He said --------- in -----------.'
    """
    lists = [section.span for kind, section in named_sections(manuscript) if kind == "references"]
    hidden = sorted([quotation.span for quotation in manuscript.quotations] + [*cited, *manuscript.left_matter])
    out = []
    for paragraph in manuscript.paragraphs:
        span = paragraph.span
        if paragraph.in_quote or paragraph.in_table or any(each.contains(span) for each in lists):
            continue
        within = tuple(each.shifted(-span.start) for each in hidden if each.overlaps(span))
        text = hide_spans(hide_markup(span.of(manuscript.text)), within)
        out.append(OwnParagraph(text, span.start, tuple(each.shifted(-span.start) for each in paragraph.sentences)))
    return tuple(out)


def hide_markup(text: str) -> str:
    """``text`` with code, addresses, labels of notes and italics opaque.

    >>> hide_markup("see `cp` here").count("\ufffc")
    4
    """
    bare = read_bare(text)
    kept = list(OPAQUE * len(text))
    for sign, start in zip(bare.scan, bare.starts, strict=True):
        if sign != OPAQUE and start < len(text):
            kept[start] = text[start]
    return hide_spans("".join(kept), [Span(*found.span()) for found in _ITALIC.finditer(text)])


def hide_spans(text: str, spans: Sequence[Span]) -> str:
    """``text`` with some intervals opaque."""
    for span in spans:
        start, end = max(0, span.start), min(span.end, len(text))
        text = text[:start] + OPAQUE * (end - start) + text[end:]
    return text
