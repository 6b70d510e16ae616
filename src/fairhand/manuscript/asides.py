"""Asides and TKs: what the writer left for themselves, told from other brackets by its label."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

LABEL = re.compile(
    r"\\?\[[\s*_]{0,4}(?:(?P<aside>n\.?\s?b\.?)|(?P<matter>\$?(?:tk)+))(?=[\s:.,;–—\\\]*_-]|\Z)[\s*_]{0,4}[:.,;–—-]?[\s*_]{0,4}",
    re.IGNORECASE,
)
"""The opening of a labelled bracket, as far as the remark itself."""

_BARE = re.compile(r"(?<![^\W\d])\$?(?:TK)+(?!\w|-\d)")
_BRACKET = re.compile(r"[\[\]]")
_OWN_TK = re.compile(r"\b[Tt]\w{2,40}[\s-][Kk]\w{2,40}\s\(TK\)")


@dataclass(frozen=True, slots=True)
class Left:
    """Something left in a passage that is not to be printed, as an interval of that passage."""

    kind: Literal["aside", "matter"]
    start: int
    end: int
    text: str
    labelled: bool
    """Whether it stands in a bracket of its own."""


def find_left(scan: str) -> tuple[Left, ...]:
    """Every aside and TK of a passage, in order; a remark that is not closed runs to the passage's end.

    **Source**: the labelled bracket of copy-editors and the printers' TK, "to come"; common practice.

    >>> [left.text for left in find_left("As [NB: who [else]?] said, TK times [sic].")]
    ['who [else]?', '']
    """
    out: list[Left] = []
    at = 0
    for label in LABEL.finditer(scan):
        if label.start() < at:
            continue
        out.extend(_bare_between(scan, at, label.start()))
        end, inner = _closing(scan, label.start())
        text = " ".join(scan[min(label.end(), inner) : inner].split())
        out.append(Left("aside" if label["aside"] else "matter", label.start(), end, text, labelled=True))
        at = end
    out.extend(_bare_between(scan, at, len(scan)))
    return tuple(out)


def _bare_between(scan: str, start: int, end: int) -> list[Left]:
    return [Left("matter", *found.span(), "", labelled=False) for found in _BARE.finditer(scan, start, end)]


def _closing(scan: str, start: int) -> tuple[int, int]:
    """The end of the bracket that opens at ``start``, and the end of what it holds."""
    depth = 0
    for bracket in _BRACKET.finditer(scan, start):
        depth += 1 if bracket.group() == "[" else -1
        if not depth:
            return bracket.end(), bracket.start()
    return len(scan), len(scan)


def is_abbreviation(text: str) -> bool:
    """Whether the draft itself says that TK stands for something, as in ``thymidine kinase (TK)``.

    >>> is_abbreviation("We measured thymidine kinase (TK) twice.")
    True
    """
    return _OWN_TK.search(text) is not None
