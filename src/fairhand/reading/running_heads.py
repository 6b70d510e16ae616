"""Running heads and printed page numbers (folios), found because they recur.

Common practice of printing: a head or folio stands in the first or last two lines of a page; from page to page the
folio grows by one and the head stays the same, or takes turns with another.
"""

from __future__ import annotations

import math
import re
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from fairhand.reading.labels import PageLabel, parse_label

_ALONE = re.compile(
    r"\W{0,4}(?:(?:page|p\.|seite)\s{0,2})?([A-Za-z]?\d{1,4}|[ivxlc]{1,7})\W{0,4}(?:(?:of|/)\s{0,2}\d{1,4})?",
    re.IGNORECASE,
)
_AT_START = re.compile(r"([A-Za-z]?\d{1,4}|[ivxlc]{1,7})(?=\s|\W\s)")
_AT_END = re.compile(r"(?<=\s)([A-Za-z]?\d{1,4}|[ivxlc]{1,7})$")
_DIGITS = re.compile(r"\d+")
_LONGEST_HEAD = 110
_FEWEST_PAGES_IN_LINE = 3
"""Pages that a text must have before a number within a line, and not alone in it, is taken for a folio."""


@dataclass(frozen=True, slots=True)
class _Edge:
    """One of the outer lines of a page."""

    line: int
    """Its number among the page's lines."""
    text: str
    outermost: bool


@dataclass(frozen=True, slots=True)
class _Series:
    """Folios that grow by one from page to page: the label is ``prefix`` and page index plus ``ahead``."""

    prefix: str
    roman: bool
    ahead: int

    def label_at(self, index: int) -> PageLabel:
        """The label of the page of an index."""
        return PageLabel(self.prefix, index + self.ahead, "", self.roman)


def printed_folios(texts: Sequence[str]) -> tuple[str | None, ...] | None:
    r"""The folio of each page as printed, or counted on from its neighbours; None where no series of folios is found.

    >>> printed_folios(["Quays\nand more\n31", "Moorings\nand more\n32", "Cranes\nand more\n33"])
    ('31', '32', '33')
    """
    votes: dict[_Series, set[int]] = defaultdict(set)
    for index, text in enumerate(texts):
        for edge in _edges(text):
            for label in _folios_in(edge, len(texts)):
                votes[_Series(label.prefix, label.roman, label.number - index)].add(index)
    with_text = sum(bool(text.strip()) for text in texts)
    need = max(min(3, with_text), 2, math.ceil(with_text / 2))
    main = max(votes, key=lambda series: len(votes[series]), default=None)
    if main is None or len(votes[main]) < need:
        return None
    before = [index for index in range(len(texts)) if main.label_at(index).number < 1]
    front = max(
        (series for series in votes if series.roman and votes[series] & set(before)),
        key=lambda series: len(votes[series] & set(before)),
        default=None,
    )
    out: list[str | None] = []
    for index in range(len(texts)):
        label = main.label_at(index)
        if label.number < 1 and front is not None:
            label = front.label_at(index)
        out.append(str(label) if label.number > 0 else None)
    return tuple(out)


def strip_running_lines(texts: Sequence[str], folios: Sequence[str | None] | None) -> tuple[str, ...]:
    r"""The texts without their running heads and folios.

    >>> strip_running_lines(["Quays\nand more\n31", "Moorings\nand more\n32"], ("31", "32"))
    ('Quays\nand more', 'Moorings\nand more')
    """
    recurring = _recurring_heads(texts)
    out = []
    for index, text in enumerate(texts):
        folio = folios[index] if folios else None
        gone = {
            edge.line
            for edge in _edges(text)
            if (edge.outermost and _head_key(edge.text) in recurring)
            or (folio is not None and any(str(label) == folio for label in _folios_in(edge, len(texts))))
        }
        out.append(
            "\n".join(line for n, line in enumerate(text.split("\n")) if n not in gone).strip("\n") if gone else text
        )
    return tuple(out)


def _edges(text: str) -> Iterator[_Edge]:
    """The first and last two lines of a page that are not blank and short enough to be a head."""
    lines = text.split("\n")
    filled = [n for n, line in enumerate(lines) if line.strip()]
    chosen = dict.fromkeys((*filled[:2], *filled[-2:]))
    for n in chosen:
        line = lines[n].strip()
        if len(line) <= _LONGEST_HEAD:
            yield _Edge(n, line, outermost=n in (filled[0], filled[-1]))


def _folios_in(edge: _Edge, pages: int) -> Iterator[PageLabel]:
    """What could be a folio in one of the outer lines."""
    alone = _ALONE.fullmatch(edge.text)
    if alone:
        label = parse_label(alone[1])
        if label is not None:
            yield label
        return
    if not edge.outermost or pages < _FEWEST_PAGES_IN_LINE:
        return
    for found in (_AT_START.match(edge.text), _AT_END.search(edge.text)):
        label = parse_label(found[1]) if found else None
        if label is not None:
            yield label


def _head_key(line: str) -> str:
    """What two printings of one running head share."""
    return " ".join(_DIGITS.sub("#", line).casefold().split())


def _recurring_heads(texts: Sequence[str]) -> frozenset[str]:
    """The heads that stand on three pages or more, and on pages near each other."""
    seen: dict[str, list[int]] = defaultdict(list)
    for index, text in enumerate(texts):
        for key in {_head_key(edge.text) for edge in _edges(text) if edge.outermost}:
            if any(map(str.isalpha, key)):
                seen[key].append(index)
    return frozenset(
        key for key, at in seen.items() if len(at) > 2 and any(later - earlier <= 2 for earlier, later in pairwise(at))
    )
