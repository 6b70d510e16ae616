"""What two independent readings of one proof leave unseen, estimated from the marks that both made.

Two marks are the same where they are of one kind and lie at one place. The estimate assumes that the two readings are
independent, and every error as easy to see as the next: faults that both see easily make it too low.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from fairhand.model.proof_mark import ProofSign
from fairhand.model.span import Span

FEWEST_SHARED = 3
"""Below so many marks that both made there is too little to tell. **Source**: common practice."""
TAIL = 0.025
"""On either side of the range: together it holds nineteen times in twenty."""
MOST = 10**6
"""The most errors that are reckoned with."""
KINDS: Mapping[ProofSign, str] = {
    "delete": "words",
    "substitute": "words",
    "insert": "words",
    "transpose": "words",
    "close up": "spaces",
    "space": "spaces",
    "new paragraph": "paragraphs",
    "run on": "paragraphs",
    "italic": "type",
    "upright": "type",
    "bold": "type",
    "capitals": "letters",
    "lower case": "letters",
}
"""The kind of error that each sign is about: one reader strikes out what another writes anew. A query is about none."""


@dataclass(frozen=True, slots=True)
class TwoReadings:
    """What two readings found, and what may be left."""

    first: int
    """Errors that the one found."""
    second: int
    """Errors that the other found."""
    both: int
    """Errors that both found."""

    @property
    def found(self) -> int:
        """Errors that were found at all."""
        return self.first + self.second - self.both

    @property
    def enough(self) -> bool:
        """Whether there is enough to tell."""
        return self.both >= FEWEST_SHARED


def unseen_by_polya(readings: TwoReadings) -> float | None:
    """How many errors neither saw: (A − C)(B − C) / C; None where none was seen by both.

    **Source**: G. Pólya 1976, American Mathematical Monthly 83, p. 42.

    >>> unseen_by_polya(TwoReadings(18, 15, 9)), unseen_by_polya(TwoReadings(30, 25, 5))
    (6.0, 100.0)
    """
    if not readings.both:
        return None
    return (readings.first - readings.both) * (readings.second - readings.both) / readings.both


def range_of_errors(readings: TwoReadings) -> tuple[int, int]:
    """From how many to how many errors there may be in all, never fewer than were found.

    The numbers of errors under which so many shared marks, or fewer, and so many or more, each come about at least once
    in forty times: where the readings are independent the range holds at least nineteen times in twenty, be the errors
    few or many, which the normal range of Chapman's estimate does not.

    **Source**: the hypergeometric distribution with its tails inverted, after Clopper and Pearson 1934.

    >>> range_of_errors(TwoReadings(18, 15, 9))
    (24, 49)
    """
    low = _first(readings.found, lambda n: _at_most(readings, n) >= TAIL)
    high = _first(readings.found, lambda n: _at_least(readings, n) < TAIL) - 1
    return low, max(low, high)


def _first(start: int, holds: Callable[[int], bool]) -> int:
    """The least number from a start on for which something holds that from there on always does."""
    step, low = 1, start - 1
    while not holds(min(low + step, MOST)) and low + step < MOST:
        low, step = low + step, step * 2
    high = min(low + step, MOST)
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if holds(middle) else (middle, high)
    return high


def _at_most(readings: TwoReadings, errors: int) -> float:
    """How often no more marks are shared, were there so many errors."""
    least = max(0, readings.first + readings.second - errors)
    return sum(_chance(readings, errors, both) for both in range(least, readings.both + 1))


def _at_least(readings: TwoReadings, errors: int) -> float:
    """How often as many marks are shared or more, were there so many errors."""
    return sum(
        _chance(readings, errors, both) for both in range(readings.both, min(readings.first, readings.second) + 1)
    )


def _chance(readings: TwoReadings, errors: int, both: int) -> float:
    """How often just so many are shared, were there so many errors: the hypergeometric distribution."""
    return math.exp(
        _log_choose(readings.first, both)
        + _log_choose(errors - readings.first, readings.second - both)
        - _log_choose(errors, readings.second)
    )


def _log_choose(many: int, few: int) -> float:
    if not 0 <= few <= many:
        return -math.inf
    return math.lgamma(many + 1) - math.lgamma(few + 1) - math.lgamma(many - few + 1)


def match_marks(
    first: Sequence[tuple[ProofSign, Span]], second: Sequence[tuple[ProofSign, Span]]
) -> tuple[TwoReadings, tuple[tuple[int, int], ...]]:
    """How many errors each of two readings found, and which marks of theirs are the same, by their indices.

    Each mark is matched once, with the one whose place agrees best; marks of one reading on one error count once.

    >>> marks = [("delete", Span(3, 8)), ("italic", Span(20, 28))]
    >>> match_marks(marks, [("substitute", Span(5, 8)), ("capitals", Span(20, 21))])
    (TwoReadings(first=2, second=2, both=1), ((0, 0),))
    """
    ours, theirs = _once(first), _once(second)
    pairs = sorted(
        (-_shared(first[i][1], second[j][1]), i, j)
        for i in ours
        for j in theirs
        if KINDS[first[i][0]] == KINDS[second[j][0]] and _meet(first[i][1], second[j][1])
    )
    matched: dict[int, int] = {}
    for _, i, j in pairs:
        if i not in matched and j not in matched.values():
            matched[i] = j
    return TwoReadings(len(ours), len(theirs), len(matched)), tuple(sorted(matched.items()))


def _once(marks: Sequence[tuple[ProofSign, Span]]) -> list[int]:
    """The marks that are about an error, each error once."""
    kept: list[int] = []
    for n, (sign, span) in enumerate(marks):
        if sign in KINDS and not any(KINDS[marks[k][0]] == KINDS[sign] and _meet(marks[k][1], span) for k in kept):
            kept.append(n)
    return kept


def _meet(one: Span, other: Span) -> bool:
    """Whether two places are one: they overlap, or touch but for a blank."""
    return one.start <= other.end + 1 and other.start <= one.end + 1


def _shared(one: Span, other: Span) -> int:
    return min(one.end, other.end) - max(one.start, other.start)
