"""What a finding offers, a word or a mark, and the draft with that put in its place at the writer's word."""

from __future__ import annotations

from collections.abc import Iterable

from fairhand.model.finding import Finding, Instead
from fairhand.model.proof_mark import ProofMark
from fairhand.model.span import Span
from fairhand.proof.mending import mend_text
from fairhand.proof.signs import SIGNS


def offers(finding: Finding) -> bool:
    """Whether a finding says what belongs in each of its places, or that nothing does.

    >>> offers(Finding("spelling", "copy-edit", "should", Span(0, 4), "", "", instead=(Instead(Span(0, 4), "tide"),)))
    True
    """
    strikes = SIGNS.get(finding.check) == "delete"
    return bool(finding.instead) and all(one.words or (strikes and len(one.span)) for one in finding.instead)


def tell_offer(finding: Finding, draft: str) -> str:
    """What would be done, in a few words; nothing where a finding offers nothing.

    >>> found = Finding("spelling", "copy-edit", "should", Span(4, 8), "", "", instead=(Instead(Span(4, 8), "tide"),))
    >>> tell_offer(found, "The tyde.")
    'put “tide”'
    """
    if not offers(finding):
        return ""
    words = " … ".join(one.words.strip() for one in finding.instead if one.words.strip())
    struck = finding.instead[0].span.of(draft).strip()
    return f"put “{words}”" if words else f"strike “{struck}”" if struck else "strike the blank"


def put_offered(draft: str, findings: Iterable[Finding], within: Span | None = None) -> str:
    """The draft, or a part of it, with what the findings offer in its place; of two that overlap, the first holds.

    Args:
        draft: The draft's text.
        findings: What is to be done; those that offer nothing are passed over.
        within: The part that is wanted; all of it where it is None.

    >>> found = Finding("doubled-word", "copy-edit", "should", Span(3, 10), "", "", instead=(Instead(Span(7, 10)),))
    >>> put_offered("We did did it.", [found])
    'We did it.'
    """
    part = within or Span(0, len(draft))
    places: list[Instead] = []
    for finding in findings:
        own = finding.instead if offers(finding) else ()
        if all(part.contains(one.span) and not any(_meet(one.span, other.span) for other in places) for one in own):
            places += own
    end = part.end
    for one in sorted(places, key=lambda each: each.span, reverse=True):
        mended = _put(draft, one)
        end += len(mended) - len(draft)
        draft = mended
    return draft[part.start : end]


def _meet(one: Span, other: Span) -> bool:
    return one == other or one.overlaps(other)


def _put(draft: str, one: Instead) -> str:
    """The draft with one word put in, taken out or put in the place of another."""
    before, after = draft[: one.span.start], draft[one.span.end :]
    if not one.words:
        return mend_text(draft, one.span, ProofMark("", "", "delete", one.span.of(draft))) or draft
    words = one.words
    if not len(one.span):  # a word that is put in stands apart from its neighbours
        words = (" " if before[-1:].isalnum() and words[:1].isalnum() else "") + words
        words += " " if words[-1:].isalnum() and after[:1].isalnum() else ""
    return before + words + after
