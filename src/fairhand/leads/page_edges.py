"""Running heads and folios that still stand in the text of a source, at the edges of its pages.

`fairhand.reading.running_heads` takes out what recurs on three pages; a list of references often begins on the last
but one, and a head in its midst would become part of an entry. So pages are looked at more closely here.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Sequence

from fairhand.model.source import Page

_DIGITS = re.compile(r"\d+")
_LONGEST = 90
_SHORTEST = 4
_FEWEST = 8
"""Lines that a page must have before one is said to be short."""
_SHORT = 0.6
"""The share of a full line below which one is short."""
_OUTER = 2
"""Lines at the top and at the foot of a page that may be a head or a folio."""


def drop_edges(pages: Sequence[Page], is_kept: Callable[[str], bool] = lambda _: False) -> list[list[str]]:
    r"""The lines of each page without heads and folios; blank lines stay.

    Args:
        pages: The pages.
        is_kept: Whether a line is known to be no head, however short it is.

    >>> drop_edges([Page("1", "Quays\nand more."), Page("2", "Moorings, 1900.\n2 Lind and others")])
    [['Quays', 'and more.'], ['Moorings, 1900.']]
    """
    lines = [page.text.split("\n") for page in pages]
    edges = [_edges(each) for each in lines]
    seen = Counter(key for each, at in zip(lines, edges, strict=True) for key in {_key(each[n]) for n in at})
    out = []
    for number, (page, each, at) in enumerate(zip(pages, lines, edges, strict=True)):
        gone = {n for n in at if _is_head(each[n], page.label, seen) and not is_kept(each[n])}
        if number and at and _is_short(each[at[0]], each) and not is_kept(each[at[0]]):
            gone.add(at[0])
        out.append([line for n, line in enumerate(each) if n not in gone])
    return out


def _edges(lines: Sequence[str]) -> tuple[int, ...]:
    filled = [n for n, line in enumerate(lines) if line.strip()]
    return tuple(dict.fromkeys((*filled[:_OUTER], *filled[-_OUTER:])))


def _key(line: str) -> str:
    return " ".join(_DIGITS.sub("#", line).casefold().split())


def _is_head(line: str, label: str | None, seen: Counter[str]) -> bool:
    """Whether a line stands on another page's edge too, or is no more than a name beside the page's label."""
    words = line.split()
    text = " ".join(words)
    if not words or len(text) > _LONGEST or "doi" in text.lower() or "http" in text:
        return False
    if label and label in {words[0], words[-1]} and len(_DIGITS.findall(text)) == 1 and text[-1] != ".":
        return True
    key = _key(line)
    return seen[key] > 1 and len(key) >= _SHORTEST and any(map(str.isalpha, key))


def _is_short(line: str, lines: Sequence[str]) -> bool:
    """Whether a page's first line is far shorter than others and ends no sentence: a line within an entry is full."""
    text = line.strip()
    lengths = sorted(len(one) for one in lines if one.strip())
    usual = lengths[len(lengths) * 8 // 10] if len(lengths) > _FEWEST else 0
    return len(text) < _SHORT * usual and text[:1].isupper() and text[-1:].isalpha() and not _DIGITS.search(text)
