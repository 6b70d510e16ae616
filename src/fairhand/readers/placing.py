"""Where what a reader wrote belongs in the draft as it now is: found again by its words and by its paragraph.

The text as it was sent tells which paragraph a remark stood in; the one matcher of the program tells which that is now.
A place is *sure* where the words stand unchanged in that paragraph, or elsewhere with what stood around them, and no
other place comes near; otherwise it is uncertain, and said to be; where nothing of it is left, it has no place.

**Source**: the measures of agreement are our own, those of ``reading.found_again``.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from fairhand.manuscript.matching import match_texts
from fairhand.model.span import Span
from fairhand.readers.gathering import ReaderRemark
from fairhand.reading.found_again import AHEAD, ENOUGH, Place, list_whole, pick_surest

ENOUGH_AT_HOME = 12
"""Letters that must agree for a place to be sure within the paragraph where the words stood."""
_LIKE = 70.0
"""Likeness in hundredths from which changed words, with what stood around them, are shown as an uncertain place."""
_WORD = re.compile(r"\S+")


@dataclass(frozen=True, slots=True)
class _Lines:
    """The lines of a text."""

    text: str
    spans: tuple[Span, ...]

    def at(self, place: int) -> int:
        """The number of the line that holds a place."""
        return max(0, bisect_right([span.start for span in self.spans], place) - 1)


def place_remarks(remarks: Sequence[ReaderRemark], present: str, sent: str = "") -> tuple[Place | None, ...]:
    r"""For each remark where it belongs in the present text; None where nothing of it is left there.

    Args:
        remarks: The remarks.
        present: The draft as it now reads, a paragraph a line.
        sent: The text as it was sent, where it is known, a paragraph a line.

    >>> now = "Then the tide ran out."
    >>> found = place_remarks([ReaderRemark("comment", "Which?", "tide", "While the ", " ran off.")], now)
    >>> found[0].span.of(now), found[0].sure
    ('tide', False)
    """
    new, old = _lines(present), _lines(sent)
    homes: dict[int, tuple[int, ...]] = {}
    if sent:
        for one in match_texts([span.of(sent) for span in old.spans], [span.of(present) for span in new.spans]):
            homes.update(dict.fromkeys(one.old, one.new))
    return tuple(_place(remark, new, old, homes) for remark in remarks)


def _lines(text: str) -> _Lines:
    return _Lines(text, tuple(Span(*found.span()) for found in re.finditer(r"[^\n]*\S[^\n]*", text)))


def _place(remark: ReaderRemark, new: _Lines, old: _Lines, homes: dict[int, tuple[int, ...]]) -> Place | None:
    said = remark.exact, remark.before, remark.after
    was = _best(list_whole(old.text, *said)) if old.spans else None
    home = homes.get(old.at(was.start), ()) if was else ()
    hits = list_whole(new.text, *said)
    here = [hit for hit in hits if new.at(hit[0].start) in home]
    around = remark.before + remark.after
    surest = pick_surest(hits, remark.exact, around)
    if surest and not surest.sure and here:
        surest = pick_surest(here, remark.exact, around, ENOUGH_AT_HOME)
    if surest:
        return surest
    if was and home:
        return _follow(was, old, new, home)
    return _likest(remark, new.text)


def _best(hits: Sequence[tuple[Span, int]]) -> Span | None:
    return max(hits, key=lambda hit: hit[1])[0] if hits else None


def _follow(was: Span, old: _Lines, new: _Lines, home: Sequence[int]) -> Place | None:
    """Where the words went that are no longer as they were: those of them that are left, else what follows them."""
    from rapidfuzz.distance import LCSseq

    line = old.spans[old.at(was.start)]
    before = [Span(*found.span()).shifted(line.start) for found in _WORD.finditer(line.of(old.text))]
    after = [
        Span(*found.span()).shifted(new.spans[n].start)
        for n in home
        for found in _WORD.finditer(new.spans[n].of(new.text))
    ]
    if not after:
        return None
    codes = LCSseq.opcodes([one.of(old.text) for one in before], [one.of(new.text) for one in after])
    ways = {
        code.src_start + step: code.dest_start + step
        for code in codes
        if code.tag == "equal"
        for step in range(code.src_end - code.src_start)
    }
    inside = [n for n, span in enumerate(before) if span.overlaps(was)]
    left = [ways[n] for n in inside if n in ways]
    if left:
        return Place(Span(after[left[0]].start, after[left[-1]].end), sure=False)
    later = next((ways[n] for n in range(inside[-1] + 1 if inside else 0, len(before)) if n in ways), len(after) - 1)
    return Place(after[later], sure=False)


def _likest(remark: ReaderRemark, text: str) -> Place | None:
    """The likest stretch of the text to the words with what stood around them; None where none is like."""
    from rapidfuzz.fuzz import partial_ratio_alignment

    head, tail = remark.before[-AHEAD * 4 :], remark.after[: AHEAD * 4]
    wanted = head + remark.exact + tail
    if len(wanted.strip()) < ENOUGH or not text:
        return None
    found = partial_ratio_alignment(wanted, text, score_cutoff=_LIKE)
    if found is None or len(text) < len(wanted):
        return None
    start, end = min(found.dest_start + len(head), found.dest_end - 1), max(found.dest_end - len(tail), 1)
    return Place(Span(start, max(start + 1, end)), sure=False)
