"""Where the words of a quotation stand in a source: exactly first, then by runs that agree.

Method: runs of three words (then two, then single rare ones) that quotation and source share are banded by distance
and each band's stretch of the source is aligned word by word (seed and extend: Altschul and others 1990; measured on
quotations with a tenth of their letters wrong).
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, replace
from itertools import islice

from fairhand.fidelity.alignment import MOST_FOR_A_BRACKET, Pair, align, dropped_runs
from fairhand.fidelity.prepared import PreparedSource
from fairhand.fidelity.quoted import Quoted, Segment, Token

Effort = tuple[int, ...]
"""How many words in a row must agree for an inexact passage to be looked at, in the order in which this is tried."""
THOROUGH: Effort = (3, 2, 1)
QUICK: Effort = (3,)
EXACT: Effort = ()
_WORDS_APART = 400
"""How far apart in the source two parts of one quotation may stand: somewhat over a page."""
_WORDS_APART_SHORT = 150
"""The same for a part of a few words, which may stand anywhere by chance."""
_FEW = 4
_BANDS = (16, 160)
"""Widths of the bands of distances in which a segment's runs belong together: the wider one bridges words dropped."""
_LEAST_COVERED = {3: 0.15, 2: 0.15, 1: 0.05}
"""Share of a segment's words that the runs of each length must cover before a stretch is looked at."""
_MOST_SEEDS = 200
"""Occurrences of one run of words that are looked at; one that recurs oftener proves nothing."""
_ENOUGH_SEEDS = 60
"""Of a long block quotation not every run is looked for."""
_MOST_STRETCHES = 6
_MOST_TRIED = 40
_RARE = 12
"""A single word that occurs oftener proves nothing."""
_SHORT = 3
"""A quotation of so few words is found exactly or not at all."""
_LIKE_ENOUGH = 0.6
_LIKE_ENOUGH_SHORT = 0.7


@dataclass(frozen=True, slots=True)
class Passage:
    """The words of the source that a segment was paired with."""

    start: int
    """Index of the first of them in the prepared source; a bracket at either end claims none."""
    end: int
    """Index after the last."""
    pairs: tuple[Pair, ...]
    """The segment's tokens and the source's words, in order."""
    likeness: float = 1.0
    """How far the words agree, letter by letter where they differ, 0 to 1."""
    faults: int = 0
    """Words changed or added, and stretches dropped."""
    in_order: bool = True
    """False where it had to be looked for outside its place between the other parts."""


@dataclass(frozen=True, slots=True)
class Placing:
    """Where all the segments of a quotation stand; None for a segment that was not found."""

    passages: tuple[Passage | None, ...]

    @property
    def faults(self) -> int:
        """Faults over all segments."""
        return sum(100 if p is None else p.faults + (0 if p.in_order else 50) for p in self.passages)


def place(
    prepared: PreparedSource, quoted: Quoted, wanted: Sequence[int] = (), effort: Effort = THOROUGH
) -> Placing | None:
    """The best place of a quotation in a source, one on a ``wanted`` page (by index) where several are as good.

    The ``effort`` is how far from its exact words a passage may be looked for.
    """
    effort = effort if quoted.length > _SHORT else EXACT
    by_length = sorted(range(len(quoted.segments)), key=lambda k: -len(quoted.segments[k].plain))
    for anchor in by_length if effort else by_length[:1]:
        segment = quoted.segments[anchor]
        found = find_segment(prepared, segment, effort=effort)
        if not found:
            continue
        found.sort(key=lambda p: _rank(prepared, quoted.text, segment, p, set(wanted)))
        best = None
        for passage in found[:_MOST_TRIED]:
            placing = _around(prepared, quoted, anchor, passage, effort=effort)
            if best is None or placing.faults < best.faults:
                best = placing
            if not best.faults:
                break
        return best
    return None


def _rank(
    prepared: PreparedSource, text: str, segment: Segment, passage: Passage, wanted: AbstractSet[int]
) -> tuple[int, bool, bool]:
    """The order of an anchor's passages: fewest faults first, then those on a wanted page, then by the first letter."""
    token, word = passage.pairs[0]
    capitals = token is None or word is None or segment.tokens[token].span.of(text)[:1] == prepared.as_set(word)[:1]
    on_page = not wanted.isdisjoint((prepared.page_at(passage.start), prepared.page_at(passage.end - 1)))
    return passage.faults, not on_page, not capitals


def _around(prepared: PreparedSource, quoted: Quoted, anchor: int, passage: Passage, effort: Effort) -> Placing:
    """The other segments, looked for before and after the anchor."""
    passages: list[Passage | None] = [None] * len(quoted.segments)
    passages[anchor] = passage
    low = high = passage
    for k in range(anchor + 1, len(quoted.segments)):
        segment = quoted.segments[k]
        limit = min(high.end + most_apart(segment), len(prepared.words))
        found = find_segment(prepared, segment, high.end, limit, effort=effort)
        passages[k] = min(found, key=lambda p: (p.faults, p.start), default=None)
        high = passages[k] or high
    for k in range(anchor - 1, -1, -1):
        segment = quoted.segments[k]
        limit = max(0, low.start - most_apart(segment))
        found = find_segment(prepared, segment, limit, low.start, effort=effort)
        passages[k] = min(found, key=lambda p: (p.faults, -p.start), default=None)
        low = passages[k] or low
    for k, segment in enumerate(quoted.segments):
        if passages[k] is None and len(segment.plain) >= _SHORT:
            astray = find_segment(prepared, segment, effort=EXACT)
            passages[k] = replace(astray[0], in_order=False) if astray else None
    return Placing(tuple(passages))


def most_apart(segment: Segment) -> int:
    """How many words of the source may lie between a segment and the one beside it."""
    return _WORDS_APART if len(segment.plain) > _FEW else _WORDS_APART_SHORT


def find_segment(
    prepared: PreparedSource, segment: Segment, start: int = 0, end: int | None = None, effort: Effort = THOROUGH
) -> list[Passage]:
    """The passages between two words of the source that agree with a segment; inexact ones only where none is exact."""
    end = len(prepared.words) if end is None else end
    tokens = segment.tokens
    if not segment.plain:
        return []
    if len(segment.plain) == len(tokens):
        n = len(tokens)
        exact = [
            Passage(at, at + n, tuple((k, at + k) for k in range(n)))
            for at in prepared.occurrences(segment.plain, start, end)
        ]
        if exact or not effort:
            return exact
    best: list[Passage] = []
    for size in effort or THOROUGH:
        hits = _seeds(prepared, tokens, size, start, end)
        if not hits:
            continue
        stretches = dict.fromkeys(_stretches(hits, size, len(tokens), start, end))
        aligned = (
            _passage(prepared, tokens, low, high)
            for low, high in stretches
            if _is_worth_aligning(segment.plain, prepared.words[low:high], effort)
        )
        best = [p for p in aligned if p is not None and _is_like(p, len(segment.plain), effort=effort)]
        if best:
            break
    return best


def _is_like(passage: Passage, length: int, effort: Effort) -> bool:
    """Whether a passage agrees with a segment well enough to be its source."""
    if length <= _SHORT or not effort:
        return not passage.faults
    return passage.likeness >= (_LIKE_ENOUGH if length > _SHORT + 2 else _LIKE_ENOUGH_SHORT)


def _seeds(prepared: PreparedSource, tokens: Sequence[Token], size: int, start: int, end: int) -> list[tuple[int, int]]:
    """Places (word of the source, token) where ``size`` words in a row agree."""
    hits: list[tuple[int, int]] = []
    for k in range(0, len(tokens) - size + 1, 1 + len(tokens) // _ENOUGH_SEEDS if size > 1 else 1):
        run = tokens[k : k + size]
        if any(token.kind != "plain" for token in run):
            continue
        found = list(islice(prepared.occurrences(tuple(token.word for token in run), start, end), _MOST_SEEDS))
        if size > 1 or len(found) <= _RARE:
            hits.extend((at, k) for at in found)
    return hits


def _stretches(
    hits: Sequence[tuple[int, int]], size: int, length: int, start: int, end: int
) -> Iterator[tuple[int, int]]:
    """The stretches of the source in which most of a segment's words could stand, best first.

    Runs that lie equally far ahead in source and segment belong together; where words were dropped the distance jumps,
    so a wider band of distances is tried when no narrow one holds most of the segment.
    """
    for width in _BANDS:
        bands: dict[int, list[tuple[int, int]]] = defaultdict(list)
        for at, k in hits:
            # Each distance falls into two bands that overlap by half, so that no band's edge parts a passage.
            bands[2 * ((at - k) // width)].append((at, k))
            bands[2 * ((at - k + width // 2) // width) + 1].append((at, k))
        covered = {band: len({k + n for _, k in found for n in range(size)}) for band, found in bands.items()}
        best = sorted(covered, key=lambda band: (-covered[band], band))[:_MOST_STRETCHES]
        for band in best:
            if covered[band] >= _LEAST_COVERED[size] * length:
                ahead = [at - k for at, k in bands[band]]
                low = min(ahead) - MOST_FOR_A_BRACKET
                yield max(start, low), min(end, max(ahead) + length + MOST_FOR_A_BRACKET)
        if best and covered[best[0]] >= _LIKE_ENOUGH * length:
            return


def _is_worth_aligning(plain: Sequence[str], words: Sequence[str], effort: Effort) -> bool:
    """Whether enough of a segment's words stand in a stretch in their order, or enough of its letters side by side."""
    from rapidfuzz.distance import LCSseq
    from rapidfuzz.fuzz import partial_ratio

    in_order = LCSseq.similarity(plain, words) / len(plain)
    if in_order >= _LIKE_ENOUGH or not effort:
        return in_order >= _LIKE_ENOUGH
    return partial_ratio(" ".join(plain), " ".join(words), score_cutoff=100 * _LIKE_ENOUGH) > 0


def _passage(prepared: PreparedSource, tokens: Sequence[Token], low: int, high: int) -> Passage | None:
    """The best pairing of a segment with one stretch of the source."""
    from rapidfuzz.fuzz import ratio

    words = prepared.words[low:high]
    pairs = align(tokens, words)
    own = [s for k, s in pairs if k is not None and s is not None and tokens[k].kind != "bracketed"]
    if not own:
        return None
    agree = 0.0
    faults = 0
    claimed = 0
    for k, s in pairs:
        if k is None or tokens[k].kind == "bracketed":
            continue
        claimed += 1
        if s is None:
            faults += 1
        elif tokens[k].matches(words[s]):
            agree += 1
        else:
            faults += 1
            alike = ratio(tokens[k].word, words[s]) / 100
            agree += alike if alike >= 0.5 else 0
    return Passage(
        own[0] + low,
        own[-1] + 1 + low,
        tuple((k, None if s is None else s + low) for k, s in pairs),
        agree / claimed if claimed else 0.0,
        faults + sum(1 for _ in dropped_runs(tokens, pairs)),
    )
