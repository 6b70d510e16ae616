"""Which works a citation fits by its names, title and year, and how well."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from fairhand.citing.known import Known, Work, title_words
from fairhand.citing.mention import Cite
from fairhand.citing.names import name_key, name_words

_DIGITS = re.compile(r"\d{4}")
_LETTER = re.compile(r"(?<=\d)([a-z])$|(?<=n\.d\.-)([a-z])$")
_PRESS = ("in press", "forthcoming", "in preparation", "submitted")


@dataclass(frozen=True, slots=True)
class Fit:
    """A work that fits, and what was tolerated."""

    work: int
    """Its index among the known works."""
    strain: int = 0
    """0 where it fits as it should; the more was tolerated, the greater."""
    though: str = ""
    """What was tolerated, in words that follow *though*."""


def fit_names(cite: Cite, known: Known, short: Mapping[str, str]) -> list[Fit]:
    """The works that the names of a citation fit, whatever their year.

    Args:
        cite: A citation with names.
        known: The list of sources.
        short: Acronyms that the draft introduces, with the key of the whole name.
    """
    first = cite.names[0]
    fits = []
    for at in known.works_by(first):
        fit = _fit_list(cite, known.works[at], at)
        if fit is not None:
            fits.append(fit)
    return fits or _fit_short_form(short.get(name_key(first)), known) or _fit_loosely(cite, known)


def fit_title(title: str, known: Known) -> list[Fit]:
    """The works that a title fits; among several, those that are cited by their title for want of an author."""
    found = known.titled(title)
    if not found:
        words = title_words(title)
        return [
            Fit(at, 1, "it is named by what it appeared in")
            for at, work in enumerate(known.works)
            if words in work.containers
        ]
    bare = tuple(at for at in found if not known.works[at].creators)
    return [Fit(at) for at in bare or found]


def is_of_year(work: Work, year: str) -> bool:
    """Whether a work is of the year that a citation gives, letter included.

    **Source**: Publication Manual of the APA 7, 8.15 and 8.19; Chicago Manual of Style 17, 15.40 and 15.44.
    """
    letter = _LETTER.search(year)
    if letter and work.shared_year and work.suffix and work.suffix != (letter[1] or letter[2]):
        return False
    issued = work.entry.issued
    recorded = issued.literal.casefold() if issued else ""
    if year.startswith("n.d"):
        return issued is None or (issued.year is None and not any(word in recorded for word in _PRESS))
    if any(year.startswith(word) for word in _PRESS):
        return issued is None or issued.year is None
    have = {issued.year} if issued and issued.year else {int(found) for found in _DIGITS.findall(recorded)}
    wanted = [int(found) for found in _DIGITS.findall(year)]
    if any(found in have for found in wanted):
        return True
    return work.entry.original_year is not None and work.entry.original_year in wanted


def nearest(cite: Cite, known: Known) -> list[int]:
    """The works whose author, body or title is spelt almost as the citation has it, nearest first."""
    from rapidfuzz import fuzz

    wanted = [name_key(name) for name in cite.names] if cite.names else [name_key(cite.title)]
    if cite.names and " " in cite.names[0]:
        wanted.append(name_words(cite.names[0])[-1] if name_words(cite.names[0]) else "")
    scored = []
    for at, work in enumerate(known.works):
        if cite.names:
            keys = {key for creator in work.creators for key in creator.keys}
        else:
            keys = {"".join(words) for words in work.titles}
        best = max((fuzz.ratio(want, key) for want in wanted for key in keys if want), default=0.0)
        if best >= 78:
            scored.append((-best, at))
    return [at for _, at in sorted(scored)[:3]]


def _fit_list(cite: Cite, work: Work, at: int) -> Fit | None:
    """How a citation's list of names fits a work's, whose first is known to be named."""
    creators, names = work.creators, cite.names
    if not creators:
        return Fit(at) if len(names) == 1 else None
    count, whole = len(names), len(creators)
    if count > whole:
        return None
    named_first = next((creator for creator in creators if creator.is_named(names[0])), creators[0])
    if cite.initials and not named_first.has_given(cite.initials):
        return None
    in_order = all(creator.is_named(name) for creator, name in zip(creators, names, strict=False))
    if not in_order:
        if count == whole and all(any(creator.is_named(name) for creator in creators) for name in names):
            return Fit(at, 2, "its authors stand in another order in the list of sources")
        return None
    if cite.et_al:
        if count == whole:
            return None
        return Fit(at, 1, "it has two authors, who are both named") if whole == 2 else Fit(at)
    if count < whole:
        return Fit(at, 2, f"it names only {count} of {whole} authors")
    return Fit(at)


def _fit_short_form(meant: str | None, known: Known) -> list[Fit]:
    """Works of the body that an acronym was introduced for; the name before the acronym may have been cut short."""
    return [
        Fit(at)
        for at, work in enumerate(known.works)
        if meant and work.creators and "".join(work.creators[0].body).endswith(meant)
    ]


def _fit_loosely(cite: Cite, known: Known) -> list[Fit]:
    """Works whose author is named in part, or which are named by the newspaper they appeared in."""
    first = cite.names[0]
    found = [
        Fit(at, 3, "its author is named in part")
        for at, work in enumerate(known.works)
        if work.creators
        and len(cite.names) <= len(work.creators)
        and work.creators[0].is_loosely_named(first)
        and (not cite.initials or work.creators[0].has_given(cite.initials))
    ]
    if found or len(cite.names) > 1:
        return found
    words = title_words(first)
    return [
        Fit(at, 3, "it is named by what it appeared in")
        for at, work in enumerate(known.works)
        if words in work.containers and work.entry.type.startswith(("article-news", "article-mag", "webpage", "post"))
    ]
