"""Where a place of the draft begins and ends in type.

A mark is drawn in to what reads: it never begins or ends within markup, within a run of code or an address, on a blank,
or between the hyphens of a dash.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence

from fairhand.manuscript.bare import OPAQUE
from fairhand.manuscript.blocks import read_parts
from fairhand.manuscript.parts import Manuscript
from fairhand.manuscript.passages import read_passage
from fairhand.manuscript.places import Passage
from fairhand.model.span import Span

_ONE_SIGN = f"-{OPAQUE}"
"""Characters that are one sign where they stand together."""


def running_text(manuscript: Manuscript) -> list[Passage]:
    """All passages of a draft in which something reads, in order."""
    parts = [inner for part in read_parts(manuscript.text)[0] for inner in part.walk()]
    passages = [passage for part in parts for passage in part.passages]
    kept = [passage for passage in passages if read_passage(passage.text).bare.text.strip()]
    return sorted(kept, key=lambda passage: passage.whole)


def find_edges(span: Span, passages: Sequence[Passage]) -> tuple[int, int] | None:
    """A place's ends as they can be shown in type, the same twice for a caret; None where nothing reads at all.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> text = "It was *the Mercury* so."
    >>> [text[slice(*find_edges(Span(a, b), running_text(read_manuscript(text))))] for a, b in ((3, 12), (2, 19))]
    ['was *the', 'was *the Mercury']
    """
    start, end = _first(span.start, passages), _last(span.end, passages)
    if start is None or end is None:
        only = end if start is None else start
        return None if only is None else (only, only)
    if len(span):
        return start, max(start, end)
    at = bisect_left(passages, span.start, key=lambda passage: passage.whole.end)
    is_here = at < len(passages) and end >= passages[at].whole.start
    return (end, end) if is_here else (start, start)


def _first(place: int, passages: Sequence[Passage]) -> int | None:
    """Before the first character that reads from a place on."""
    for passage in passages[bisect_right(passages, place, key=lambda passage: passage.whole.end - 1) :]:
        bare = read_passage(passage.text).bare
        at = bisect_left(bare.starts, passage.index(place))
        while at < len(bare.text) and bare.text[at].isspace():
            at += 1
        if at == len(bare.text):
            continue
        while at and bare.scan[at - 1] == bare.scan[at] and bare.scan[at] in _ONE_SIGN:
            at -= 1
        if bare.scan[at] != OPAQUE:
            return passage.place(bare.starts[at])
        return passage.place(bare.ends[at - 1] - 1) + 1 if at else passage.whole.start
    return None


def _last(place: int, passages: Sequence[Passage]) -> int | None:
    """After the last character that reads before a place."""
    for passage in reversed(passages[: bisect_left(passages, place, key=lambda passage: passage.whole.start)]):
        bare = read_passage(passage.text).bare
        here = passage.index(place) if place < passage.whole.end else len(passage.text)
        at = bisect_right(bare.ends, here)
        while at and bare.text[at - 1].isspace():
            at -= 1
        if not at:
            continue
        while at < len(bare.text) and bare.scan[at - 1] == bare.scan[at] and bare.scan[at] in _ONE_SIGN:
            at += 1
        if bare.scan[at - 1] != OPAQUE:
            return passage.place(bare.ends[at - 1] - 1) + 1
        return passage.place(bare.starts[at]) if at < len(bare.text) else passage.whole.end
    return None
