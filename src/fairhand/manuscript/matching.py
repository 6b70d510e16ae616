"""Which paragraph of one draft is which of another: the one matcher of the whole program.

Paragraphs are compared as sequences of words, each word as one code point, so that the whole comparison of two long
drafts takes a few thousandths of a second.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.manuscript.parts import Manuscript

Fate = Literal["kept", "edited", "moved", "split", "joined", "new", "gone"]
"""What became of a paragraph; a moved one may be edited too, which its likeness tells."""

_WORD = re.compile(r"\w+(?:['’]\w+)*")
_SAME = 0.4
"""Likeness from which two paragraphs are held to be one, edited."""
_HELD = 0.6
"""Share of a paragraph's words that another must hold, in order, to have it within."""
_SHORT = 5
"""Words that a paragraph must share in any case to be held within another; a shorter one all of its own."""
_ALL_PAIRS = 40_000
"""Pairs of paragraphs that are all compared; beyond, those that share a word which no more than a few hold."""
_FEW = 12
_FIRST_CODE = 0x100
_SURROGATES = range(0xD800, 0xE000)


@dataclass(frozen=True, slots=True)
class ParagraphMatch:
    """One paragraph's way from an older draft to a newer one."""

    fate: Fate
    old: tuple[int, ...]
    """Indices of the paragraphs of the older draft: several where they were joined, none where it is new."""
    new: tuple[int, ...]
    """Indices of the paragraphs of the newer draft: several where it was split, none where it is gone."""
    likeness: float
    """Share of the words that both have in the same order, 0 to 1: 1 where nothing but blanks changed."""


def match_paragraphs(old: Manuscript, new: Manuscript) -> tuple[ParagraphMatch, ...]:
    r"""What became of each paragraph, in the order of the newer draft, those gone at the end; each stands once.

    The same words are the same paragraph; of the rest the likest are paired first, by the longest sequence of words in
    common, from a likeness of two fifths; what is left over is looked for within its neighbours' pairs (split, joined).
    A paragraph has moved where it leaves the longest run of pairs that keep their order.

    **Source**: longest common and longest increasing subsequences; the two thresholds are our own, set by
    ``tests/outside/test_two_drafts.py``.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> first = read_manuscript("Rain fell all day.\n\nIt stopped.")
    >>> second = read_manuscript("It stopped.\n\nRain fell.")
    >>> [(match.fate, match.old, match.new) for match in match_paragraphs(first, second)]
    [('kept', (1,), (0,)), ('moved', (0,), (1,))]
    """
    return match_texts(
        [paragraph.span.of(old.text) for paragraph in old.paragraphs],
        [paragraph.span.of(new.text) for paragraph in new.paragraphs],
    )


def match_texts(old: Sequence[str], new: Sequence[str]) -> tuple[ParagraphMatch, ...]:
    """What became of each of some texts in a row, as ``match_paragraphs`` tells it: of any passages, or of lines.

    >>> [match.fate for match in match_texts(["a = 1", "b = 2"], ["b = 2"])]
    ['kept', 'gone']
    """
    code: dict[str, str] = {}
    before = [_encode(text, code) for text in old]
    after = [_encode(text, code) for text in new]
    pairs = dict(_equal_pairs(before, after))
    taken = set(pairs.values())
    rest_old = [index for index in range(len(before)) if index not in pairs]
    rest_new = [index for index in range(len(after)) if index not in taken]
    common = _common(before, after, rest_old, rest_new)
    pairs.update(_like_pairs(before, after, common))
    parts, wholes = _left_over(before, after, common, pairs)
    return tuple(_told(before, after, pairs, parts, wholes))


def _encode(text: str, code: dict[str, str]) -> str:
    """The words of ``text``, each as one character; a paragraph without words as its marks."""
    words = _WORD.findall(text.casefold()) or text.split()
    return "".join(code.setdefault(word, _character(len(code))) for word in words)


def _character(number: int) -> str:
    number += _FIRST_CODE
    return chr(number + len(_SURROGATES) if number >= _SURROGATES.start else number)


def _equal_pairs(before: Sequence[str], after: Sequence[str]) -> Iterator[tuple[int, int]]:
    """Paragraphs with the same words: from both ends inward first, so that repeated ones keep their places."""
    start, end = 0, 0
    least = min(len(before), len(after))
    while start < least and before[start] == after[start]:
        yield start, start
        start += 1
    while end < least - start and before[-1 - end] == after[-1 - end]:
        yield len(before) - 1 - end, len(after) - 1 - end
        end += 1
    waiting: dict[str, list[int]] = {}
    for index in range(len(after) - end - 1, start - 1, -1):
        waiting.setdefault(after[index], []).append(index)
    for index in range(start, len(before) - end):
        if waiting.get(before[index]):
            yield index, waiting[before[index]].pop()


def _common(
    before: Sequence[str], after: Sequence[str], rest_old: Sequence[int], rest_new: Sequence[int]
) -> dict[tuple[int, int], int]:
    """For each two paragraphs left, how many words they have in common in the same order, where it matters."""
    from rapidfuzz.distance import LCSseq

    lengths = {}
    for one, other in _worth_comparing(before, after, rest_old, rest_new):
        least = int(_SAME * min(len(before[one]), len(after[other])))
        length = LCSseq.similarity(before[one], after[other], score_cutoff=least)
        if length:
            lengths[one, other] = int(length)
    return lengths


def _worth_comparing(
    before: Sequence[str], after: Sequence[str], rest_old: Sequence[int], rest_new: Sequence[int]
) -> Iterator[tuple[int, int]]:
    """Every pair of a draft of usual length; of a huge one those that share a word which few paragraphs hold."""
    if len(rest_old) * len(rest_new) <= _ALL_PAIRS:
        yield from ((one, other) for one in rest_old for other in rest_new)
        return
    holders: dict[str, list[int]] = {}
    for other in rest_new:
        for word in set(after[other]):
            holders.setdefault(word, []).append(other)
    for one in rest_old:
        rare = (holders[word] for word in set(before[one]) if len(holders.get(word, ())) in range(1, _FEW + 1))
        yield from ((one, other) for other in sorted({other for others in rare for other in others}))


def _like_pairs(before: Sequence[str], after: Sequence[str], common: dict[tuple[int, int], int]) -> dict[int, int]:
    """The likest two first, none twice."""
    ranked = sorted(
        (-_likeness(len(before[one]), len(after[other]), length), abs(one - other), one, other)
        for (one, other), length in common.items()
    )
    pairs: dict[int, int] = {}
    taken: set[int] = set()
    for score, _, one, other in ranked:
        if -score < _SAME:
            break
        if one not in pairs and other not in taken:
            pairs[one] = other
            taken.add(other)
    return pairs


def _likeness(first: int, second: int, common: int) -> float:
    return 2 * common / (first + second) if first + second else 1.0


def _left_over(
    before: Sequence[str], after: Sequence[str], common: dict[tuple[int, int], int], pairs: dict[int, int]
) -> tuple[dict[int, int], dict[int, int]]:
    """Each unpaired new paragraph that an old one held, and each unpaired old one that a new one holds."""
    taken = set(pairs.values())
    parts: dict[int, tuple[float, int]] = {}
    wholes: dict[int, tuple[float, int]] = {}
    for (one, other), length in common.items():
        if other not in taken and _holds(length, len(before[one]), len(after[other])):
            parts[other] = max(parts.get(other, (0.0, 0)), (length / len(after[other]), one))
        if one not in pairs and _holds(length, len(after[other]), len(before[one])):
            wholes[one] = max(wholes.get(one, (0.0, 0)), (length / len(before[one]), other))
    return {other: one for other, (_, one) in parts.items()}, {one: other for one, (_, other) in wholes.items()}


def _holds(common: int, whole: int, part: int) -> bool:
    """Whether a paragraph of ``whole`` words has one of ``part`` words within it: a very short one word for word."""
    return whole > part and common >= max(_HELD * part, min(part, _SHORT))


def _told(
    before: Sequence[str], after: Sequence[str], pairs: dict[int, int], parts: dict[int, int], wholes: dict[int, int]
) -> Iterator[ParagraphMatch]:
    """The matches in order."""
    from rapidfuzz.distance import Indel

    steady = _longest_rising(pairs)
    pieces: dict[int, list[int]] = {}
    for other, one in parts.items():
        pieces.setdefault(one, []).append(other)
    joined: dict[int, list[int]] = {}
    for one, other in wholes.items():
        if one not in pieces:
            joined.setdefault(other, []).append(one)
    back = {other: one for one, other in pairs.items()}
    told_new: set[int] = set()
    told_old: set[int] = set()
    for index in range(len(after)):
        if index in told_new:
            continue
        origin = back.get(index, parts.get(index))
        olds = sorted({*([origin] if origin is not None else []), *joined.get(index, [])} - told_old)
        news = [index]
        if len(olds) == 1 and olds[0] in pieces:
            one = olds[0]
            news = sorted({index, *pieces[one], *([pairs[one]] if one in pairs else [])} - told_new)
        told_new.update(news)
        told_old.update(olds)
        fate: Fate = "kept"
        likeness = Indel.normalized_similarity(
            "".join(before[one] for one in olds), "".join(after[other] for other in news)
        )
        if not olds:
            fate, likeness = "new", 0.0
        elif len(news) > 1:
            fate = "split"
        elif len(olds) > 1:
            fate = "joined"
        elif pairs.get(olds[0]) == index and olds[0] not in steady:
            fate = "moved"
        elif before[olds[0]] != after[index]:
            fate = "edited"
        yield ParagraphMatch(fate, tuple(olds), tuple(news), likeness)
    for one in range(len(before)):
        if one not in told_old:
            yield ParagraphMatch("gone", (one,), (), 0.0)


def _longest_rising(pairs: dict[int, int]) -> set[int]:
    """The old paragraphs of the longest run of pairs that keep their order."""
    ends: list[int] = []
    ending: list[int] = []
    earlier: dict[int, int | None] = {}
    for one in sorted(pairs):
        place = bisect_left(ends, pairs[one])
        earlier[one] = ending[place - 1] if place else None
        if place == len(ends):
            ends.append(pairs[one])
            ending.append(one)
        else:
            ends[place], ending[place] = pairs[one], one
    run: set[int] = set()
    at = ending[-1] if ending else None
    while at is not None:
        run.add(at)
        at = earlier[at]
    return run
