"""The passages of a source that agree with one part of a quotation, exactly or nearly.

Method: runs of words that both share are gathered in bands of equal distance, and each band's stretch of the source is
aligned word by word (seed and extend: Altschul and others 1990). Where no run of words is left whole, as in a bad scan,
the stretch is sought by its letters (``rapidfuzz``, the best partial ratio).
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice
from typing import Literal

from fairhand.fidelity.alignment import MOST_FOR_A_BRACKET, Pair, align, dropped_runs
from fairhand.fidelity.prepared import PreparedSource
from fairhand.fidelity.quoted import Segment, Token

Effort = Literal["exact", "near", "far"]
"""How a part of a quotation is looked for: its exact words; words near them, by shared runs; and by its letters too."""
FEW_WORDS = 3
"""A quotation of so few words is found exactly or not at all."""
_MIDDLING = 5
"""With so few words, one that is changed may leave no run of three whole."""
_BANDS = (16, 160)
"""Widths of the bands of distances in which a segment's runs belong together: the wider one bridges words dropped."""
_LEAST_COVERED = 0.15
"""Share of a segment's words that shared runs must cover before a stretch is looked at."""
_MOST_SEEDS = 200
"""Occurrences of one run of words that are looked at; one that recurs oftener proves nothing."""
_ENOUGH_SEEDS = 60
"""Of a long block quotation not every run is looked for."""
_MOST_STRETCHES = 6
_LIKE_ENOUGH = 0.6
_LIKE_ENOUGH_MIDDLING = 0.7
"""Likeness from which a passage is the quotation's source; the second for short ones, whose words stand anywhere."""
_DROP_COSTS = 0.5
"""What a stretch dropped takes from the likeness, in words."""
_SHORTISH = 9
_LETTERS_OF = 60
"""Words of a long quotation by whose letters it is sought."""


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
    """How far the words agree, letter by letter where they differ, 1 at most."""
    faults: int = 0
    """Words changed or added, and stretches dropped."""
    in_order: bool = True
    """False where it had to be looked for outside its place between the other parts."""


def find_passages(
    prepared: PreparedSource, segment: Segment, start: int = 0, end: int | None = None, effort: Effort = "far"
) -> list[Passage]:
    """The passages between two words of the source that agree with a segment; inexact ones only where none is exact."""
    end = len(prepared.words) if end is None else end
    length = len(segment.tokens)
    if len(segment.plain) == length:
        exact = [
            Passage(at, at + length, tuple((k, at + k) for k in range(length)))
            for at in prepared.occurrences(segment.plain, start, end)
        ]
        if exact or effort == "exact":
            return exact
    found = _agreeing(prepared, segment, _stretches_by_runs(prepared, segment, start, end), effort)
    if not found and effort == "far" and len(segment.plain) > _MIDDLING:
        found = _agreeing(prepared, segment, _stretch_by_letters(prepared, segment, start, end), effort)
    return found


def _agreeing(
    prepared: PreparedSource, segment: Segment, stretches: Iterator[tuple[int, int]], effort: Effort
) -> list[Passage]:
    """The passages in some stretches of the source that agree with a segment well enough to be its source."""
    out = []
    for low, high in dict.fromkeys(stretches):
        if not _is_worth_aligning(segment.plain, prepared.words[low:high], effort):
            continue
        passage = _passage(prepared, segment.tokens, low, high)
        if passage is None:
            continue
        if effort == "exact" or len(segment.plain) <= FEW_WORDS:
            agrees = not passage.faults
        else:
            enough = _LIKE_ENOUGH if len(segment.plain) > _SHORTISH else _LIKE_ENOUGH_MIDDLING
            agrees = passage.likeness >= enough
        if agrees:
            out.append(passage)
    return out


def _is_worth_aligning(plain: Sequence[str], words: Sequence[str], effort: Effort) -> bool:
    """Whether enough of a segment's words stand in a stretch in their order, or enough of its letters side by side."""
    from rapidfuzz.distance import LCSseq
    from rapidfuzz.fuzz import partial_ratio

    in_order = LCSseq.similarity(plain, words) / len(plain)
    if in_order >= _LIKE_ENOUGH or effort == "exact":
        return in_order >= _LIKE_ENOUGH
    return partial_ratio(" ".join(plain), " ".join(words), score_cutoff=100 * _LIKE_ENOUGH) > 0


def _stretches_by_runs(prepared: PreparedSource, segment: Segment, start: int, end: int) -> Iterator[tuple[int, int]]:
    """The stretches of the source in which most of a segment's words could stand, best first.

    Runs that lie equally far ahead in source and segment belong together; where words were dropped the distance jumps,
    so a wider band of distances is tried when no narrow one holds most of the segment.
    """
    length = len(segment.tokens)
    size = min(2 if length <= _MIDDLING else 3, _longest_run(segment.tokens))
    hits = _shared_runs(prepared, segment.tokens, size, start, end)
    for width in _BANDS:
        bands: dict[int, list[tuple[int, int]]] = defaultdict(list)
        for at, k in hits:
            # Each distance falls into two bands that overlap by half, so that no band's edge parts a passage.
            bands[2 * ((at - k) // width)].append((at, k))
            bands[2 * ((at - k + width // 2) // width) + 1].append((at, k))
        covered = {band: len({k + n for _, k in found for n in range(size)}) for band, found in bands.items()}
        best = sorted(covered, key=lambda band: (-covered[band], band))[:_MOST_STRETCHES]
        for band in best:
            if covered[band] >= _LEAST_COVERED * length:
                ahead = [at - k for at, k in bands[band]]
                low = min(ahead) - MOST_FOR_A_BRACKET
                yield max(start, low), min(end, max(ahead) + length + MOST_FOR_A_BRACKET)
        if best and covered[best[0]] >= _LIKE_ENOUGH * length:
            return


def _longest_run(tokens: Sequence[Token]) -> int:
    """The most words in a row that are the source's own."""
    longest = run = 0
    for token in tokens:
        run = run + 1 if token.kind == "plain" else 0
        longest = max(longest, run)
    return longest


def _shared_runs(
    prepared: PreparedSource, tokens: Sequence[Token], size: int, start: int, end: int
) -> list[tuple[int, int]]:
    """Places (word of the source, token) where ``size`` words in a row agree."""
    hits: list[tuple[int, int]] = []
    for k in range(0, len(tokens) - size + 1, 1 + len(tokens) // _ENOUGH_SEEDS):
        run = tokens[k : k + size]
        if all(token.kind == "plain" for token in run):
            found = prepared.occurrences(tuple(token.word for token in run), start, end)
            hits.extend((at, k) for at in islice(found, _MOST_SEEDS))
    return hits


def _stretch_by_letters(prepared: PreparedSource, segment: Segment, start: int, end: int) -> Iterator[tuple[int, int]]:
    """The stretch of the source whose letters come nearest to a segment's, where any come near."""
    from rapidfuzz.fuzz import partial_ratio_alignment

    sought = " ".join(segment.plain[:_LETTERS_OF])
    begin = prepared.offsets[start]
    line = prepared.line[begin : prepared.offsets[end] + 1]
    if len(line) < len(sought):
        return
    found = partial_ratio_alignment(sought, line, score_cutoff=100 * _LIKE_ENOUGH)
    if found is not None:
        at = prepared.word_at(begin + found.dest_start)
        low, high = at - MOST_FOR_A_BRACKET, at + len(segment.tokens) + MOST_FOR_A_BRACKET
        yield max(start, low), min(end, high)


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
    dropped = sum(1 for _ in dropped_runs(tokens, pairs))
    return Passage(
        own[0] + low,
        own[-1] + 1 + low,
        tuple((k, None if s is None else s + low) for k, s in pairs),
        (agree - _DROP_COSTS * dropped) / claimed,
        faults + dropped,
    )
