"""Lines of verse that a writer typed line by line, told from prose that an editor broke."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

_CITED = re.compile(r"[ \t]*\n?[ \t]*(?P<cited>\([^()\n]{1,300}\))[.,;:]?\s*\Z")
_ATTRIBUTION = re.compile(r"\n[ \t]*(?:—|–|--).{1,200}\Z")
_BY_LINE = re.compile(
    r"\b(?:lines?|ll?\.|vv?\.|verses?)\s?\d|\b(?:\d{1,2}|[IVX]{1,4})[.:](?:\d{1,2}|[ivx]{1,6})[.:]\d"
    r"|\b\d{1,3}[.:]\d{1,4}\s?[–-]",
    re.IGNORECASE,
)
"""A place given by lines: *line 4*, *3.2.14*, *2.301–3*."""
_BEGINS_LINE = re.compile(r"[\"“‘'*_(\[]{0,3}[A-ZÀ-Þ]")
_ENDS_SENTENCE = re.compile(r"[.!?][\"”’'*_)\]]{0,4}\Z")
_MANY_LINES = 3
_LONGEST_LINE = 64
_NARROWEST_MEASURE = 50
"""No editor breaks prose into narrower lines than this."""


def reads_as_verse(text: str) -> bool:
    r"""Whether the lines of a block quotation are lines of verse, though nothing marks their ends.

    They are all short of a page's measure. Either each begins with a capital, as broken prose seldom does, or the
    citation counts lines and they are too uneven to have been broken by an editor. A sentence a line is prose.

    **Source**: common practice.

    >>> reads_as_verse("The ferry lay below the town,\nThe rope was wet, the lamp was lit,\nAnd nobody was going down.")
    True
    """
    found = _CITED.search(text)
    said = text[: found.start()] if found else text
    lines = [line.strip().removesuffix("\\") for line in _ATTRIBUTION.sub("", said.strip()).split("\n")]
    if len(lines) < 2 or max(map(len, lines)) > _LONGEST_LINE:
        return False
    by_line = bool(found and _BY_LINE.search(found["cited"]))
    uneven = not _may_be_filled(lines)
    if by_line and uneven:
        return True
    if not all(map(_BEGINS_LINE.match, lines)):
        return False
    return by_line or ((uneven or len(lines) >= _MANY_LINES) and not all(map(_ENDS_SENTENCE.search, lines)))


def _may_be_filled(lines: Sequence[str]) -> bool:
    """Whether an editor may have made the lines: none has room for the next one's first word."""
    filled = [len(line) + 1 + len(following.split(" ", 1)[0]) for line, following in pairwise(lines)]
    return min(filled) > max(_NARROWEST_MEASURE, *map(len, lines))
