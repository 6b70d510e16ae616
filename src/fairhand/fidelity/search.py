"""Where a whole quotation stands in a source: its parts together, in order and not too far apart."""

from __future__ import annotations

from collections.abc import Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, replace

from fairhand.fidelity.passages import FEW_WORDS, Effort, Passage, find_passages
from fairhand.fidelity.prepared import PreparedSource
from fairhand.fidelity.quoted import Quoted, Segment

_WORDS_APART = 400
"""How far apart in the source two parts of one quotation may stand: somewhat over a page."""
_WORDS_APART_SHORT = 150
"""The same for a part of a few words, which may stand anywhere by chance."""
_FEW = 4
_MOST_TRIED = 40


@dataclass(frozen=True, slots=True)
class Placing:
    """Where all the segments of a quotation stand; None for a segment that was not found."""

    passages: tuple[Passage | None, ...]

    @property
    def faults(self) -> int:
        """Faults over all segments."""
        return sum(100 if p is None else p.faults + (0 if p.in_order else 50) for p in self.passages)


def place(
    prepared: PreparedSource, quoted: Quoted, wanted: Sequence[int] = (), effort: Effort = "far"
) -> Placing | None:
    """The best place of a quotation in a source, one on a ``wanted`` page (by index) where several are as good.

    The ``effort`` is how far from its exact words a passage may be looked for.
    """
    effort = effort if quoted.length > FEW_WORDS else "exact"
    by_length = sorted(range(len(quoted.segments)), key=lambda k: -len(quoted.segments[k].plain))
    for anchor in by_length if effort != "exact" else by_length[:1]:
        segment = quoted.segments[anchor]
        found = find_passages(prepared, segment, effort=effort)
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
        found = find_passages(prepared, segment, high.end, limit, effort=effort)
        passages[k] = min(found, key=lambda p: (p.faults, p.start), default=None)
        high = passages[k] or high
    for k in range(anchor - 1, -1, -1):
        segment = quoted.segments[k]
        limit = max(0, low.start - most_apart(segment))
        found = find_passages(prepared, segment, limit, low.start, effort=effort)
        passages[k] = min(found, key=lambda p: (p.faults, -p.start), default=None)
        low = passages[k] or low
    for k, segment in enumerate(quoted.segments):
        if passages[k] is None and len(segment.plain) >= FEW_WORDS:
            astray = find_passages(prepared, segment, effort="exact")
            passages[k] = replace(astray[0], in_order=False) if astray else None
    return Placing(tuple(passages))


def most_apart(segment: Segment) -> int:
    """How many words of the source may lie between a segment and the one beside it."""
    return _WORDS_APART if len(segment.plain) > _FEW else _WORDS_APART_SHORT
