"""Slips of signs and small words, to be set into found prose: apostrophes, words, hyphens and capitals left out."""

from __future__ import annotations

import re
from collections.abc import Iterator

_POSSESSIVE = re.compile(
    r"(?<![\w'’-])(?!(?:it|that|what|he|she|there|who|let|here|where|how|one)['’])([A-Za-z][a-z]{2,})"
    r"(?:['’]s|(?<=s)['’])(?= [a-z])"
)
_PLURAL = re.compile(
    r"\b(?:many|several|few|these|those|two|three|four|five) ([a-z]{3,}[^s])s(?=[.,]| (?:of|in|that|and) )"
)


def spoil_signs(paragraph: str) -> Iterator[tuple[str, str, int, int]]:
    """Each such slip that can be set into a paragraph: the check, the text, and the place."""
    for slip in drop_apostrophes(paragraph):
        yield "apostrophe", *slip


def drop_apostrophes(paragraph: str) -> Iterator[tuple[str, int, int]]:
    """A paragraph with one possessive bare, or one plain plural with an apostrophe: the text, and the place."""
    for found in _POSSESSIVE.finditer(paragraph):
        bare = found[1] if found[0].endswith(("'", "’")) else f"{found[1]}s"
        yield f"{paragraph[: found.start()]}{bare}{paragraph[found.end() :]}", found.start(), found.start() + len(bare)
    for found in _PLURAL.finditer(paragraph):
        yield (
            f"{paragraph[: found.end(1)]}'s{paragraph[found.end() :]}",
            found.start(1),
            found.end(1) + 2,
        )
