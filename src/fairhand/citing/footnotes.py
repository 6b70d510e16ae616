"""Citations in the footnotes of a draft, full and short.

**Source**: Chicago Manual of Style 17, 14.19–14.36; common practice.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.citing.known import Known
from fairhand.citing.locators import Place, read_places
from fairhand.citing.mention import Cite, Mention
from fairhand.citing.names import read_who
from fairhand.citing.parenthesis import PREFIX, TITLE, Read, ends_there, read_parenthesis
from fairhand.model.span import Span

_LABEL = re.compile(r"\s*(?:\[\^[^\]\n]{1,60}\]:|\d{1,3}\.)?\s*")
_IBID = re.compile(r"ibid\.?[,:]?\s*", re.IGNORECASE)
_BOUNDARY = re.compile(r";\s*|(?<=[\d)”\"’*_])\.\s+(?=[^\W\d_])|(?<=[a-z])\.\s+(?=(?:See|Cf\.|Compare|Ibid)\b)")
_WEB = re.compile(r"[,.]?\s*(?:accessed [^,]{3,20},? ?\d{0,4},?\s*)?(?:https?://\S+|doi:\s?\S+)\s*\Z", re.IGNORECASE)
_YEAR = re.compile(r"(?<![\d–-])(?:1[4-9]|20)\d\d(?![\d–-])")
_IN_ROUND = re.compile(r"\([^()]{0,160}?((?:1[4-9]|20)\d\d)[a-z]?\)")
_SIGNAL = re.compile(
    r"(?<!\w)(?:see(?:\s+also)?|cf\.|compare|(?:quoted|cited|discussed)\s+in|e\.g\.,?)[,:]?\s+", re.IGNORECASE
)
_EDITION = re.compile(r",?\s*(?:trans|eds?|comp)\.(?=\s|,|\Z)")


def read_note(text: str, known: Known) -> tuple[tuple[Mention, bool], ...]:
    """The citations in the text of a footnote, each with whether a source answers to it.

    >>> from fairhand.citing.known import know
    >>> note = "See Anna Vale, *The Long Quay* (Leeds: Mole, 1988), 65; Vale, “Ropes,” 12."
    >>> [(mention.cites[0].title, mention.cites[0].locator.text) for mention, _ in read_note(note, know(()))]
    [('The Long Quay', '65'), ('Ropes', '12')]
    """
    found = []
    for start, end in _segments(text):
        read = (
            _read_ibid(text, start, end)
            or _read_titled(text, start, end, known)
            or _read_plain(text, start, end, known)
        )
        found += (
            [(Mention(Span(start, end), "note", 0, tuple(one.cite for one in read)), read[0].grade == "known")]
            if read
            else []
        )
    return tuple(found)


def _segments(text: str) -> Iterator[tuple[int, int]]:
    """The pieces of a note that may each be a citation, without the stops between them."""
    label = _LABEL.match(text)
    start = label.end() if label else 0
    titles = [found.span() for found in TITLE.finditer(text, start)]
    for gap in [*_BOUNDARY.finditer(text, start), None]:
        end = gap.start() if gap else len(text)
        if any(low < end < high for low, high in titles) or text.count("(", start, end) != text.count(")", start, end):
            continue
        stripped = len(text[start:end].rstrip(" .\n\t"))
        if stripped:
            yield start, start + stripped
        start = gap.end() if gap else end


def _read_ibid(text: str, start: int, end: int) -> list[Read]:
    found = _IBID.match(text, start, end)
    if found is None:
        return []
    place, _ = read_places(text, found.end(), end)
    return [Read(Cite(Span(start, end), locator=place.locator if place else None), "plain")]


def _read_titled(text: str, start: int, end: int, known: Known) -> list[Read]:
    """A citation with a title: *First Last, Title (Place: Publisher, Year), 65*, or *Last, Short Title, 65*."""
    at = start
    while prefix := PREFIX.match(text, at, end):
        at = prefix.end()
    title = TITLE.search(text, at, end)
    if title is None or title.start() - at > 200:
        return []
    for signal in _SIGNAL.finditer(text, at, title.start()):
        at = signal.end()
    head = _EDITION.sub("", text[at : title.start()]).strip(" ,.\n")
    who = read_who(head, known.given, known.whole) if head else None
    if head and who is None:
        return []
    words = next(group for group in title.groups() if group is not None).strip().rstrip(",.")
    web = _WEB.search(text, title.end(), end)
    last = web.start() if web else end
    place = _place_at_end(text, title.end(), last)
    years = _IN_ROUND.findall(text, title.end(), last) or _YEAR.findall(
        text, title.end(), place.locator.span.start if place else last
    )
    cite = Cite(
        Span(start, end),
        names=who.names if who else (),
        initials=who.initials if who else "",
        et_al=who.et_al if who else False,
        year=years[-1] if years else "",
        title=words,
        locator=place.locator if place else None,
        prefix=text[start:at].strip(),
    )
    if (who and known.knows_name(who.names[0])) or known.titled(words):
        return [Read(cite, "known")]
    return [Read(cite, "plain")] if who and (place or years) else []


def _read_plain(text: str, start: int, end: int, known: Known) -> list[Read]:
    """A citation by author and year, or by a known author and page: *Reyes 2018, 45*; *Tresillian, 45*."""
    reads = read_parenthesis(text, Span(start, end), known)
    if not reads or reads[0].cite.suffix or not (reads[0].cite.year or reads[0].cite.locator):
        return []
    return list(reads) if reads[0].grade == "known" or reads[0].cite.year else []


def _place_at_end(text: str, start: int, end: int) -> Place | None:
    """The place with which a note's citation ends, after a comma or colon."""
    commas = [at for at in range(start, end) if text[at] in ",:"][-4:]
    for comma in (start - 1, *commas):
        at = comma + 1
        while at < end and text[at] in " \n":
            at += 1
        place, past = read_places(text, at, end)
        if place is not None and ends_there(text, past, end) and not _YEAR.fullmatch(place.locator.text):
            return place
    return None
