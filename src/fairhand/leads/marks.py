"""The numbers or letters that stand before the references of a numbered list."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

_FORMS = (
    re.compile(r"\[(?P<number>\d{1,3})\]\s*"),
    re.compile(r"\((?P<number>\d{1,3})\)\s*"),
    re.compile(r"(?P<number>\d{1,3})[.)](?=\s|$|[^\W\d])\s*"),
    re.compile(r"(?P<number>\d{1,3})(?:\s+(?=[^\W\d_a-z]|[“\"‘])|$)"),
)
"""``[7]``, ``(7)``, ``7.``, and the bare number."""
_KEY = re.compile(r"\[[A-Za-z+]{1,20}\.?,?\s?(?:\d{2,4})?[a-z]?\]\s*")
"""``[Lin01]``: a name and a year."""
_FEWEST = 2
_MOST_LINES = 12
"""Lines of an entry, on average, up to which numbers at their beginnings are those of a list."""
_SKIPPED = 2
"""Numbers that may be missing from the row, because their lines were lost."""


@dataclass(frozen=True, slots=True)
class Marked:
    """Where references begin."""

    line: int
    """The number of the line."""
    after: int
    """Where in the line the reference itself begins, after its mark."""


def find_marks(lines: Sequence[str]) -> tuple[Marked, ...]:
    """The lines that begin a reference of a numbered list, or nothing where the list is not numbered.

    >>> find_marks(["[1] Lind, A.: Salt. Hull", "1999.", "[2] Okafor, B.: Ebb. 2001."])
    (Marked(line=0, after=4), Marked(line=2, after=4))
    """
    keyed = tuple(Marked(n, found.end()) for n, line in enumerate(lines) if (found := _KEY.match(line)))
    rows = [keyed, *(_row(lines, form) for form in _FORMS)]
    best = max(rows, key=len)
    early = bool(best) and best[0].line <= max(2, len(lines) // 6)
    return best if len(best) >= _FEWEST and early and len(lines) <= _MOST_LINES * len(best) else ()


def _row(lines: Sequence[str], form: re.Pattern[str]) -> tuple[Marked, ...]:
    """The longest row of numbers, each the next after the one before, that the lines begin with in one form."""
    seen = [(n, int(found["number"]), found.end()) for n, line in enumerate(lines) if (found := form.match(line))]
    best: list[tuple[int, int, int]] = []
    for start in range(min(len(seen), 12)):
        row = [seen[start]]
        for one in seen[start + 1 :]:
            if 0 < one[1] - row[-1][1] <= 1 or (
                0 < one[1] - row[-1][1] <= 1 + _SKIPPED and _is_next(seen, one, row[-1][1])
            ):
                row.append(one)
        if len(row) > len(best):
            best = row
    return tuple(Marked(n, after) for n, _, after in best)


def _is_next(seen: Sequence[tuple[int, int, int]], one: tuple[int, int, int], before: int) -> bool:
    """Whether no line further down has a number between: then those in between were lost."""
    return not any(line > one[0] - 40 and before < number < one[1] for line, number, _ in seen)
