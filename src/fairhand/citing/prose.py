"""What one paragraph cites and names, before the rest of the draft is known."""

from __future__ import annotations

import re
from bisect import bisect_right
from dataclasses import dataclass
from functools import lru_cache

from fairhand.citing.apart import Around, read_apart
from fairhand.citing.footnotes import read_note
from fairhand.citing.known import Known
from fairhand.citing.locators import read_places
from fairhand.citing.mention import Cite, Mention
from fairhand.citing.names import name_key, name_words
from fairhand.citing.naming import Naming, find_namings
from fairhand.citing.parenthesis import Read, ends_there, level, read_parenthesis
from fairhand.citing.sighting import Shape, Sighting, sentence_around
from fairhand.model.span import Span

IBID = re.compile(r"\s*(?:see\s+)?ibid(?:em)?\b\.?[,:;]?\s*", re.IGNORECASE)
"""What means the work cited last."""

_ITALIC_TITLE = re.compile(r"[*_](?:[^\W\d_])[^*_\n]{0,200}[*_]\s?\Z")


@dataclass(frozen=True, slots=True)
class Prose:
    """What a paragraph names and cites; every place is counted from its start."""

    namings: tuple[Naming, ...]
    sightings: tuple[Sighting, ...]


@lru_cache(maxsize=4096)
def read_prose(text: str, shape: Shape, known: Known) -> Prose:
    """The names and citations of one paragraph, remembered by its text."""
    levelled = level(text)
    namings = find_namings(levelled, known, shape.quotations)
    notes = [Sighting(note, known=sure) for note, sure in read_note(levelled, known)] if shape.in_note else []
    sightings: list[Sighting] = []
    named = [naming.span.end for naming in namings]
    reach = 0
    for start, end, mark in shape.brackets:
        bracket = Span(start, end)
        if start < reach or any(note.mention.span.overlaps(bracket) for note in notes):
            continue
        inner = Span(start + 1, max(start + 1, end - 1 if levelled[end - 1 : end] in ")]" else end))
        sighting = _read_round(levelled, bracket, inner, known) if mark == "(" else None
        if sighting is None:
            before = namings[: bisect_right(named, start)]
            last = max(before[-1].span.start if before else -1, sightings[-1].mention.span.start if sightings else -1)
            sentence = sentence_around(shape.sentences, bracket)
            around = Around(levelled, bracket, inner, sentence, known, before, last, shape.in_quote)
            sighting = read_apart(around, square=mark == "[")
        if sighting is not None and sighting.mention.span.start >= reach:
            sightings.append(sighting)
            reach = sighting.mention.span.end
    return Prose(namings, tuple(sorted([*notes, *sightings], key=lambda one: one.mention.span.start)))


def _read_round(text: str, bracket: Span, inner: Span, known: Known) -> Sighting | None:
    """A parenthesis that holds the whole citation."""
    if ibid := IBID.match(text, inner.start, inner.end):
        place, past = read_places(text, ibid.end(), inner.end)
        if not ends_there(text, past, inner.end):
            return None
        cite = Cite(inner, locator=place.locator if place else None)
        return Sighting(Mention(bracket, "page-only", 0, (cite,)))
    reads = read_parenthesis(text, inner, known)
    if not reads or _introduces_acronym(text, bracket, reads):
        return None
    sure = any(read.grade == "known" for read in reads)
    if not sure and (_follows_title(text, bracket) or text[bracket.start - 1 : bracket.start].isalnum()):
        return None
    if all(read.grade == "likely" for read in reads):
        return Sighting(Mention(bracket, "parenthetical", 0, tuple(read.cite for read in reads)), "habit")
    cites = tuple(read.cite for read in reads if read.grade != "likely")
    return Sighting(Mention(bracket, "parenthetical", 0, cites), known=sure)


def _introduces_acronym(text: str, bracket: Span, reads: tuple[Read, ...]) -> bool:
    """Whether the parenthesis gives the short form of the name before it: *World Health Organization (WHO)*."""
    cite = reads[0].cite
    if len(reads) > 1 or cite.year or cite.locator or cite.secondary or len(cite.names) != 1:
        return False
    short = name_key(cite.names[0])
    words = [
        word
        for word in re.findall(r"[^\W\d_]+", text[max(0, bracket.start - 200) : bracket.start])
        if word[0].isupper()
    ]
    return "".join(word[0] for word in words[-len(short) :]).casefold() == short


def _follows_title(text: str, bracket: Span) -> bool:
    """Whether a title in italics stands before it, so that what follows may be its publisher and year."""
    found = _ITALIC_TITLE.search(text, max(0, bracket.start - 220), bracket.start)
    return found is not None and name_words(found[0])[:1] != () and found[0][1].isupper()
