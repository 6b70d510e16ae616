"""Which work is meant where a citation names none: a page alone, a year alone, or *ibid.* instead.

**Source**: MLA Handbook 9, 6.3, 6.23 and 6.38; Publication Manual of the APA 7, 8.16 and 8.25; Chicago Manual of
Style 17, 14.34 and 15.28; common practice.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fairhand.citing.fitting import is_of_year
from fairhand.citing.lookup import LOOK_BACK, Lookup, ids_of
from fairhand.citing.mention import Cite, Mention, Resolved
from fairhand.citing.names import name_words
from fairhand.citing.naming import Naming
from fairhand.citing.prose import IBID
from fairhand.citing.reasons import describe, say_ambiguous
from fairhand.model.span import Span

_SAME = re.compile(
    r"\b(?:he|she|they|his|her|their|the\s(?:authors?|report|study|essay|article|book|novel|poem|play|narrator|speaker|writer|critic))\b",
    re.IGNORECASE,
)
"""Words that speak of somebody, or something, named before."""

_YEAR = re.compile(r"(?<![\d–-])(?:1[0-9]|20)\d\d(?![\d–-])")
_CAPITAL = re.compile(r"(?<!\w)[^\W\d_a-z][\w’'-]+")


def resolve_unnamed(
    reading: Lookup, mentions: Sequence[Mention], at: int, cite: Cite, before: Sequence[Resolved]
) -> Resolved:
    """A page alone, a year and page after nobody known, or *ibid.*: the work last named in the paragraph."""
    mention, known = mentions[at], reading.known
    if cite.year:
        return _resolve_year(reading, mentions, at, cite, before)
    if mention.form == "note":
        noted = next((earlier for earlier in reversed(before) if mentions[earlier.mention].form == "note"), None)
        return (
            replace(noted, mention=at, cite=cite, why="The work of the note before.") if noted else _missing(at, cite)
        )
    if IBID.match(cite.span.of(reading.manuscript.text)):
        return replace(before[-1], mention=at, cite=cite, why="The work cited last.") if before else _missing(at, cite)
    if cite.locator is not None and cite.locator.kind in ("act", "line") and reading.default is not None:
        return _the_subject(reading, at, cite, reading.default)
    sentence = reading.sentence(mention)
    paragraphs = reading.manuscript.paragraphs
    found = _last_named(reading, mentions, mention.paragraph, mention.span.start, sentence.start, before)
    above = mention.paragraph - 1
    while above >= 0 and paragraphs[above].in_quote:
        above -= 1
    if found is None and above >= 0 and paragraphs[above].sentences:
        starts = paragraphs[mention.paragraph].span.start
        quoted = above != mention.paragraph - 1 or paragraphs[mention.paragraph].in_quote
        if _SAME.search(reading.manuscript.text, starts, mention.span.start):
            found = _last_named(reading, mentions, above, mention.span.start, 0, before)
        elif quoted:
            last = paragraphs[above].sentences[-1]
            found = _last_named(reading, mentions, above, mention.span.start, last.start, before)
    if found is not None:
        place, event, works = found
        if isinstance(event, Resolved) and event.entry is None:
            return replace(event, mention=at, cite=cite, named_at=place)
        if isinstance(event, Resolved) or len(works) == 1:
            entry = event.entry if isinstance(event, Resolved) else known.works[works[0]].entry.id
            meant = next((describe(one) for one in known.works if one.entry.id == entry), "")
            why = f"The work last named before it{f': {meant}' if meant else ''}."
            return Resolved(at, cite, entry, None, (entry,) if entry else (), why, place)
        why = say_ambiguous(
            replace(cite, names=(place.of(reading.manuscript.text),)), [known.works[work] for work in works]
        )
        return Resolved(at, cite, None, "ambiguous", ids_of(known, works), why, place)
    if reading.default is not None:
        return _the_subject(reading, at, cite, reading.default)
    return _missing(at, cite)


def _resolve_year(
    reading: Lookup, mentions: Sequence[Mention], at: int, cite: Cite, before: Sequence[Resolved]
) -> Resolved:
    """A year after no whole name: the body of that year named in part, else a work of that year cited just before."""
    mention, known = mentions[at], reading.known
    sentence = reading.sentence(mention)
    spoken = {
        word
        for found in _CAPITAL.finditer(reading.manuscript.text, sentence.start, mention.span.start)
        for word in name_words(found[0])
    }
    dated = [number for number, work in enumerate(known.works) if is_of_year(work, cite.year)]
    part = [number for number in dated if any(spoken.intersection(who.body) for who in known.works[number].creators)]
    if len(part) == 1:
        entry = known.works[part[0]].entry.id
        return Resolved(at, cite, entry, None, (entry,), "By part of its author's name, and its year.")
    ids = ids_of(known, dated)
    above = mention.paragraph - 1
    while above >= 0 and reading.manuscript.paragraphs[above].in_quote:
        above -= 1
    for earlier in before[: -LOOK_BACK - 1 : -1]:
        if mentions[earlier.mention].paragraph < above:
            break
        if earlier.entry in ids and earlier.trouble is None:
            return replace(earlier, mention=at, cite=cite, why="The work of that year cited before it.")
    return Resolved(at, cite, None, "unknown", ids, f"No author in the list of sources is named before ({cite.year}).")


def _the_subject(reading: Lookup, at: int, cite: Cite, work: int) -> Resolved:
    entry = reading.known.works[work].entry.id
    return Resolved(at, cite, entry, None, (entry,), "The work that the paper is about.")


def _missing(at: int, cite: Cite) -> Resolved:
    return Resolved(at, cite, None, "unknown", (), "No work is named before it in its paragraph.")


def _last_named(
    reading: Lookup,
    mentions: Sequence[Mention],
    paragraph: int,
    before_at: int,
    sentence_at: int,
    before: Sequence[Resolved],
) -> tuple[Span, Resolved | Naming, tuple[int, ...]] | None:
    """The work last named before a place: in its sentence first, an author who has no page yet before any other."""
    cited = [
        (mentions[one.mention].span, one) for one in before[-LOOK_BACK:] if mentions[one.mention].paragraph == paragraph
    ]
    own = not reading.manuscript.paragraphs[paragraph].in_quote
    named = [
        (naming.span, naming)
        for naming in (reading.namings(paragraph, 0, before_at) if own else ())
        if not any(span.overlaps(naming.span) for span, _ in cited)
    ]
    waiting = [
        (span, one)
        for span, one in cited
        if span.start >= sentence_at and mentions[one.mention].form == "narrative" and one.cite.locator is None
    ]
    everything: list[tuple[Span, Resolved | Naming]] = [*cited, *named]
    here = [event for event in everything if event[0].start >= sentence_at]
    pool: Sequence[tuple[Span, Resolved | Naming]] = waiting or here or everything
    if not pool:
        return None
    place, event = max(pool, key=lambda item: item[0].start)
    if isinstance(event, Resolved):
        return place, event, ()
    start = max(sentence_at, reading.manuscript.paragraphs[paragraph].span.start)
    works = _narrowed(reading, event, Span(start, max(start, before_at)), everything)
    return place, event, works


def _narrowed(
    reading: Lookup, naming: Naming, sentence: Span, events: Sequence[tuple[Span, Resolved | Naming]]
) -> tuple[int, ...]:
    """Those works of an author named that the sentence's year, or what was named last before, lets stand."""
    works = naming.works
    if len(works) < 2:
        return works
    years = _YEAR.findall(reading.manuscript.text, sentence.start, sentence.end)
    dated = tuple(work for work in works if any(is_of_year(reading.known.works[work], year) for year in years))
    if len(dated) == 1:
        return dated
    ids = {reading.known.works[work].entry.id: work for work in works}
    for _, event in sorted(events, key=lambda item: item[0].start, reverse=True):
        if isinstance(event, Resolved):
            if event.entry in ids:
                return (ids[event.entry],)
        elif len(both := tuple(work for work in event.works if work in works)) == 1:
            return both
    return works
