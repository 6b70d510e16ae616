"""Places within a source as citations give them: pages, lines, acts, chapters, times.

**Source**: MLA Handbook 9, 6.16–6.26; Publication Manual of the APA 7, 8.13 and 8.28; Chicago Manual of Style 17,
14.147–14.163 and 15.23; common practice for abbreviations.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from fairhand.citing.mention import Locator, LocatorKind
from fairhand.model.span import Span

_DASH = r"\s?(?:--|[-–—‐‑−])\s?"
_ITEM = (
    r"(?:[A-Z]{1,2}-?\d{1,4}|\d{1,5}(?:\.\d{1,3}){0,2}(?:n{1,2}\.?\s?\d{1,3}|[a-hrv](?![a-z]))?|[ivxlcdm]{1,9}(?![a-z])"
    r"|(?:[IVX]|[IVXLC]{2,7})(?![A-Za-z.]))"
)
_RANGE = rf"{_ITEM}(?:{_DASH}{_ITEM}|\s?ff?\b\.?)?"
_YEAR = r"(?:1[4-9]|20)\d\d(?!\d)"
_LIST = rf"{_RANGE}(?:(?:\s*,\s*(?:and\s+|&\s*)?|\s+(?:and|&)\s+)(?!{_YEAR}){_RANGE}){{0,8}}"

_LABELS: tuple[tuple[LocatorKind, str], ...] = (
    ("page", r"(?:pp?\.|pp?(?=\s?\d)|pgs?\.|[Pp]ages?)"),
    ("line", r"(?:ll?\.|vv?\.|[Ll]ines?|verses?)"),
    ("paragraph", r"(?:[Pp]aras?\.?|[Pp]aragraphs?|pars?\.|¶+)"),
    ("chapter", r"(?:[Cc]h(?:ap)?s?\.|[Cc]hapters?)"),
    ("section", r"(?:[Ss]ec(?:t|s)?\.|[Ss]ections?|§+|[Aa]rt\.|[Aa]rticle|cl\.|clause|st\.|stanzas?|cantos?)"),
    ("volume", r"(?:[Vv]ols?\.|[Vv]olumes?|bks?\.|[Bb]ook|pts?\.|[Pp]art)"),
    ("figure", r"(?:[Ff]igs?\.|[Ff]igures?|[Pp]late|pl\.)"),
    ("table", r"(?:[Tt]ables?|tab\.)"),
    ("note", r"(?:nn?\.|[Nn]otes?|[Ff]ootnotes?|fn\.|endnotes?)"),
    ("time", r"(?:min\.|[Tt]imestamp|at)"),
)
_TIME = r"\d{1,2}(?::\d{2}){1,2}"
_LABEL = re.compile(
    rf"(?<![^\W_])(?:{'|'.join(f'(?P<{kind}>{label})' for kind, label in _LABELS)})\s{{0,3}}(?:nos?\.\s?)?"
)
_PLACES = re.compile(_LIST)
_TIMES = re.compile(_TIME)
_ACT_IN_WORDS = re.compile(
    r"[Aa]ct\s(?P<at>[\dIVXivx]{1,4}(?:,?\s(?:[Ss]cene|sc\.)\s[\dIVXivx]{1,4})?(?:,?\s(?:lines?|ll?\.)\s\d{1,4}(?:[-–]\d{1,4})?)?)"
)
_SCENE_LINE = re.compile(
    rf"(?:\d{{1,2}}\.\d{{1,2}}\.|[IVX]{{1,4}}\.\s?[ivx]{{1,5}}\.\s?)\d{{1,4}}(?:{_DASH}\d{{1,4}}(?:\.\d{{1,4}}){{0,2}})?"
    rf"(?:,\s?\d{{1,4}}(?:{_DASH}\d{{1,4}})?){{0,4}}(?![\d.]*\d)"
)
_BOOK_LINE = re.compile(rf"\d{{1,2}}\.\d{{1,4}}(?:{_DASH}\d{{1,4}}(?:\.\d{{1,4}})?)?(?![\d%x×]|\.\d)")
_CLOCK = re.compile(
    rf"\d{{1,2}}:\d{{2}}:\d{{2}}(?:{_DASH}\d{{1,2}}:\d{{2}}:\d{{2}})?|\d{{1,3}}:[0-5]\d{_DASH}\d{{1,3}}:[0-5]\d|(?:0|[1-9]\d):[0-5]\d(?!\d)"
)
_VOLUME_PAGE = re.compile(rf"\d{{1,3}}:\s?{_RANGE}")
_BARE = re.compile(rf"{_LIST}(?![\w%°$€£]|\.\d)")
_ANOTHER_YEAR = re.compile(_YEAR)
_SEPARATOR = re.compile(r"\s*[,;:]?\s*(?:(?:and|especially|esp\.|see|also|here|at|on)\s+)?")

_RANK: dict[LocatorKind, int] = {
    "page": 0, "act": 1, "line": 1, "time": 2, "note": 3, "paragraph": 3, "figure": 4, "table": 4,
    "section": 5, "chapter": 6, "volume": 7,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Place:
    """A locator as read, before it is set in the draft."""

    locator: Locator
    labelled: bool
    """Whether its form says what it is: ``p. 4``, ``1.2.34``; not so for ``4``."""


def read_place(text: str, at: int, end: int) -> Place | None:
    """The single locator that starts at ``at``, or None.

    Args:
        text: Any text.
        at: Code point to start from.
        end: Code point that it may not pass.

    >>> read_place("pp. 3–5", 0, 7).locator.text
    '3–5'
    >>> read_place("1.2.34–36", 0, 9).locator.kind
    'act'
    """
    if label := _LABEL.match(text, at, end):
        kind = label.lastgroup or "page"
        if found := (_TIMES if kind == "time" else _PLACES).match(text, label.end(), end):
            return Place(Locator(kind, found[0].rstrip(), Span(at, found.end())), labelled=True)  # type: ignore[arg-type]
    if found := _ACT_IN_WORDS.match(text, at, end):
        return Place(Locator("act", found["at"], Span(at, found.end())), labelled=True)
    if found := _SCENE_LINE.match(text, at, end):
        return Place(Locator("act", found[0], Span(at, found.end())), labelled=True)
    for kind, form in (("time", _CLOCK), ("volume", _VOLUME_PAGE), ("act", _BOOK_LINE)):
        if found := form.match(text, at, end):
            return Place(Locator(kind, found[0], Span(at, found.end())), labelled=False)  # type: ignore[arg-type]
    if found := _BARE.match(text, at, end):
        return Place(Locator("page", found[0].rstrip(), Span(at, found.end())), labelled=False)
    return None


def read_places(text: str, at: int, end: int) -> tuple[Place | None, int]:
    """All the locators from ``at`` on, made one: the most exact, with the larger parts named beside it.

    Returns:
        The place, or None, and the code point after the last locator read.

    >>> place, _ = read_places("vol. 2, p. 45", 0, 13)
    >>> place.locator.text, place.locator.within
    ('45', 'vol. 2')
    """
    found: list[Place] = []
    after = at
    while True:
        gap = _SEPARATOR.match(text, after, end) if found else None
        start = gap.end() if gap else after
        place = None if found and _ANOTHER_YEAR.match(text, start, end) else read_place(text, start, end)
        if place is None or (found and not place.labelled and not text[after:start].strip()):
            break
        found.append(place)
        after = place.locator.span.end
    if not found:
        return None, at
    best = min(found, key=lambda place: _RANK[place.locator.kind])
    others = [place.locator.span.of(text) for place in found if place is not best]
    locator = best.locator
    span = Span(found[0].locator.span.start, after)
    return Place(Locator(locator.kind, locator.text, span, ", ".join(others)), any(p.labelled for p in found)), after
