"""Pairs of quotation marks and brackets in a passage, told from apostrophes, primes and inch marks.

One pass from left to right over the marks, with a stack of what is open. A mark inside something that closes is closed
with it; what nothing closes is, of a bracket, no bracket, and of a quotation, one that ends unclosed.
"""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections import defaultdict
from dataclasses import dataclass

_MARKS = re.compile(r"""[()\[\]"“”„‟«»'‘’‚‹›]""")
_FAMILY = {
    **dict.fromkeys('"“”„‟', "double"),
    **dict.fromkeys("'‘’‚", "single"),
    **dict.fromkeys("«»", "guillemet"),
    **dict.fromkeys("‹›", "single guillemet"),
}
_DEEPEST = 8
"""Quotations of one kind of mark within each other; further marks open nothing."""
_POSSESSED = 2
"""Words at most between a plural's apostrophe and a closing mark after the thing possessed."""
_SHUTS = {")": "(", "]": "["}
_LEFT = frozenset("([{—–-/…\"“‘'«‹„‚")
_RIGHT = frozenset(")]}.,;:!?—–-/…\"”’'»›")
_ELISION = re.compile(r"(?:tis|twas|twere|twill|em|n|\d\ds?)(?!\w)", re.IGNORECASE)
_FEET = re.compile(r"\d\s?['’′]\s?\d{1,2}(?:\.\d)?\Z|\d\s?['’′]-\d{1,2}\Z")
_CLIPPED = re.compile(r"\win\Z")
_AFTER_QUOTATION = re.compile(
    r"\s(?:a|an|and|are|as|at|be|but|by|can|could|did|do|does|for|from|had|has|have|he|her|his|if|in|into|is|it|like|may|"
    r"might|must|nor|not|of|on|or|over|she|should|so|than|that|the|their|then|they|though|through|to|under|was|we|were|"
    r"what|when|where|whether|which|while|who|whose|will|with|without|would|yet|said|says|wrote|writes)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Pair:
    """A bracketed or quoted piece of a passage."""

    mark: str
    """The opening mark."""
    start: int
    """Place of the opening mark."""
    end: int
    """Place after the closing mark."""
    closed: bool = True

    @property
    def quoted(self) -> bool:
        """Whether it is a quotation."""
        return self.mark not in "(["

    @property
    def inner_start(self) -> int:
        """Place after the opening mark."""
        return self.start + 1

    @property
    def inner_end(self) -> int:
        """Place of the closing mark, or the end where there is none."""
        return self.end - 1 if self.closed else self.end


@dataclass(slots=True)
class _Open:
    """Something open, with the marks of its own kind directly within it."""

    family: str
    mark: str
    at: int
    closer: int = -1
    """Of a single quotation, where its closing mark was foreseen."""
    first_within: int | None = None
    """Where the first quotation of its own family opened directly within it."""


def find_pairs(scan: str) -> tuple[Pair, ...]:
    r"""The brackets and quotations of a passage, properly nested, outer first.

    **Source**: the manuals' practice for marks (double outside in American, single outside in British usage); telling
    apostrophes apart is our own rule: between letters, before a clipped word or decade, and after a plural's *s*
    where a word that is no function word follows.

    >>> [scan[p.start:p.end] for scan in ["The workers’ ‘rock ’n’ roll’ (5'10\") ran."] for p in find_pairs(scan)]
    ['‘rock ’n’ roll’', '(5\'10")']
    """
    return _Scanner(scan).run()


class _Scanner:
    """The one pass."""

    def __init__(self, scan: str) -> None:
        self.scan = scan
        self.stack: list[_Open] = []
        self.open: defaultdict[str, list[_Open]] = defaultdict(list)
        self.pairs: list[Pair] = []
        self.strong: list[int] = []
        self.weak: list[int] = []
        self.openers: list[int] = []

    def run(self) -> tuple[Pair, ...]:
        marks = list(_MARKS.finditer(self.scan))
        for found in marks:
            if _FAMILY.get(found.group()) == "single":
                self._sort_single(found.start(), found.group())
        for found in marks:
            at, mark = found.start(), found.group()
            family = _FAMILY.get(mark)
            if mark in "([":
                self._push(mark, mark, at)
            elif mark in _SHUTS:
                self._close(_SHUTS[mark], at)
            elif family == "single":
                self._single(at, mark)
            elif family == "double":
                self._double(at, mark)
            elif family:
                self._guillemet(at, mark, family)
        while self.stack:
            self._abandon(len(self.scan))
        return tuple(sorted(self.pairs, key=lambda pair: (pair.start, -pair.end)))

    def _before(self, at: int) -> str:
        return self.scan[at - 1] if at else " "

    def _after(self, at: int) -> str:
        return self.scan[at + 1] if at + 1 < len(self.scan) else " "

    def _begins(self, at: int) -> bool:
        """Whether the mark stands where a word may begin."""
        before = self._before(at)
        return before.isspace() or before in _LEFT

    def _ends(self, at: int) -> bool:
        """Whether the mark stands where a word may end."""
        after = self._after(at)
        return after.isspace() or after in _RIGHT or after in "(["

    def _looks_open(self, at: int) -> bool:
        """Whether the mark can hardly be a closing one."""
        before, after = self._before(at), self._after(at)
        return (before.isspace() or before in "([—–") and (after.isalnum() or after in "'‘“[$£€")

    def _push(self, family: str, mark: str, at: int, closer: int = -1) -> None:
        if len(self.open[family]) == _DEEPEST and family not in "([":
            return
        if self.stack and self.stack[-1].family == family and self.stack[-1].first_within is None:
            self.stack[-1].first_within = at
        self.stack.append(_Open(family, mark, at, closer))
        self.open[family].append(self.stack[-1])

    def _close(self, family: str, at: int) -> None:
        """Close the innermost open mark of the family, and with it whatever is open inside."""
        if not self.open[family]:
            return
        while self.stack[-1].family != family:
            self._abandon(at)
        top = self._pop()
        if at > top.at + 1:
            self.pairs.append(Pair(top.mark, top.at, at + 1))

    def _pop(self) -> _Open:
        top = self.stack.pop()
        self.open[top.family].pop()
        return top

    def _abandon(self, end: int) -> None:
        """Give up the innermost open mark: nothing closes it before ``end``."""
        top = self._pop()
        if top.mark in "(['":
            return
        stop = end if top.first_within is None else top.first_within
        stop = top.at + len(self.scan[top.at : stop].rstrip())
        if stop > top.at + 1:
            self.pairs.append(Pair(top.mark, top.at, stop, closed=False))

    def _double(self, at: int, mark: str) -> None:
        opened = bool(self.open["double"])
        if mark in "„‟" or (mark == "“" and not (opened and self._ends_quoted(at))):
            self._push("double", mark, at)
        elif mark != '"':
            if opened:
                self._close("double", at)
            elif self._begins(at) and self._after(at).isalnum():
                self._push("double", mark, at)
        elif self._before(at).isdigit() and (not opened or _FEET.search(self.scan, max(0, at - 8), at)):
            return
        elif opened and not self._looks_open(at):
            self._close("double", at)
        elif not self._after(at).isspace() and (self._looks_open(at) or not self._before(at).isalnum()):
            self._push("double", mark, at)

    def _ends_quoted(self, at: int) -> bool:
        """Whether ``“`` closes here, as it does after ``„`` or by a slip of the keyboard."""
        return self._ends(at) and not self._begins(at)

    def _guillemet(self, at: int, mark: str, family: str) -> None:
        if not self.open[family]:
            if mark in "«‹" or (self._begins(at) and not self._after(at).isspace()):
                self._push(family, mark, at)
        elif self.open[family][-1].mark == mark:
            self._push(family, mark, at)
        else:
            self._close(family, at)

    def _sort_single(self, at: int, mark: str) -> None:
        """Note whether a single mark may open, must close, or may be a plural's apostrophe."""
        before, after = self._before(at), self._after(at)
        if mark in "‘‚" or (mark == "'" and self._begins(at) and (after.isalnum() or after in '"“[…')):
            if not _ELISION.match(self.scan, at + 1):
                self.openers.append(at)
        elif before in "nN" and self.scan[at - 2 : at - 1] in ("'", "’"):
            return
        elif not before.isspace() and self._ends(at):
            possessive = before in "sS" and not _AFTER_QUOTATION.match(self.scan, at + 1)
            clipped = _CLIPPED.search(self.scan, max(0, at - 3), at)
            doubtful = after.isspace() and self.scan[at + 2 : at + 3].isalpha() and (possessive or clipped)
            (self.weak if doubtful else self.strong).append(at)

    def _single(self, at: int, mark: str) -> None:
        place = bisect_left(self.openers, at)
        if place < len(self.openers) and self.openers[place] == at:
            following = self.openers[place + 1] if place + 1 < len(self.openers) else len(self.scan)
            closer = self._first(self.strong, at, len(self.scan))
            if closer < 0 or closer > following:
                nearer = self._first(self.weak, at, following)
                while (later := self._first(self.weak, nearer, following)) >= 0 <= nearer:
                    if len(self.scan[nearer + 1 : later].split()) > _POSSESSED:
                        break
                    nearer = later
                closer = nearer if nearer >= 0 and (mark == "‘" or closer >= 0) else closer
            if closer >= 0 or mark == "‘":
                self._push("single", mark, at, closer)
        elif self.open["single"] and self.open["single"][-1].closer == at:
            self._close("single", at)

    @staticmethod
    def _first(places: list[int], after: int, before: int) -> int:
        """The first of ``places`` strictly between the two, or -1."""
        index = bisect_right(places, after)
        return places[index] if index < len(places) and places[index] < before else -1
