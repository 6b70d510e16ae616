"""Words broken at the end of a line, made whole."""

from __future__ import annotations

import re
from collections.abc import Sequence

_BROKEN = re.compile(
    r"[-\u2010\u00ad\ufffe](?:(?<=[\u00ad\ufffe])|(?=[ \t]{0,8}\n))(?<=[^\W\d_].)"
    r"(?:[ \t]{0,8}\n[ \t]{0,40})?(?=[^\W\d_])"
)
"""Begins with the hyphen, so that nothing else of a text is looked at twice."""
_OPENS_LINE = re.compile(r"(?<=[^\W\d_])[ \t]{0,8}\n\u00ad(?=(?:[ \t]{0,8}\n[ \t]{0,40})?[^\W\d_])")
_JOINED = re.compile(r"-(?<=[^\W\d_]-)[^\W\d_]++")
_LETTERS = re.compile(r"[^\W\d_]++")


def join_hyphens(texts: Sequence[str]) -> tuple[str, ...]:
    r"""The texts with the words that a line's end broke made whole.

    A hyphen that the word has of its own is kept: where the same pair stands hyphenated elsewhere in the texts, or
    where its second half begins with a capital.

    >>> join_hyphens(["a well-known har-\nbour, known to be well-\nknown"])
    ('a well-known harbour, known to be well-known',)
    """
    texts = [_OPENS_LINE.sub("\u00ad", text) if "\n\u00ad" in text else text for text in texts]
    if not any(_BROKEN.search(text) for text in texts):
        return tuple(texts)
    known = {
        f"{_letters_before(text, found.start())}{found[0]}".lower()
        for text in texts
        for found in _JOINED.finditer(text)
    }

    def joined(found: re.Match[str]) -> str:
        head = _letters_before(found.string, found.start())
        following = _LETTERS.match(found.string, found.end())
        tail = following[0] if following else ""
        keeps = found[0][0] != "\u00ad" and (tail[:1].isupper() or f"{head}-{tail}".lower() in known)
        return "-" if keeps else ""

    return tuple(_BROKEN.sub(joined, text) for text in texts)


def _letters_before(text: str, end: int) -> str:
    """The letters that stand unbroken before a place."""
    start = end
    while start and text[start - 1].isalpha():
        start -= 1
    return text[start:end]
