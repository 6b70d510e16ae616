"""A reference taken apart into its fields, by a sequence model over its words, numbers and signs.

**Source**: Lafferty, McCallum and Pereira 2001 (conditional random fields); Councill, Giles and Kan 2008 (their use on
references). What it reads rightly is measured in ``tests/outside/test_references.py``.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence
from itertools import groupby

from fairhand.leads.features import describe_tokens
from fairhand.leads.label_mends import mend_labels
from fairhand.leads.model import tell_fields
from fairhand.leads.reference import Part, Reference
from fairhand.leads.tokens import Token, cut_reference

_LONGEST = 4000
"""Signs of a reference that are read; what is longer is none."""
_TWICE = frozenset({"note", "report", "doi", "url", "date", "editor"})
"""Fields that may come more than once with something else between."""


def read_reference(text: str, page: str = "") -> Reference:
    """The reference with its fields.

    Args:
        text: Its words, on one line or several.
        page: The label of the page that it begins on.

    >>> found = read_reference("Lind, A. B. (2001). The salt roads of the north. Journal of Trade, 12(3), 113–128.")
    >>> found.text("author"), found.text("date"), found.text("title")
    ('Lind, A. B.', '2001', 'The salt roads of the north')
    >>> found.text("container"), found.text("volume"), found.text("pages")
    ('Journal of Trade', '12', '113–128')
    """
    raw = " ".join(unicodedata.normalize("NFKC", text[:_LONGEST]).split())
    tokens = cut_reference(raw)
    labels = mend_labels(tokens, tell_fields(describe_tokens(tokens)))
    return Reference(raw, tuple(_parts(raw, tokens, labels)), page)


def _parts(raw: str, tokens: Sequence[Token], labels: Sequence[str]) -> Iterator[Part]:
    """Each run of one field, without the signs around it."""
    numbered = list(zip(tokens, labels, strict=True))
    for label, run in groupby(numbered, key=lambda one: one[1]):
        if label == "o":
            continue
        held = [token for token, _ in run]
        start, end = _trimmed(raw, held[0].start, held[-1].end, label)
        if end > start:
            yield Part(label, start, end)


def _trimmed(raw: str, start: int, end: int, label: str) -> tuple[int, int]:
    """Where the field's own words begin and end: separators at its edges are not of it."""
    while start < end and raw[start] in " ,.;:–—-/&“”\"'‘’«»`":
        if label == "author" and raw[start] in "–—-":
            break
        start += 1
    while end > start and raw[end - 1] in " ,;:–—/&“”\"'‘’«»`([":
        end -= 1
    while end > start and raw[end - 1] == "." and not _abbreviates(raw, start, end, label):
        end -= 1
    return start, end


def _abbreviates(raw: str, start: int, end: int, label: str) -> bool:
    """Whether the stop at a field's end is of its last word: an initial, *al.*, *Jr.*, an abbreviated journal."""
    last = raw[start:end].rstrip(".").rpartition(" ")[2]
    if label in {"author", "editor"}:
        return len(last.rpartition(".")[2]) <= 2 or last.lower() in {"al", "jr", "sr"}
    if label == "container":
        return "." in raw[start : end - 1]
    return label in {"edition", "publisher"} and len(last) <= 3
