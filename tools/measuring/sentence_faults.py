"""Faults of the sentence set into found prose: a quotation cut off from what leads into it."""

from __future__ import annotations

import re
from collections.abc import Iterator

_QUOTED = re.compile(r"(?<=[a-z][.?!] )[A-Z][^.?!“”\"]*[“\"]([^“”\"]{20,300})[”\"][^.?!“”\"]*[.?!](?=\s|\Z)")


def set_in_sentences(paragraph: str) -> Iterator[tuple[str, str, int, int]]:
    """Each fault that can be set into a paragraph: its check, the paragraph with it, and its place."""
    for found in _QUOTED.finditer(paragraph):
        words = found[1].strip(" ,.")
        if len(words.split()) >= 5:
            alone = f"“{words[0].upper()}{words[1:]}” (Vale, 2009, p. 12)."
            draft = f"{paragraph[: found.start()]}{alone}{paragraph[found.end() :]}"
            yield "quotation-alone", draft, found.start(), found.start() + len(words) + 2
