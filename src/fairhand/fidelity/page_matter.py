"""What a page has among its words that nobody quotes: note numbers, line numbers, heads, feet and footnotes.

**Source**: note callouts are dropped silently: APA *Publication Manual*, 7th ed., 8.31; *Chicago Manual of Style*, 17th
ed., 13.7. The rest is common practice.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fairhand.fidelity.prepared import PreparedSource, fold

_CALLOUT = re.compile(r"\d{1,3}")
_BEFORE_CALLOUT = re.compile(r"(?:[^\W\d]|[.,;:!?”’\"'\])\[])$")
_WITHIN_NUMBER = re.compile(r"\d[.,:/–-]$")
_RUN_ON = re.compile(r"(.*[a-z]{2})\d{1,3}", re.DOTALL)
_MARGIN_BEFORE = re.compile(r"(?:^|[ \t]{2}|\t|\n)[ \t]*$")
_MARGIN_AFTER = re.compile(r"[ \t]*(?:\n|$)|(?<=\d)(?:[ \t]{2}|\t)")


def is_page_matter(prepared: PreparedSource, run: Sequence[int]) -> bool:
    """Whether words of the source, given by their indices in a row, are no part of its running text."""
    return _is_callout(prepared, run) or _is_line_number(prepared, run) or _is_head_or_foot(prepared, run)


def has_callout(word: str, of_source: str) -> bool:
    """Whether a word of the source is ``word`` with a note's number run on to it, as text taken from a PDF has it.

    Both are as they are set: a figure belongs to a word that ends in a capital (*CO2*, *B12*).

    >>> has_callout("Surplus", "surplus12"), has_callout("CO", "CO2")
    (True, False)
    """
    found = _RUN_ON.fullmatch(of_source)
    return found is not None and fold(found[1]) == fold(word)


def _is_callout(prepared: PreparedSource, run: Sequence[int]) -> bool:
    """Whether the words are a note's number, set close to the word before it."""
    if not all(_CALLOUT.fullmatch(prepared.words[s]) for s in run):
        return False
    page, span = prepared.place_of(run[0])
    before = prepared.source.pages[page].text[max(0, span.start - 2) : span.start]
    return bool(_BEFORE_CALLOUT.search(before)) and not _WITHIN_NUMBER.search(before)


def _is_line_number(prepared: PreparedSource, run: Sequence[int]) -> bool:
    """Whether the word is a line's number in the margin of verse: every fifth, set apart from its line."""
    word = prepared.words[run[0]]
    if len(run) > 1 or not word.isdecimal() or len(word) > 4 or int(word) % 5:
        return False
    page, span = prepared.place_of(run[0])
    text = prepared.source.pages[page].text
    return bool(
        _MARGIN_BEFORE.search(text[max(0, span.start - 40) : span.start])
        and _MARGIN_AFTER.match(text, span.end)
        and text[max(0, span.start - 1)] != "\n"
    )


def _is_head_or_foot(prepared: PreparedSource, run: Sequence[int]) -> bool:
    """Whether the words are whole lines at the foot or head of a page: a running head, a folio, a footnote."""
    first, last = run[0], run[-1]
    page, begin = prepared.place_of(first)
    last_page, end = prepared.place_of(last)
    at_foot = last + 1 == len(prepared.words) or last + 1 in prepared.starts
    if not (at_foot or first in prepared.starts or page != last_page):
        return False
    before = prepared.source.pages[page].text[: begin.start].rpartition("\n")[2]
    after = prepared.source.pages[last_page].text[end.end :].partition("\n")[0]
    return not any(map(str.isalnum, before + after))
