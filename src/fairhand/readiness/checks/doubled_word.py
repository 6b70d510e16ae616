"""``doubled-word``: the same word twice running."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.words.doubled_word import find_doubled_words
from fairhand.model.finding import Instead
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each doubled word outside quotations."""
    manuscript = analysis.manuscript
    quoted = [q.span for q in manuscript.quotations]
    for paragraph in manuscript.paragraphs:
        if paragraph.in_quote:
            continue
        for span in find_doubled_words(paragraph.span.of(manuscript.text)):
            place = span.shifted(paragraph.span.start)
            if not any(q.overlaps(place) for q in quoted):
                word = place.of(manuscript.text).split()[0]
                second = Span(place.end - len(word), place.end)
                yield Remark(place, f"“{word}” stands twice.", instead=(Instead(second),))
