"""Which source each citation means, with the reason where none or several fit.

**Source**: MLA Handbook 9, 6.4–6.10; Publication Manual of the APA 7, 8.10–8.22; Chicago Manual of Style 17, 15.21–15.31.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from fairhand.citing.fitting import Fit, fit_names, fit_title, is_of_year, nearest
from fairhand.citing.known import Known, know
from fairhand.citing.mention import Cite, Mention, Resolved
from fairhand.citing.naming import Naming
from fairhand.citing.prose import IBID, sentence_around
from fairhand.citing.recognise import default_work, read_paragraphs, short_forms
from fairhand.citing.reasons import say_ambiguous, say_fit, say_unknown, say_wrong_year
from fairhand.manuscript.parts import Manuscript
from fairhand.model.entry import Entry
from fairhand.model.span import Span

_SAME = re.compile(
    r"\b(?:he|she|they|his|her|their|the\s(?:authors?|report|study|essay|article|book|novel|poem|play|narrator|speaker|writer|critic))\b",
    re.IGNORECASE,
)
"""Words that speak of somebody, or something, named before."""


def resolve(manuscript: Manuscript, mentions: Sequence[Mention], entries: Sequence[Entry]) -> tuple[Resolved, ...]:
    """The source that each cite of each mention means, in order.

    A cite that fits several sources is ambiguous even where its page would settle it. The author's full name in the
    sentence settles it where the parenthesis leaves the name out; a parenthesis that repeats the surname needs the
    initial itself, and ``entry`` then holds the source that the sentence means.
    """
    known = know(tuple(entries))
    reading = _Reading(manuscript, known)
    out: list[Resolved] = []
    for at, mention in enumerate(mentions):
        for cite in mention.cites:
            out.append(
                _resolve_named(reading, mentions, at, cite, out)
                if cite.names or cite.title
                else _resolve_unnamed(reading, mentions, at, cite, out)
            )
    return tuple(_settle_lines(out, mentions, known))


class _Reading:
    """The draft and its list of sources, with what each paragraph names, placed in the draft."""

    def __init__(self, manuscript: Manuscript, known: Known) -> None:
        self.manuscript = manuscript
        self.known = known
        self.prose = read_paragraphs(manuscript, known)
        default = default_work(manuscript, known)
        self.default = default
        self.short: Mapping[str, str] = short_forms(manuscript.text)

    def namings(self, paragraph: int) -> list[Naming]:
        """What the paragraph names, with places in the draft."""
        by = self.manuscript.paragraphs[paragraph].span.start
        return [replace(naming, span=naming.span.shifted(by)) for naming in self.prose[paragraph].namings]

    def sentence(self, mention: Mention) -> Span:
        """The sentence that the mention stands in."""
        return sentence_around(self.manuscript.paragraphs[mention.paragraph].sentences, mention.span)


def _resolve_named(
    reading: _Reading, mentions: Sequence[Mention], at: int, cite: Cite, before: Sequence[Resolved]
) -> Resolved:
    """A cite with names or a title."""
    known = reading.known
    fits = fit_names(cite, known, reading.short) if cite.names else fit_title(cite.title, known)
    if not fits:
        near = nearest(cite, known)
        return Resolved(at, cite, None, "unknown", _ids(known, near), say_unknown(cite, known, near))
    if cite.names and cite.title:
        titled = set(known.titled(cite.title))
        fits = [fit for fit in fits if fit.work in titled] or fits
    if cite.year:
        dated = [fit for fit in fits if is_of_year(known.works[fit.work], cite.year)]
        if not dated:
            best = _least_strained(fits)
            entry = known.works[best[0].work].entry.id if len(best) == 1 else None
            ids = _ids(known, [fit.work for fit in best])
            return Resolved(at, cite, entry, "year", ids, say_wrong_year(cite, [known.works[fit.work] for fit in best]))
        fits = dated
    fits = _least_strained(fits)
    if len(fits) == 1:
        return _resolved(reading, mentions, at, cite, fits[0])
    return _tell_apart(reading, mentions, at, cite, fits, before)


def _least_strained(fits: Sequence[Fit]) -> list[Fit]:
    least = min(fit.strain for fit in fits)
    return [fit for fit in fits if fit.strain == least]


def _resolved(
    reading: _Reading,
    mentions: Sequence[Mention],
    at: int,
    cite: Cite,
    fit: Fit,
    why: str = "",
    named_at: Span | None = None,
) -> Resolved:
    work = reading.known.works[fit.work]
    mention = mentions[at]
    if named_at is None and mention.form == "narrative" and mention.span.of(reading.manuscript.text)[:1] == "(":
        earlier = [
            n for n in reading.namings(mention.paragraph) if n.span.end <= mention.span.start and fit.work in n.works
        ]
        named_at = earlier[-1].span if earlier else None
    return Resolved(at, cite, work.entry.id, None, (work.entry.id,), why or say_fit(cite, work, fit.though), named_at)


def _tell_apart(
    reading: _Reading, mentions: Sequence[Mention], at: int, cite: Cite, fits: Sequence[Fit], before: Sequence[Resolved]
) -> Resolved:
    """Several works fit: the sentence may tell which, or, where no year is given, what the paragraph has just cited."""
    known, mention = reading.known, mentions[at]
    sentence = reading.sentence(mention)
    works = [fit.work for fit in fits]
    told = {
        found[0]: naming.span
        for naming in reading.namings(mention.paragraph)
        if naming.full
        and sentence.contains(naming.span)
        and len(found := [work for work in naming.works if work in works]) == 1
    }
    meant = next(iter(told)) if len(told) == 1 else None
    if meant is not None and mention.form != "parenthetical":
        fit = next(fit for fit in fits if fit.work == meant)
        named = told[meant].of(reading.manuscript.text)
        return _resolved(reading, mentions, at, cite, fit, f"The sentence names {named}.", told[meant])
    if not cite.year and not cite.title:
        ids = {known.works[fit.work].entry.id: fit for fit in fits}
        for earlier in reversed(before):
            if mentions[earlier.mention].paragraph != mention.paragraph:
                break
            if earlier.entry in ids and earlier.trouble is None and earlier.cite.year:
                return _resolved(
                    reading, mentions, at, cite, ids[earlier.entry], "The work of this author cited before it."
                )
    why = say_ambiguous(cite, [known.works[work] for work in works])
    entry = known.works[meant].entry.id if meant is not None else None
    return Resolved(
        at, cite, entry, "ambiguous", _ids(known, works), why, told.get(meant) if meant is not None else None
    )


def _resolve_unnamed(
    reading: _Reading, mentions: Sequence[Mention], at: int, cite: Cite, before: Sequence[Resolved]
) -> Resolved:
    """A page alone, a year and page after nobody known, or *ibid.*: the work last named in the paragraph."""
    mention, known = mentions[at], reading.known
    if cite.year:
        return Resolved(
            at, cite, None, "unknown", (), f"No author in the list of sources is named before ({cite.year})."
        )
    if mention.form == "note":
        notes = [earlier for earlier in before if mentions[earlier.mention].form == "note"]
        return (
            replace(notes[-1], mention=at, cite=cite, why="The work of the note before.")
            if notes
            else _missing(at, cite)
        )
    if IBID.match(cite.span.of(reading.manuscript.text)):
        return replace(before[-1], mention=at, cite=cite, why="The work cited last.") if before else _missing(at, cite)
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
            return Resolved(at, cite, entry, None, (entry,) if entry else (), "The work last named before it.", place)
        why = say_ambiguous(
            replace(cite, names=(place.of(reading.manuscript.text),)), [known.works[work] for work in works]
        )
        return Resolved(at, cite, None, "ambiguous", _ids(known, works), why, place)
    if reading.default is not None:
        entry = known.works[reading.default].entry.id
        return Resolved(at, cite, entry, None, (entry,), "The work that the paper is about.")
    return _missing(at, cite)


def _missing(at: int, cite: Cite) -> Resolved:
    return Resolved(at, cite, None, "unknown", (), "No work is named before it in its paragraph.")


def _last_named(
    reading: _Reading,
    mentions: Sequence[Mention],
    paragraph: int,
    before_at: int,
    sentence_at: int,
    before: Sequence[Resolved],
) -> tuple[Span, Resolved | Naming, tuple[int, ...]] | None:
    """The work last named before a place: in its sentence first, an author who has no page yet before any other."""
    cited = [(mentions[one.mention].span, one) for one in before if mentions[one.mention].paragraph == paragraph]
    named = [
        (naming.span, naming)
        for naming in reading.namings(paragraph)
        if naming.span.end <= before_at and not any(span.overlaps(naming.span) for span, _ in cited)
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
    ids = {reading.known.works[at].entry.id for at in event.works}
    for _, earlier in reversed(cited):
        if earlier.entry in ids and len(ids) > 1:
            return place, earlier, event.works
    return place, event, event.works


def _settle_lines(out: list[Resolved], mentions: Sequence[Mention], known: Known) -> list[Resolved]:
    """Acts and lines that name no work mean the one work that the draft cites by act and line elsewhere."""
    by_line = ("act", "line")
    cited = {
        one.entry
        for one in out
        if one.entry and one.trouble is None and one.cite.locator and one.cite.locator.kind in by_line
    }
    if len(cited) != 1:
        return out
    entry = next(iter(cited))
    return [
        replace(
            one,
            entry=entry,
            trouble=None,
            candidates=(entry,),
            why="The one work that the draft cites by act and line.",
        )
        if one.trouble == "unknown"
        and mentions[one.mention].form == "page-only"
        and one.cite.locator is not None
        and one.cite.locator.kind in by_line
        else one
        for one in out
    ]


def _ids(known: Known, works: Sequence[int]) -> tuple[str, ...]:
    return tuple(known.works[work].entry.id for work in works)
