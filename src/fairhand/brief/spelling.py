"""Which country's spelling a sheet asks for."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Literal

_NAMED = r"(?P<{0}>British|UK|Commonwealth|Australian|American|US|U\.S\.)"
_ASKED = re.compile(
    rf"\b{_NAMED.format('a')}(?: standard)?[ -](?:English|spellings?)\b"
    rf"|\b(?i:spellings?)(?: (?:(?i:must|should|is|are|to|be|follows?|in|the)) ?){{0,4}}\W{{0,3}}{_NAMED.format('b')}\b"
)
_AMERICAN = frozenset({"American", "US", "U.S."})


def find_spelling(text: str) -> tuple[Literal["GB", "US"], int, int] | None:
    """The spelling that ``text`` asks for, with the stretch that names it.

    >>> find_spelling("Spelling should be British."), find_spelling("Use American spelling.")
    (('GB', 0, 26), ('US', 4, 21))
    """
    match = _ASKED.search(text)
    if not match:
        return None
    return ("US" if (match["a"] or match["b"]) in _AMERICAN else "GB"), match.start(), match.end()


def spelling_asked(texts: Iterable[str]) -> Literal["GB", "US", ""]:
    """The spelling that the sheets ask for, the last to speak of it winning; empty where none does."""
    said = [hit[0] for text in texts if (hit := find_spelling(text))]
    return said[-1] if said else ""
