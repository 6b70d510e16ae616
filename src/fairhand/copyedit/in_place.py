"""Words of the draft shown in their place: in half brackets, within what stands around them on their line."""

from __future__ import annotations

from fairhand.model.span import Span

AROUND = 40
"""Code points that are shown on either side, less a word that they would cut."""


def quote_span(text: str, span: Span) -> str:
    """The words of an interval in half brackets, with what stands around them.

    >>> quote_span("Then they were taken down.", Span(10, 20))
    'Then they ⸢were taken⸣ down.'
    """
    start, end = max(0, span.start - AROUND), min(len(text), span.end + AROUND)
    before, after = text[start : span.start], text[span.end : end]
    line_before, line_after = before.rpartition("\n")[2], after.partition("\n")[0]
    if start and line_before == before:
        line_before = f"… {before.partition(' ')[2]}"
    if end < len(text) and line_after == after:
        line_after = f"{after.rpartition(' ')[0]} …"
    return f"{line_before}⸢{span.of(text)}⸣{line_after}"
