"""A reference cut into words, numbers and signs, as the model reads it."""

from __future__ import annotations

import re
from dataclasses import dataclass

_TOKEN = re.compile(
    r"""
    (?P<url> (?:https?://|ftp://|www\.) [^\s<>"“”]{2,400} )
  | (?P<doi> (?:doi\s?:\s?)? 10\.\d{4,9}/ [^\s<>"“”]{1,250} )
  | (?P<eprint> (?:arXiv\s?:\s?)?
      (?: (?<![\d.]) \d{4}\.\d{4,5}(?:v\d)?(?!\d) | [a-z]{2,8}(?:\s?-\s?[a-z]{2,3})?(?:\.[A-Z]{2})?/\d{7}(?!\d) ) )
  | (?P<word> [^\W\d_]+ (?: ['’] [^\W\d_]+ )* )
  | (?P<mixed> [^\W_]+ )
  | (?P<sign> \S )
    """,
    re.VERBOSE | re.IGNORECASE,
)
_CLOSING = ".,;:)]}>'’\""


@dataclass(frozen=True, slots=True)
class Token:
    """One word, number or sign."""

    text: str
    start: int
    end: int
    kind: str
    """``word``, ``mixed`` (digits, or letters with digits), ``sign``, ``url``, ``doi`` or ``eprint``."""
    spaced: bool
    """Whether a space stands before it."""


def cut_reference(text: str) -> tuple[Token, ...]:
    """The tokens of a reference, in order; every sign that is not a space is in one of them.

    >>> [one.text for one in cut_reference("Lind, A. (2001). doi:10.5555/salt.7.")]
    ['Lind', ',', 'A', '.', '(', '2001', ')', '.', 'doi:10.5555/salt.7', '.']
    """
    tokens: list[Token] = []
    at = 0
    while found := _TOKEN.search(text, at):
        kind, end = str(found.lastgroup), found.end()
        if kind in {"url", "doi"}:
            end = found.start() + len(_without_closing(found[0]))
        elif kind == "word" and end < len(text) and (text[end].isdigit()):
            mixed = re.compile(r"[^\W_]+").match(text, found.start())
            if mixed:
                kind, end = "mixed", mixed.end()
        start = found.start()
        tokens.append(Token(text[start:end], start, end, kind, start > 0 and text[start - 1].isspace()))
        at = end
    return tuple(tokens)


def _without_closing(address: str) -> str:
    """An address without the signs that close the sentence or bracket that it stands in."""
    while address[-1:] in _CLOSING and len(address) > 1:
        if address[-1] == ")" and address.count("(") >= address.count(")"):
            break
        address = address[:-1]
    return address
