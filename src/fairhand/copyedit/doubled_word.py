"""The same word twice running."""

from __future__ import annotations

import re

from fairhand.model.span import Span

ALLOWED = frozenset({"had", "that"})
"""Words that English doubles in good sentences: *had had*, *that that*."""

_DOUBLED = re.compile(r"(?<![\w'’/-])([^\W\d_]+(?:['’][^\W\d_]+)?)\s+\1(?![\w'’/-])", re.IGNORECASE)


def find_doubled_words(text: str) -> tuple[Span, ...]:
    """The places where a word stands twice with nothing but space between.

    Two capitals (*Pago Pago*, *Sing Sing*) are a name; *had had* and *that that* are grammar.

    Source: common practice of copy-editing.

    >>> [span.of("read the the file") for span in find_doubled_words("read the the file")]
    ['the the']
    """
    out = []
    for found in _DOUBLED.finditer(text):
        first, second = found.group(1), found.group().split()[-1]
        is_name = first[0].isupper() and second[0].isupper()
        if first.lower() not in ALLOWED and not is_name:
            out.append(Span(found.start(), found.end()))
    return tuple(out)
