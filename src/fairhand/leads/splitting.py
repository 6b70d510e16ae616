"""A list of references split into its entries: by their numbers, or else by the lines on which one begins.

**Source**: common practice of printing. Which lines begin an entry of a list without numbers, a model tells by how
they begin and how the lines before them end.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fairhand.leads.line_features import describe_lines
from fairhand.leads.list_found import Line, ListFound
from fairhand.leads.marks import find_marks
from fairhand.leads.mending import mend_starts
from fairhand.leads.model import tell_starts

_LETTER = re.compile(r"[^\W\d_]")
_BULLET = re.compile(r"[•·▪‣◦*\u2022-]\s+")
_WHOLE = 200
"""Signs from which the lines of a text are whole paragraphs, and not lines of a page."""
_LONGEST_ADDRESS = 300
_BROKEN_NUMBER = re.compile(r"\d[-–]$")
_LOOSE_HYPHEN = re.compile(r"(10\.\d{4,9}/\S*) (?=-\w)")
"""A space that the setting of a page put before a hyphen within an address."""
_ADDRESS_END = re.compile(r"(?:https?://|www\.|doi:?\s?|10\.\d{4,9}/)\S*$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class ListEntry:
    """One entry of a list of references."""

    text: str
    """Its words, on one line, without its number."""
    page: str
    """The label of the page that it begins on, or an empty string."""


def split_list(found: ListFound) -> tuple[ListEntry, ...]:
    r"""The entries of a list, in order.

    >>> lines = (Line("[1] Lind, A.: Salt. Hull", "9"), Line("1999.", "9"), Line("[2] Okafor, B.: Ebb. 2001.", "10"))
    >>> [(one.text, one.page) for one in split_list(ListFound("References", lines))]
    [('Lind, A.: Salt. Hull 1999.', '9'), ('Okafor, B.: Ebb. 2001.', '10')]
    """
    lines = [line for line in found.lines if _LETTER.search(line.text) or len(line.text) > 1]
    texts = [line.text for line in lines]
    marks = find_marks(texts)
    begins = {mark.line: mark.after for mark in marks} or {n: _after_bullet(texts[n]) for n in _begin(lines)}
    return tuple(_entries(lines, begins))


def _begin(lines: Sequence[Line]) -> list[int]:
    """The numbers of the lines on which an entry begins, where nothing numbers them."""
    texts = [line.text for line in lines]
    blank = [line.paragraph for line in lines]
    if sum(blank) * 2 >= len(lines) - 1 or _are_paragraphs(texts):
        parted = sum(blank) >= 2 and not _are_paragraphs(texts)
        return [n for n in range(len(lines)) if not parted or blank[n] or not n]
    if all(_BULLET.match(text) for text in texts[:1]) and sum(bool(_BULLET.match(text)) for text in texts) > 1:
        return [n for n, text in enumerate(texts) if _BULLET.match(text)]
    told = tell_starts(describe_lines(texts, blank))
    return mend_starts(texts, [n for n, begins in enumerate(told) if begins or not n])


def _are_paragraphs(texts: Sequence[str]) -> bool:
    """Whether each line is a whole entry, as in a text that was never set in lines."""
    ended = sum(1 for text in texts if text[-1:] in ".)>" or _ADDRESS_END.search(text))
    long = sum(1 for text in texts if len(text) > _WHOLE)
    return ended >= 0.9 * len(texts) and (long >= 0.15 * len(texts) or len(texts) < 3)


def _after_bullet(text: str) -> int:
    found = _BULLET.match(text)
    return found.end() if found else 0


def _entries(lines: Sequence[Line], begins: dict[int, int]) -> Iterator[ListEntry]:
    starts = sorted(begins)
    for at, end in zip(starts, [*starts[1:], len(lines)], strict=True):
        text = lines[at].text[begins[at] :]
        for line in lines[at + 1 : end]:
            text += line.text if _runs_on(text, line.text) else f" {line.text}"
        if _LETTER.search(text):
            yield ListEntry(_LOOSE_HYPHEN.sub(r"\1", text).strip(), lines[at].page)


def _runs_on(before: str, after: str) -> bool:
    """Whether a line's end broke a row of digits or an address, which go on with no space."""
    before = before[-_LONGEST_ADDRESS:]
    if _BROKEN_NUMBER.search(before) and after[:1].isdigit():
        return True
    return bool(_ADDRESS_END.search(before)) and before[-1:] in "/-_.=?&%" and not after[:1].isupper()
