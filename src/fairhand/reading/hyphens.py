"""Words broken at the end of a line, made whole."""

from __future__ import annotations

import re
from collections.abc import Sequence

_BROKEN = re.compile(
    r"(?<![^\W\d_])(?P<head>[^\W\d_]++)"
    r"(?P<hyphen>\ufffe|(?:[ \t]{0,8}\n)?\u00ad|[-\u2010](?=[ \t]{0,8}\n))(?:[ \t]{0,8}\n[ \t]{0,40})?"
    r"(?P<tail>[^\W\d_]++)"
)
_WORD = re.compile(r"[^\W\d_]+(?:-[^\W\d_]+)*")


def join_hyphens(texts: Sequence[str]) -> tuple[str, ...]:
    r"""The texts with the words that a line's end broke made whole.

    A hyphen that the word has of its own is kept: where the same pair stands hyphenated elsewhere in the texts, or
    where its second half begins with a capital.

    >>> join_hyphens(["a well-known har-\nbour, known to be well-\nknown"])
    ('a well-known harbour, known to be well-known',)
    """
    if not any(_BROKEN.search(text) for text in texts):
        return tuple(texts)
    known = {word.lower() for text in texts for word in _WORD.findall(text) if "-" in word}

    def joined(found: re.Match[str]) -> str:
        head, tail = found["head"], found["tail"]
        keeps = "\u00ad" not in found["hyphen"] and (tail[0].isupper() or f"{head}-{tail}".lower() in known)
        return f"{head}-{tail}" if keeps else head + tail

    return tuple(_BROKEN.sub(joined, text) for text in texts)
