"""Where prose names an author, a body or a title out of the list of sources."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from fairhand.citing.known import Known
from fairhand.citing.names import PARTICLES, name_key
from fairhand.language.folding import fold
from fairhand.model.span import Span

_GIVEN = re.compile(r"(?<!\w)(?:(?:[^\W\d_]\.[ -]?){1,3}|[^\W\d_a-z][\w'’-]{2,24}(?:\s[^\W\d_]\.){0,2})\s?$")
_PARTICLES = re.compile(rf"(?:\b(?:{'|'.join(sorted(PARTICLES))})\s){{1,3}}\Z", re.IGNORECASE)
_JOINED = re.compile(r"(?:['’]s)?\s*(?:,\s*(?:and|&)?|and|&)\s*")
_ARTICLE = re.compile(r"[*_\"“‘']{0,2}(?:(?:The|A|An)\s)?\Z")
_ET_AL = re.compile(r",?\s+(?:et al\b|and (?:others|colleagues|h(?:is|er) colleagues)\b)")
_YEAR_AFTER = re.compile(r"\s+\(?\d")


@dataclass(frozen=True, slots=True)
class Naming:
    """A work, or several, named in running text."""

    span: Span
    """The name or title, with the given name or initials before it."""
    works: tuple[int, ...]
    """Indices, among the known works, of those that it may be."""
    full: bool = False
    """Whether a given name or initials stand with the surname."""
    title: bool = False
    """Whether it is a title, so that it cannot be another work by the same author."""
    names: int = 1
    """How many names stand joined."""


def find_namings(text: str, known: Known, quoted: tuple[Span, ...]) -> tuple[Naming, ...]:
    """Every place of ``text`` that names a known author, body or title, in order.

    Args:
        text: A paragraph.
        known: The list of sources.
        quoted: The quotations in it; what they say names nothing, unless it is a title.
    """
    if known.naming is None:
        return ()
    found: list[Naming] = []
    for match in known.naming.finditer(fold(text)):
        article = _ARTICLE.search(text, max(0, match.start() - 8), match.start())
        span = Span(match.start(), match.end())
        key = name_key(re.sub(r"'s(?=\W)", "", match[0]))
        if not _names_it(text, span, key, known, quoted):
            continue
        title = key in known.titles or key in known.marked
        if article and title:
            span = Span(article.start(), span.end)
        naming = _with_given(text, Naming(span, known.named.get(key, ()), title=title), known)
        if not naming.works:
            continue
        if found and (merged := _merge(text, found[-1], naming)):
            found[-1] = merged
        else:
            found.append(naming)
    return tuple(_whole_list(text, naming, known) for naming in found)


def _whole_list(text: str, naming: Naming, known: Known) -> Naming:
    """The naming with those works alone that have no other author, where there are any and no *et al.* follows."""
    if naming.title or len(naming.works) < 2 or _ET_AL.match(text, naming.span.end):
        return naming
    exact = tuple(at for at in naming.works if len(known.works[at].creators) == naming.names)
    return replace(naming, works=exact or naming.works)


def _names_it(text: str, span: Span, key: str, known: Known, quoted: tuple[Span, ...]) -> bool:
    """Whether the words found are meant as a name: capitals, marks and quotations considered."""
    words = span.of(text)
    if key in known.short:
        return words.isupper() and not any(quote.contains(span) for quote in quoted)
    if words[0].islower() and key not in known.lower:
        return False
    if key in known.marked:
        return text[span.start - 1 : span.start] in ("*", "_", '"', "“", "‘", "'") and span.start > 0
    if key not in known.titles and any(quote.contains(span) for quote in quoted):
        return False
    return not (key in ("may", "march", "august") and _YEAR_AFTER.match(text, span.end))


def _with_given(text: str, naming: Naming, known: Known) -> Naming:
    """The naming with the given name before it taken in, where it is that of one of its works' authors."""
    start = max(0, naming.span.start - 40)
    particles = _PARTICLES.search(text, start, naming.span.start)
    given = _GIVEN.search(text[start : particles.start() if particles else naming.span.start])
    if given is None or given[0][0].islower():
        return naming
    surname = naming.span.of(text)
    fitting = tuple(
        at
        for at in naming.works
        if any(who.given and who.is_named(surname) and who.has_given(given[0]) for who in known.works[at].creators)
    )
    if not fitting:
        return naming
    return replace(naming, span=Span(start + given.start(), naming.span.end), works=fitting, full=True)


def _merge(text: str, first: Naming, second: Naming) -> Naming | None:
    """Two names of one work's authors as one naming: *Okafor and Lind*."""
    if second.span.start - first.span.end > 60 or second.span.start < first.span.end:
        return None
    if not _JOINED.fullmatch(text, first.span.end, second.span.start):
        return None
    both = tuple(at for at in first.works if at in second.works)
    return (
        Naming(
            Span(first.span.start, second.span.end),
            both,
            first.full,
            first.title or second.title,
            first.names + second.names,
        )
        if both
        else None
    )
