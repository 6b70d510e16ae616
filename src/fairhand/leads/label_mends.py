"""The labels of a reference set right where its own signs tell: what stands in quotation marks is one title.

**Source**: the style manuals: quotation marks in a reference enclose a title, and nothing else.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from fairhand.leads.tokens import Token

_OPENING = {"“": "”", '"': '"', "«": "»", "„": "“"}
_GAP = 4
"""Tokens that may stand between two parts of one title."""
_LEAST = 3
"""Words that a quotation must have to be taken for a title as a whole."""


def mend_labels(tokens: Sequence[Token], labels: Sequence[str]) -> list[str]:
    """The labels with titles made whole.

    >>> from fairhand.leads.tokens import cut_reference
    >>> tokens = cut_reference("Lind. “The Salt (Roads) of Hull.” Quays 3.")
    >>> told = ["author", "o", "o", "title", "title", "o", "place", "o", "title", "place", "o", "o", "o", "o", "o"]
    >>> mend_labels(tokens, told)[2:12]
    ['o', 'title', 'title', 'title', 'title', 'title', 'title', 'title', 'o', 'o']
    """
    out = list(labels)
    for start, end in _quotations(tokens):
        words = [n for n in range(start, end) if tokens[n].kind != "sign"]
        titled = sum(1 for n in words if out[n] == "title")
        if len(words) >= _LEAST and 2 * titled > len(words):
            last = end - 1 if tokens[end - 1].text in {".", ","} else end
            out[start:last] = ["title"] * (last - start)
    return _join_titles(tokens, out)


def _quotations(tokens: Sequence[Token]) -> Iterator[tuple[int, int]]:
    """What stands between two quotation marks that belong together."""
    opened = -1
    closing = ""
    for n, token in enumerate(tokens):
        if opened < 0 and token.text in _OPENING:
            opened, closing = n, _OPENING[token.text]
        elif opened >= 0 and token.text == closing:
            if n > opened + 1:
                yield opened + 1, n
            opened = -1


def _join_titles(tokens: Sequence[Token], labels: list[str]) -> list[str]:
    """Two parts of a title with a few signs or words of no field between them, and no full stop, are one."""
    runs = []
    at = 0
    for label, run in groupby(labels):
        length = len(list(run))
        runs.append((label, at, at + length))
        at += length
    for before, gap, after in zip(runs, runs[1:], runs[2:], strict=False):
        small = gap[2] - gap[1] <= _GAP
        if before[0] == after[0] == "title" and gap[0] == "o" and small and not _parts(tokens, gap[1], gap[2]):
            labels[gap[1] : gap[2]] = ["title"] * (gap[2] - gap[1])
    return labels


def _parts(tokens: Sequence[Token], start: int, end: int) -> bool:
    """Whether a full stop with a space after it, or a quotation mark, stands among the tokens."""
    for n in range(start, end):
        stop = tokens[n].text == "." and n + 1 < len(tokens) and tokens[n + 1].spaced
        if stop or tokens[n].text in {"“", "”", '"', "«", "»"}:
            return True
    return False
