"""How far each manual writes out the second number of a range of pages."""

from __future__ import annotations

import re

_RANGE = re.compile(r"(?<![\w.–-])(\d{1,5})\s?[–—‐‑-]\s?(\d{1,5})(?![\w.–-])")
_WRITTEN_OUT = 100
"""Below it every number is written out."""
_SINGLE = 10


def second_number(first: int, last: int, manual: str) -> str:
    """The second number of a range as the manual writes it.

    **Source**: MLA 9, 2.139; APA 7, 8.25 and 9.32; Chicago 17, 9.61 (from memory), with the ranges of check-values,
    section 3, as examples.

    >>> [second_number(150, 159, manual) for manual in ("mla", "apa", "chicago")]
    ['59', '159', '59']
    >>> second_number(107, 108, "chicago"), second_number(103, 104, "mla"), second_number(100, 104, "chicago")
    ('8', '04', '104')
    """
    whole, start = str(last), str(first)
    if manual not in ("mla", "chicago") or first < _WRITTEN_OUT or len(whole) != len(start):
        return whole
    if manual == "chicago" and first % _WRITTEN_OUT == 0:
        return whole
    shared = next((n for n, (a, b) in enumerate(zip(start, whole, strict=True)) if a != b), len(whole))
    fewest = 1 if manual == "chicago" and first % _WRITTEN_OUT < _SINGLE else 2
    return whole[min(shared, len(whole) - fewest) :]


def misset_ranges(pages: str, manual: str) -> list[tuple[str, str]]:
    """The ranges in a list of pages whose second number the manual writes otherwise, each with that form.

    >>> misset_ranges("12–14, 221–8", "apa")
    [('221–8', '221–228')]
    """
    found = []
    for one in _RANGE.finditer(pages):
        start, end = one[1], one[2]
        whole = start[: len(start) - len(end)] + end if len(end) < len(start) else end
        if int(whole) <= int(start):
            continue
        right = second_number(int(start), int(whole), manual)
        if right != end:
            found.append((one[0], f"{start}{one[0][len(start) : len(one[0]) - len(end)]}{right}"))
    return found
