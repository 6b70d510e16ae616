"""The reverse outline: of each paragraph its own key sentence, what it serves, and its tie to the one before.

Nothing of it is written for the writer: the key sentence is one of the paragraph's own, and so are the tie's words.

**Source**: the reverse outline as handbooks have it, one line for what a paragraph says and one for what it does
(common practice). Which sentence is the key one is our own: the one that shares most with the rest of its paragraph and
with what the paper is about, the first preferred where little parts them, and the writer's own before a cited one.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from fairhand.language.content_words import list_words
from fairhand.model.focus import Question
from fairhand.model.point import Point
from fairhand.model.span import Span
from fairhand.revision.arguing import Nearness, find_nearest
from fairhand.revision.body import BodyParagraph, Sentence
from fairhand.revision.likeness import Weights, count_stems, stem_of, weigh
from fairhand.revision.shifts import find_shifts

SERVES = 0.3
"""Share of a point that a paragraph must have to serve it where it cites none of its sources (from trial)."""
SERVES_QUESTION = 0.5
"""The same of a question."""
AROUND = 8
"""Paragraphs on either side within which a turn is looked for."""
FEWEST_TIES = 3
"""Words shared with the paragraph before below which a turn is told (from trial)."""
MOST_TIES = 3
"""Words that are told of a tie."""
_FIRST, _CITED = 1.8, 0.75
_FEWEST_WORDS = 4
_LINK = re.compile(
    r"(?:However|But|Yet|Still|Nevertheless|Nonetheless|Even so|By contrast|In contrast|On the other hand|On the"
    r" contrary"
    r"|Instead|Moreover|Furthermore|Besides|In addition|Also|Similarly|Likewise|In the same way|For example|For"
    r" instance"
    r"|Indeed|In fact|Therefore|Thus|Hence|Consequently|Accordingly|As a result|For this reason|It follows|Then|Next"
    r"|Finally|First(?:ly)?|Second(?:ly)?|Third(?:ly)?|Another|A second|A third|A further|Meanwhile|Afterwards|Later"
    r"|This|These|That|Those|Such|The same|It|They|One objection|None of|Neither|Both)\b[^.;:!?]{0,28}?(?=[\s,.;:!?])"
)
"""How a paragraph opens that takes up the one before it."""


@dataclass(frozen=True, slots=True)
class TieBefore:
    """What ties a paragraph to the one before it."""

    link: str
    """The words with which it takes the other up; empty where it opens without any."""
    words: tuple[str, ...]
    """Its own telling words that the other has too, the most telling first."""
    turns: bool
    """Whether the text turns to another topic here, by its words."""


@dataclass(frozen=True, slots=True)
class Outlined:
    """One paragraph in the outline."""

    paragraph: int
    """Its place in the body."""
    span: Span
    key: Span
    """Its key sentence."""
    point: str
    """The id of the point that it serves; empty where none is near."""
    question: str
    """The id of the question that it serves."""
    on_focus: bool
    """Whether nothing tells that it strays."""
    tie: TieBefore | None
    """None for the first."""


def outline(
    body: Sequence[BodyParagraph],
    texts: Sequence[str],
    near: Mapping[tuple[int, int], Nearness],
    points: Sequence[Point],
    questions: Sequence[Question],
    strays: Sequence[int] = (),
    aims: str = "",
) -> tuple[Outlined, ...]:
    """Each paragraph that argues, in order.

    Args:
        body: The paragraphs.
        texts: The words of each of them.
        near: How near each is to each point.
        points: The points of the paper.
        questions: Its guiding questions.
        strays: The places of those that seem to stray.
        aims: What the paper is about.
    """
    weights = weigh(tuple(texts))
    nearest = find_nearest(near)
    by_paragraph: dict[int, dict[int, Nearness]] = {}
    for (of, where), one in near.items():
        by_paragraph.setdefault(where, {})[of] = one
    found = []
    for at, paragraph in enumerate(body):
        number = _point_of(at, by_paragraph.get(at, {}), nearest)
        point = "" if number is None else points[number].id
        found.append(
            Outlined(
                at,
                paragraph.span,
                find_key(paragraph.sentences, weights, aims),
                point,
                _question_of(texts[at], point, questions, weights),
                at not in strays,
                _tie(at, body, weights) if at else None,
            )
        )
    return tuple(found)


def find_key(sentences: Sequence[Sentence], weights: Weights, aims: str = "") -> Span:
    """The sentence that shares most with its paragraph and the paper's aims; a question or quotation is hardly one."""
    counts = [count_stems(sentence.own) for sentence in sentences]
    aimed = count_stems(aims)
    among = Counter(known for one in counts for known in one)
    best, key = -1.0, sentences[0].span
    for at, sentence in enumerate(sentences):
        shared = weights.total([known for known in counts[at] if known in aimed or among[known] > 1])
        worth = shared / (len(counts[at]) + 4) ** 0.5
        worth *= (_FIRST if at == 0 else 1.0) * (_CITED if sentence.cites else 1.0)
        if len(sentence.own.split()) < _FEWEST_WORDS or sentence.own.rstrip().endswith(("?", ":")):
            worth *= 0.4
        if 2 * sentence.quoted > len(sentence.span):
            worth *= 0.5
        if worth > best:
            best, key = worth, sentence.span
    return key


def _point_of(at: int, here: Mapping[int, Nearness], nearest: Mapping[int, int]) -> int | None:
    """The place of the point that a paragraph serves: one whose source it cites at its page, else one it is like."""
    if at in nearest and here[nearest[at]].share > 0:
        return nearest[at]
    share, number = max(((one.share, -number) for number, one in here.items()), default=(0.0, 0))
    return -number if share >= SERVES else None


def _question_of(text: str, point: str, questions: Sequence[Question], weights: Weights) -> str:
    """The question that a paragraph serves: that of its point, else one whose words it has."""
    if point:
        of_point = next((question.id for question in questions if point in question.points), "")
        if of_point:
            return of_point
    had = count_stems(text)
    shares = [(weights.share(count_stems(question.text), had), -at) for at, question in enumerate(questions)]
    share, at = max(shares, default=(0.0, 0))
    return questions[-at].id if share >= SERVES_QUESTION else ""


def _tie(at: int, body: Sequence[BodyParagraph], weights: Weights) -> TieBefore:
    paragraph, before = body[at], body[at - 1]
    opening = paragraph.sentences[0].own.lstrip(" \n*_") if paragraph.sentences else ""
    link = _LINK.match(opening)
    here, there = count_stems(paragraph.own), count_stems(before.own)
    both = [known for known in here if known in there and len(known) > 1 and not known.isdigit()]
    both.sort(key=lambda known: -weights.of(known) * min(here[known], there[known]))
    told = _as_written(tuple(both[:MOST_TIES]), paragraph.own)
    return TieBefore(link[0].strip(" ,") if link else "", told, len(both) < FEWEST_TIES and _turns(at, body))


@lru_cache(maxsize=8192)
def _as_written(stems: tuple[str, ...], text: str) -> tuple[str, ...]:
    """The words of these stems as the text has them."""
    words: dict[str, str] = {}
    for word in list_words(text):
        words.setdefault(stem_of(word), word)
    return tuple(words[known] for known in stems)


def _turns(at: int, body: Sequence[BodyParagraph]) -> bool:
    """Whether the likeliest parting of the paragraphs around has a topic begin here."""
    first = max(0, at - AROUND)
    return at - first in _shifts_of(tuple(one.own for one in body[first : at + AROUND]))


@lru_cache(maxsize=4096)
def _shifts_of(passages: tuple[str, ...]) -> frozenset[int]:
    return frozenset(find_shifts(passages))
