"""A passage of a source as it is shown beside a quotation, and its places on the pages."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence

from fairhand.fidelity.passages import Passage
from fairhand.fidelity.prepared import PreparedSource
from fairhand.model.finding import Wordings
from fairhand.model.span import Span

_SPACES = re.compile(r"\s+")
_BROKEN = re.compile("[\u00ad\ufffe]\\s*|(?<=[-\u2010])\\s+")
_CLOSING = re.compile(r"[^\s\w]{0,3}")
_BETWEEN = " . . . "
"""What stands in the wording for words of the source between two parts."""


def places_of(prepared: PreparedSource, passages: Iterable[Passage]) -> tuple[tuple[int, Span], ...]:
    """Each page's index and the interval of its text that a passage takes up, in the source's order."""
    out = []
    for passage in sorted(passages, key=lambda p: p.start):
        for number in range(prepared.stretch_at(passage.start), prepared.stretch_at(passage.end - 1) + 1):
            ends = prepared.starts[number + 1] if number + 1 < len(prepared.starts) else len(prepared.words)
            low, high = max(passage.start, prepared.starts[number]), min(passage.end, ends)
            if low < high:
                page, begin = prepared.place_of(low)
                out.append((page, Span(begin.start, prepared.place_of(high - 1)[1].end)))
    return tuple(out)


def differing_wordings(
    draft: str,
    draft_differs: Sequence[Span],
    prepared: PreparedSource,
    passages: Sequence[Passage],
    words: Collection[int],
) -> Wordings:
    """Both wordings; ``words`` are the source's words that differ."""
    marked = set(words)
    text = ""
    differs: list[Span] = []
    for n, passage in enumerate(passages):
        if n:
            text += _BETWEEN
        for word in range(passage.start, passage.end):
            page, span = prepared.place_of(word)
            page_text = prepared.source.pages[page].text
            if word > passage.start:
                before, previous = prepared.place_of(word - 1)
                text += _SPACES.sub(" ", page_text[previous.end : span.start]) if before == page else " "
            begin = len(text)
            text += _BROKEN.sub("", span.of(page_text))
            if word in marked:
                differs.append(Span(begin, len(text)))
        page, span = prepared.place_of(passage.end - 1)
        closing = _CLOSING.match(prepared.source.pages[page].text, span.end)
        text += closing.group() if closing else ""
    return Wordings(draft, text, _joined(draft, draft_differs), _joined(text, differs))


def _joined(text: str, spans: Iterable[Span]) -> tuple[Span, ...]:
    """The intervals in order, neighbours with no word between them made one."""
    out: list[Span] = []
    for span in sorted(spans):
        if out and not any(map(str.isalnum, text[out[-1].end : span.start])):
            out[-1] = Span(out[-1].start, max(out[-1].end, span.end))
        else:
            out.append(span)
    return tuple(out)
