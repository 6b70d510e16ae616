"""What of a paper leans on what: a passage that cannot stand where its ground is cut, or comes after it.

**Source**: common practice; the kinds are those that editors look for when matter is moved (a term explained, a person
introduced, "as shown above"). The words by which each is known are our own.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.citing.mention import Mention, Resolved
from fairhand.manuscript.parts import Manuscript
from fairhand.model.span import Span
from fairhand.revision.body import BodyParagraph
from fairhand.revision.likeness import Weights, count_stems
from fairhand.revision.terms import find_names, find_terms

Kind = Literal["term", "name", "page alone", "pointing", "opening", "first citation"]

_DONE = (
    r"(?:shown|noted|argued|seen|said|discussed|mentioned|described|explained|stated|observed|established|suggested"
    r"|set out|outlined|demonstrated|quoted|cited|defined)"
)
_BACK = re.compile(
    r"\b(?:as|has been|have been|was|were|already)\s+(?:(?:I|we)\s+(?:have\s+)?)?(?:was\s+|were\s+|has been\s+)?"
    rf"{_DONE}\s+(?:above|earlier|before|already|previously)\b"
    rf"|\bas\s+(?:(?:already|previously|earlier)\s+{_DONE}|above)\b"
    rf"|\bas\s+(?:I|we)\s+(?:have\s+)?(?:already\s+)?{_DONE}\b"
    rf"|\b(?:{_DONE}|see|seen)\s+above\b|\bthe\s+(?:above|foregoing|aforementioned|aforesaid)\b|\bearlier in this\b"
    r"|\bin the (?:previous|preceding|last|earlier) (?:paragraph|section|part)s?\b"
    r"|\bthe (?:previous|preceding) (?:paragraph|section|part)\b",
    re.IGNORECASE,
)
_AHEAD = re.compile(
    rf"\b(?:as\s+)?(?:will be\s+|is\s+|are\s+)?{_DONE}\s+(?:below|later)\b|\bsee below\b"
    r"|\bas\s+(?:I|we)\s+(?:will|shall)\b"
    r"|\bin the (?:next|following) (?:paragraph|section|part)s?\b|\bthe following (?:paragraph|section|part)\b"
    r"|\b(?:I|we) (?:will|shall) (?:return|come back) to\b",
    re.IGNORECASE,
)
_NEAREST = re.compile(r"(?:previous|preceding|last|next|following) paragraph", re.IGNORECASE)
_OPENING = re.compile(
    r"(?:(?:This|These|Those|That|Such)(?: \w+)?|However|But|Yet|And|So|Nor|Moreover|Furthermore|Besides|Nevertheless"
    r"|Nonetheless|Similarly|Likewise|Consequently|Therefore|Hence|Accordingly|Still|Even so|In contrast|By contrast"
    r"|On the other hand|On the contrary|Second(?:ly)?|Third(?:ly)?|Fourth(?:ly)?|Finally|Another \w+|The same|He|She"
    r"|They|It|Its|His|Her|Their)\b"
)
FEWEST_SHARED = 2
"""Telling words that a passage must share with the sentence that points to it (from trial)."""


@dataclass(frozen=True, slots=True)
class Tie:
    """One passage that leans on another."""

    kind: Kind
    passage: int
    """Its place among the passages of the body, from 0."""
    ground: int
    """The place of the passage that it leans on."""
    span: Span
    """The words that lean on it."""
    says: str
    """What leans on what, in a clause."""
    firm: bool = True
    """Whether it cannot stand without its ground; where not, it is a place to look."""

    @property
    def looks_ahead(self) -> bool:
        """Whether its ground comes after it."""
        return self.ground > self.passage


def find_ties(
    manuscript: Manuscript,
    body: Sequence[BodyParagraph],
    mentions: Sequence[Mention],
    resolved: Sequence[Resolved],
    names: Mapping[str, str],
) -> tuple[Tie, ...]:
    """Every dependence between the passages of the body, in the order of the passages that depend.

    Args:
        manuscript: The draft.
        body: Its passages that argue.
        mentions: Its citations.
        resolved: What they cite.
        names: Each source as the writer is told of it.
    """
    found = [
        *_lean_on_terms(manuscript, body),
        *_lean_on_names(manuscript, body),
        *_lean_on_citations(body, mentions, resolved, names),
        *_point(manuscript.text, body),
        *_open(manuscript.text, body),
    ]
    return tuple(sorted(dict.fromkeys(found), key=lambda tie: (tie.passage, tie.span, tie.ground)))


def list_broken(ties: Sequence[Tie], order: Sequence[int]) -> tuple[Tie, ...]:
    """The ties that no longer hold where only these passages stand, in this order; those that were firm first.

    >>> tie = Tie("term", 2, 0, Span(0, 0), "")
    >>> list_broken([tie], [1, 2, 0]) == list_broken([tie], [1, 2]) == (tie,), list_broken([tie], [0, 2])
    (True, ())
    """
    place = {number: at for at, number in enumerate(order)}

    def holds(tie: Tie) -> bool:
        if tie.passage not in place:
            return True
        if tie.ground not in place:
            return False
        if tie.kind == "opening":
            return place[tie.passage] == place[tie.ground] + 1
        return (place[tie.ground] > place[tie.passage]) is tie.looks_ahead

    return tuple(sorted((tie for tie in ties if not holds(tie)), key=lambda tie: not tie.firm))


def needs_of(ties: Sequence[Tie], passage: int) -> frozenset[int]:
    """The passages that one cannot stand without."""
    return frozenset(tie.ground for tie in ties if tie.passage == passage and tie.firm)


def _within(body: Sequence[BodyParagraph], place: int) -> int | None:
    """The passage that a place of the draft is in."""
    return next((at for at, one in enumerate(body) if one.span.start <= place < one.span.end), None)


def _lean_on_terms(manuscript: Manuscript, body: Sequence[BodyParagraph]) -> Iterator[Tie]:
    """What is explained in one passage and used in a later one."""
    texts = [one.span.of(manuscript.text) for one in body]
    for ground, text in enumerate(texts):
        for term in find_terms(text):
            if any(term.pattern.search(before) for before in texts[:ground]):
                continue
            for at in range(ground + 1, len(body)):
                used = term.pattern.search(texts[at])
                if used is not None and not any(other.words == term.words for other in find_terms(texts[at])):
                    span = Span(*used.span()).shifted(body[at].span.start)
                    yield Tie("term", at, ground, span, f"“{term.words}” is explained there")


def _lean_on_names(manuscript: Manuscript, body: Sequence[BodyParagraph]) -> Iterator[Tie]:
    """Who is introduced by the whole name in one passage, and named by surname alone in a later one."""
    quoted = [quotation.span for quotation in manuscript.quotations]
    texts = [_blanked(manuscript.text, one.span, quoted) for one in body]
    common = frozenset(re.findall(r"\b[a-zà-ÿ]{2,}\b", manuscript.text))
    introduced: dict[str, int] = {}
    for at, text in enumerate(texts):
        whole, alone = find_names(text, common)
        for surname, span in alone.items():
            ground = introduced.get(surname)
            if ground is not None and surname not in whole:
                yield Tie(
                    "name", at, ground, span.shifted(body[at].span.start), f"{surname} is named in full there first"
                )
        for surname in whole:
            introduced.setdefault(surname, at)


def _blanked(text: str, span: Span, hidden: Sequence[Span]) -> str:
    """A passage with blanks for what it quotes and what stands in parentheses."""
    own = list(span.of(text))
    for one in hidden:
        for place in range(max(one.start, span.start), min(one.end, span.end)):
            own[place - span.start] = " "
    return re.sub(r"\([^()]*\)", lambda found: " " * len(found[0]), "".join(own))


def _lean_on_citations(
    body: Sequence[BodyParagraph], mentions: Sequence[Mention], resolved: Sequence[Resolved], names: Mapping[str, str]
) -> Iterator[Tie]:
    """A page alone whose work is named in another passage; a source cited again, which another passage cites first."""
    first: dict[str, int] = {}
    for one in resolved:
        span = mentions[one.mention].span
        at = _within(body, span.start)
        if at is None or one.entry is None:
            continue
        name = names.get(one.entry, one.entry)
        named = _within(body, one.named_at.start) if one.named_at else None
        if named is not None and named != at:
            yield Tie("page alone", at, named, span, f"{name} is named there, and here only the page")
        elif one.entry in first and first[one.entry] != at:
            yield Tie("first citation", at, first[one.entry], span, f"{name} is cited there first", firm=False)
        first.setdefault(one.entry, at)


def _point(text: str, body: Sequence[BodyParagraph]) -> Iterator[Tie]:
    """What points back or ahead in words, to the passage that shares most with its sentence."""
    texts = [one.span.of(text) for one in body]
    weights = Weights(texts)
    for at, one in enumerate(body):
        for sentence in one.sentences:
            for pattern, others in ((_BACK, range(at)), (_AHEAD, range(at + 1, len(body)))):
                found = pattern.search(sentence.own)
                if found is None or not others:
                    continue
                ground = others[-1] if pattern is _BACK else others[0]
                if not _NEAREST.search(found[0]):
                    said = set(count_stems(sentence.own)) - set(count_stems(found[0]))
                    shared = {other: [stem for stem in said if stem in count_stems(texts[other])] for other in others}
                    best = max(others, key=lambda other: weights.total(shared[other]))
                    if len(shared[best]) < FEWEST_SHARED:
                        continue
                    ground = best
                words = " ".join(found[0].split())
                span = Span(*found.span()).shifted(sentence.span.start)
                yield Tie("pointing", at, ground, span, f"“{words}” points there")


def _open(text: str, body: Sequence[BodyParagraph]) -> Iterator[Tie]:
    """A passage whose first words take up the one before it, under the same heading."""
    for at in range(1, len(body)):
        found = _OPENING.match(body[at].span.of(text))
        if found is not None and body[at].section == body[at - 1].section:
            span = Span(*found.span()).shifted(body[at].span.start)
            yield Tie("opening", at, at - 1, span, f"it opens with “{found[0]}”, which takes that up", firm=False)
