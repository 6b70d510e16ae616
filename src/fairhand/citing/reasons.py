"""What the writer is told about how a citation was understood."""

from __future__ import annotations

from collections.abc import Sequence

from fairhand.citing.known import Known, Work
from fairhand.citing.mention import Cite

MANY = 3
"""From so many authors on a work is told by the first. **Source**: common practice."""


def cited_as(cite: Cite) -> str:
    """The citation in a few words: names or title, and year.

    >>> from fairhand.model.span import Span
    >>> cited_as(Cite(Span(0, 0), names=("Vale", "Moor"), year="1990"))
    'Vale and Moor 1990'
    """
    if cite.et_al:
        who = f"{', '.join(cite.names)} et al."
    elif len(cite.names) > 2:
        who = f"{', '.join(cite.names[:-1])}, and {cite.names[-1]}"
    else:
        who = " and ".join(cite.names) or (f"“{cite.title}”" if cite.title else "")
    return " ".join(part for part in (cite.initials, who, cite.year) if part)


def describe(work: Work) -> str:
    """A work in a few words: its authors' full names, of many the first, and its title.

    >>> from fairhand.citing.known import know
    >>> from fairhand.model.entry import Entry, Name
    >>> describe(know((Entry("v", "book", "The Long Quay: A History", authors=(Name("Vale", "Anna"),)),)).works[0])
    'Anna Vale, “The Long Quay”'
    """
    entry = work.entry
    names = [f"{name.given} {name.surname}".strip() for name in entry.authors or entry.editors]
    who = " and ".join(names) if len(names) < MANY else f"{names[0]} and others"
    title = entry.title_short or entry.title.split(": ")[0]
    return ", ".join(part for part in (who, f"“{title}”" if title else "") if part) or entry.id


def say_fit(cite: Cite, work: Work, though: str) -> str:
    """How a citation was understood."""
    by = "title" if not cite.names else "author" if work.creators else "name"
    how = f"By its {by} and year" if cite.year else f"By its {by}"
    return f"{how}: {describe(work)}{f', though {though}' if though else ''}."


def say_unknown(cite: Cite, known: Known, near: Sequence[int]) -> str:
    """That no source fits, and which is spelt almost so."""
    missing = f"No source in the list matches {cited_as(cite)}"
    if not near:
        return f"{missing}."
    work = known.works[near[0]]
    names = [name.surname for name in work.entry.authors or work.entry.editors]
    meant = describe(work)
    if cite.names and names:
        meant = f"{names[0]} et al." if len(names) > 2 else " and ".join(names)
    return f"{missing}; did you mean {meant}?"


def say_wrong_year(cite: Cite, works: Sequence[Work]) -> str:
    """That the source is of another year."""
    years = sorted({str(work.entry.issued.year) for work in works if work.entry.issued and work.entry.issued.year})
    if not years:
        return f"{describe(works[0])} has no year in the list of sources, and the draft says {cite.year.rstrip('.')}."
    if len(works) == 1:
        return f"{describe(works[0])} is dated {years[0]}, not {cite.year.rstrip('.')}."
    who = cited_as(cite).removesuffix(cite.year).strip()
    return f"The sources by {who} are dated {' and '.join(years)}, none {cite.year.rstrip('.')}."


def say_ambiguous(cite: Cite, works: Sequence[Work]) -> str:
    """That several sources fit, and what would tell them apart."""
    fitting = "; ".join(map(describe, works))
    givens = {work.creators[0].given for work in works if work.creators}
    if len(givens) > 1 and cite.names:
        advice = "Give the author's initial"
    elif cite.year:
        advice = f"Add the letter after {cite.year.rstrip('abcdefghijklmnopqrstuvwxyz')}, or a short title"
    else:
        advice = "Give the year or a short title"
    return f"{cited_as(cite) or 'It'} fits {len(works)} sources: {fitting}. {advice}."
