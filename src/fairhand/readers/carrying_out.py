"""A reader's change carried out in the draft, where its words stand as they were sent, and only there."""

from __future__ import annotations

from fairhand.language.folding import fold
from fairhand.model.span import Span
from fairhand.readers.gathering import ReaderRemark


def carry_out(draft: str, span: Span, remark: ReaderRemark) -> str | None:
    """The draft with the change; None where it cannot be carried out unseen.

    That is so of a comment, of a change that goes over the end of a paragraph, and where other words stand there now,
    or markup within them.

    >>> changed = ReaderRemark("substitution", "turned", "ran")
    >>> carry_out("The tide ran early.", Span(9, 12), changed)
    'The tide turned early.'
    """
    there = span.of(draft)
    if remark.kind == "comment" or "\n" in remark.exact or "\n" in remark.said.strip("\n"):
        return None
    if _plain(there) != _plain(remark.exact):
        return None
    if remark.kind == "insertion":
        at = _place_in(there, remark)
        said = "\n\n" if not remark.said.strip("\n") else remark.said
        return draft[: span.start] + there[:at] + said + there[at:] + draft[span.end :]
    before, after = draft[: span.start], draft[span.end :]
    if remark.kind == "deletion" and (not before or before[-1].isspace()) and after[:1] in (" ", ".", ",", ";", ":"):
        if after[0] == " ":
            after = after[1:]
        else:
            before = before.rstrip(" ")
    return before + remark.said + after


def _plain(text: str) -> str:
    return fold("".join(text.split()))


def _place_in(there: str, remark: ReaderRemark) -> int:
    """The place in the draft's words that answers to the insertion's place in the words as they were sent."""
    head = remark.exact[: max(0, remark.at)]
    letters = len("".join(head.split()))
    at = seen = 0
    while at < len(there) and seen < letters:
        seen += not there[at].isspace()
        at += 1
    if head and head[-1].isspace():
        while at < len(there) and there[at].isspace():
            at += 1
    return at
