"""Stets, held against what the checks now find: one holds for as long as its words stand.

A stet is kept by its check, the exact words and 32 code points on either side. It is recognised where the words are the
same and, with what agrees on either side, 32 code points are, or half of what stood around them: a long quotation
wherever it is moved, two short words only in their own surroundings. What blanks there are between words is all one.

**Source**: the selector is that of the W3C Web Annotation Data Model, section 4.2.4; the measure is our own.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Collection, Iterable, Sequence

from fairhand.model.finding import Finding
from fairhand.model.stet import Stet, Stetted, Word
from fairhand.reading.found_again import count_shared

AROUND = 32
"""Code points that are kept on either side, and that must agree for a stet to be recognised."""
ENOUGH = 12
"""Code points around its words that must agree for a mark that is no stet: it silences nothing, and may hold sooner."""
ALIKE = 75
"""Of a hundred, how like a sentence must be to the one that was marked."""


def make_stet(finding: Finding, draft: str, reason: str = "", when: str = "", word: Word = "stet") -> Stet:
    """The word that a finding shall stand, or what else is said of it.

    >>> from fairhand.model.span import Span
    >>> found = Finding("doubled-word", "copy-edit", "should", Span(3, 10), "", "")
    >>> make_stet(found, "He had had enough.").exact, make_stet(found, "He had had enough.").after
    ('had had', ' enough.')
    """
    span = finding.span
    if span is None:
        return Stet(finding.check, concerns=finding.concerns, reason=reason, when=when, word=word)
    before, after = draft[max(0, span.start - AROUND) : span.start], draft[span.end : span.end + AROUND]
    return Stet(finding.check, span.of(draft), before, after, finding.concerns, reason, when, word)


def name_stet(stet: Stet) -> str:
    """A short name by which a finding, or the stet on it, is told from every other.

    >>> name_stet(Stet("length")) == name_stet(Stet("length", reason="agreed")) != name_stet(Stet("spelling"))
    True
    """
    told = json.dumps([stet.check, stet.exact, stet.before, stet.after, sorted(stet.concerns)])
    return hashlib.sha256(told.encode()).hexdigest()[:16]


def let_stand(
    findings: Sequence[Finding], stets: Iterable[Stet], draft: str
) -> tuple[tuple[Finding, ...], tuple[Stetted, ...]]:
    """The findings that are still open, and those that the writer lets stand; each stet holds one.

    >>> from fairhand.model.span import Span
    >>> found = Finding("doubled-word", "copy-edit", "should", Span(3, 10), "", "")
    >>> let_stand([found], [make_stet(found, "He had had enough.")], "He had had enough of it.")[0]
    ()
    """
    held = recognise(findings, stets, draft)
    open_ = tuple(finding for index, finding in enumerate(findings) if index not in held)
    return open_, tuple(Stetted(findings[index], held[index]) for index in sorted(held))


def recognise(findings: Sequence[Finding], stets: Iterable[Stet], draft: str) -> dict[int, Stet]:
    """The words that were said of findings, by the index of the finding; each word holds one, the likeliest.

    A word that is no stet holds too where it is on a sentence of which most stands as it did.
    """
    at: dict[tuple[str, str], list[int]] = {}
    present, said = [make_stet(finding, draft) for finding in findings], list(stets)
    for index, one in enumerate(present):
        at.setdefault((one.check, _plain(one.exact)), []).append(index)
    ranked = sorted(
        ((-agreed, index, order, stet) for order, stet in enumerate(said)
         for index in at.get((stet.check, _plain(stet.exact)), ())
         if (agreed := _recognise(stet, present[index], findings[index])) is not None),
        key=lambda each: each[:3],
    )  # fmt: skip
    held: dict[int, Stet] = {}
    used: set[int] = set()
    for _, index, order, stet in ranked:
        if index not in held and order not in used:
            held[index] = stet
            used.add(order)
    for order, stet in enumerate(said):
        if order not in used and stet.word != "stet" and len(stet.exact) >= AROUND:
            likest = _likest(stet, present, held)
            if likest is not None:
                held[likest] = stet
    return held


def _likest(stet: Stet, present: Sequence[Stet], held: Collection[int]) -> int | None:
    """The finding that a mark on a whole sentence is of, where some of its words were changed."""
    from rapidfuzz.fuzz import ratio

    words = _plain(stet.exact)
    like = {
        index: ratio(words, _plain(one.exact))
        for index, one in enumerate(present)
        if index not in held and one.check == stet.check
    }
    best = max(like, key=lambda index: like[index], default=None)
    return best if best is not None and like[best] >= ALIKE else None


def _recognise(stet: Stet, present: Stet, finding: Finding) -> int | None:
    """How many code points around the words agree; None where it is not the stet's finding."""
    if finding.span is None:
        return 0 if set(stet.concerns) == set(present.concerns) else None
    before, after = _plain(stet.before), _plain(stet.after)
    agreed = count_shared(before[::-1], _plain(present.before)[::-1]) + count_shared(after, _plain(present.after))
    words = len(_plain(stet.exact))
    needed = min(AROUND, words + (len(before) + len(after)) // 2)
    if stet.word != "stet":
        needed = min(needed, words + ENOUGH)
    return agreed if words + agreed >= needed else None


def _plain(text: str) -> str:
    return " ".join(text.split())
