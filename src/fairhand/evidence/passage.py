"""A place in a source's text that shows something, as it is told."""

from __future__ import annotations

from dataclasses import dataclass

from fairhand.model.source import SourceText
from fairhand.model.span import Span

AROUND = 60
"""Characters that are told on either side of what shows it."""


@dataclass(frozen=True, slots=True)
class Passage:
    """Some words of a source, with their page."""

    words: str
    page: str = ""
    """Its label, or empty where the source has no pages."""


def cut_passage(text: SourceText, page: int, span: Span, around: int = AROUND) -> Passage:
    """What stands at a place of a page, with a few words on either side, on one line.

    >>> from fairhand.model.source import Page
    >>> source = SourceText("lind", (Page("7", "Silt settles at slack water, and the ebb scours."),), paged=True)
    >>> cut_passage(source, 0, Span(13, 27), around=3)
    Passage(words='… settles at slack water, and …', page='7')
    """
    whole = text.pages[page].text
    first = whole.rfind(" ", 0, max(0, span.start - around)) + 1 if span.start > around else 0
    last = whole.find(" ", min(len(whole), span.end + around))
    words = " ".join(whole[first : last if last > 0 else len(whole)].split())
    return Passage(f"{'… ' if first else ''}{words}{' …' if last > 0 else ''}", _label(text, page))


def show_whole(text: SourceText, page: int, span: Span, most: int = 420) -> Passage:
    """What stands at a place of a page and nothing else, on one line; its end is left out where it is long."""
    words = " ".join(span.of(text.pages[page].text).split())
    return Passage(words if len(words) <= most else f"{words[:most].rsplit(' ', 1)[0]} …", _label(text, page))


def _label(text: SourceText, page: int) -> str:
    return (text.pages[page].label or "") if text.paged else ""
