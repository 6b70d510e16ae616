"""Which source each citation means, with the reason where none or several fit.

**Source**: MLA Handbook 9, 6.4–6.10; Publication Manual of the APA 7, 8.10–8.22; Chicago Manual of Style 17,
15.21–15.31.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from fairhand.citing.fitting import Fit, fit_names, fit_title, is_of_year, nearest
from fairhand.citing.following import resolve_unnamed
from fairhand.citing.known import know
from fairhand.citing.lookup import LOOK_BACK, Lookup, ids_of
from fairhand.citing.mention import Cite, Mention, Resolved
from fairhand.citing.reasons import say_ambiguous, say_fit, say_unknown, say_wrong_year
from fairhand.manuscript.parts import Manuscript
from fairhand.model.entry import Entry
from fairhand.model.span import Span


def resolve(manuscript: Manuscript, mentions: Sequence[Mention], entries: Sequence[Entry]) -> tuple[Resolved, ...]:
    """The source that each cite of each mention means, in order.

    A cite that fits several sources is ambiguous even where its page would settle it. The author's full name in the
    sentence settles it where the parenthesis leaves the name out; a parenthesis that repeats the surname needs the
    initial itself, and ``entry`` then holds the source that the sentence means.
    """
    known = know(tuple(entries))
    reading = Lookup(manuscript, known)
    out: list[Resolved] = []
    for at, mention in enumerate(mentions):
        for cite in mention.cites:
            out.append(
                _resolve_named(reading, mentions, at, cite, out)
                if cite.names or cite.title
                else resolve_unnamed(reading, mentions, at, cite, out)
            )
    return tuple(_settle_lines(out, mentions))


def _resolve_named(
    reading: Lookup, mentions: Sequence[Mention], at: int, cite: Cite, before: Sequence[Resolved]
) -> Resolved:
    """A cite with names or a title."""
    known = reading.known
    fits = fit_names(cite, known, reading.short) if cite.names else fit_title(cite.title, known)
    if not fits:
        near = nearest(cite, known)
        return Resolved(at, cite, None, "unknown", ids_of(known, near), say_unknown(cite, known, near))
    if cite.names and cite.title:
        titled = set(known.titled(cite.title))
        fits = [fit for fit in fits if fit.work in titled] or fits
    if cite.year:
        dated = [fit for fit in fits if is_of_year(known.works[fit.work], cite.year)]
        if not dated:
            best = _least_strained(fits)
            entry = known.works[best[0].work].entry.id if len(best) == 1 else None
            ids = ids_of(known, [fit.work for fit in best])
            return Resolved(at, cite, entry, "year", ids, say_wrong_year(cite, [known.works[fit.work] for fit in best]))
        if "/" in cite.year:
            latest = max(cite.year.split("/"))
            dated = [fit for fit in dated if is_of_year(known.works[fit.work], latest)] or dated
        fits = dated
    fits = _least_strained(fits)
    if len(fits) == 1:
        return _resolved(reading, mentions, at, cite, fits[0])
    return _tell_apart(reading, mentions, at, cite, fits, before)


def _least_strained(fits: Sequence[Fit]) -> list[Fit]:
    least = min(fit.strain for fit in fits)
    return [fit for fit in fits if fit.strain == least]


def _resolved(
    reading: Lookup,
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
        namings = reading.namings(mention.paragraph, 0, mention.span.start)
        earlier = [naming for naming in namings if fit.work in naming.works]
        named_at = earlier[-1].span if earlier else None
    return Resolved(at, cite, work.entry.id, None, (work.entry.id,), why or say_fit(cite, work, fit.though), named_at)


def _tell_apart(
    reading: Lookup, mentions: Sequence[Mention], at: int, cite: Cite, fits: Sequence[Fit], before: Sequence[Resolved]
) -> Resolved:
    """Several works fit: the sentence may tell which, or, where no year is given, what the paragraph has just cited."""
    known, mention = reading.known, mentions[at]
    sentence = reading.sentence(mention)
    works = [fit.work for fit in fits]
    told = {
        found[0]: naming
        for naming in reading.namings(mention.paragraph, sentence.start, sentence.end)
        if (naming.full or naming.title) and len(found := [work for work in naming.works if work in works]) == 1
    }
    meant = next(iter(told.items())) if len(told) == 1 else None
    if meant is not None and (mention.form != "parenthetical" or meant[1].title):
        fit = next(fit for fit in fits if fit.work == meant[0])
        named = meant[1].span.of(reading.manuscript.text).strip("*_\"“”‘’'")
        return _resolved(reading, mentions, at, cite, fit, f"The sentence names {named}.", meant[1].span)
    if not cite.year and not cite.title:
        ids = {known.works[fit.work].entry.id: fit for fit in fits}
        for earlier in before[: -LOOK_BACK - 1 : -1]:
            if mentions[earlier.mention].paragraph != mention.paragraph:
                break
            if earlier.entry in ids and earlier.trouble is None and earlier.cite.year:
                return _resolved(
                    reading, mentions, at, cite, ids[earlier.entry], "The work of this author cited before it."
                )
    why = say_ambiguous(cite, [known.works[work] for work in works])
    entry = known.works[meant[0]].entry.id if meant else None
    return Resolved(at, cite, entry, "ambiguous", ids_of(known, works), why, meant[1].span if meant else None)


def _settle_lines(out: list[Resolved], mentions: Sequence[Mention]) -> list[Resolved]:
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
