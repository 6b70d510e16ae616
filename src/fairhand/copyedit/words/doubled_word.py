"""The same word twice running."""

from __future__ import annotations

import re

from fairhand.model.span import Span

ALLOWED = frozenset({"had", "that"})
"""Words that English doubles in good sentences: *had had*, *that that*."""
EMPHATIC = frozenset({"far", "long", "many", "much", "never", "really", "very"})
"""Words that are doubled to strengthen them: *many many more*."""
SINGLE = frozenset({"a", "i", "o"})
"""Words of one letter; any other letter that stands alone is a sign."""

_DOUBLED = re.compile(r"(?<![\w'’/-])([^\W\d_]+(?:['’][^\W\d_]+)?)\s+(\1)(?![\w'’/-])", re.IGNORECASE)
_GENUS = re.compile(r"[*_][^\W\d_][\w-]{0,40}\.?\s\Z")


def find_doubled_words(text: str) -> tuple[Span, ...]:
    """The places where a word stands twice with nothing but space between.

    Two capitals (*Pago Pago*, *Sing Sing*) are a name, and so are the italics of a species (*Bison bison bison*); *had
    had* and *that that* are grammar, *very very* is emphasis; *as AS* and *k k* are two things.

    Source: common practice of copy-editing; R. Quirk and others, *A Comprehensive Grammar of the English Language*
    (1985), 7.89, on words repeated for emphasis (from memory).

    >>> [span.of("read the the file") for span in find_doubled_words("read the the file")]
    ['the the']
    """
    return tuple(Span(*match.span()) for match in _DOUBLED.finditer(text) if _is_slip(text, match))


def _is_slip(text: str, match: re.Match[str]) -> bool:
    """Whether the two words are one, set twice by mistake."""
    first, second = match.groups()
    word = first.lower()
    if word in ALLOWED or word in EMPHATIC or (len(word) == 1 and word not in SINGLE):
        return False
    if second[0].isupper():
        return first == second == "I"
    return first[1:] == second[1:] and not _is_species(text, match.start(), first)


def _is_species(text: str, start: int, first: str) -> bool:
    """Whether the word stands in italics after the name of a genus, or is one itself: *Bison bison*."""
    if first[0].isupper():
        return text[max(0, start - 1) : start] in ("*", "_")
    found = _GENUS.search(text, max(0, start - 44), start)
    return found is not None and found[0][1].isupper()
