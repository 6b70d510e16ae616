"""Leads in words, as the terminal and the page both show them."""

from __future__ import annotations

from collections.abc import Mapping

from fairhand.citing.entry_form import TYPES_ASKED
from fairhand.language.counts import count_of
from fairhand.leads.lead import Lead


def tell_lead(lead: Lead) -> str:
    """A lead in one line: who, when, what, and where it stands.

    >>> from fairhand.model.entry import Entry, Issued, Name
    >>> tell_lead(Lead(Entry("x", "book", "Salt", authors=(Name("Lind"),), issued=Issued(2001), publisher="Quay"), ()))
    'Lind. 2001. Salt. Quay.'
    """
    entry = lead.entry
    people = entry.authors or entry.editors
    more = len(people) > 3 or "author" in lead.guessed
    who = ", ".join(name.surname for name in people[:3]) + (" and others" if more and people else "")
    year = str(entry.issued.year or entry.issued.literal) if entry.issued else "no year given"
    parts = (who, year, entry.title or "no title given", entry.container_title or entry.publisher)
    return " ".join(f"{part}{'' if part[-1] in '?!.' else '.'}" for part in parts if part)


def tell_kind(lead: Lead) -> str:
    """What kind of work a lead is, and whether the reference says so or it was guessed.

    >>> from fairhand.model.entry import Entry
    >>> tell_kind(Lead(Entry("x", "book", "Salt"), (), frozenset({"type"})))
    'A book, it seems'
    """
    named = TYPES_ASKED.get(lead.entry.type, lead.entry.type.replace("-", " ")).lower()
    if lead.entry.type == "document":
        return "What kind of work it is, the reference does not tell"
    article = "An" if named[:1] in "aeiou" else "A"
    return f"{article} {named.partition(',')[0]}{', it seems' if 'type' in lead.guessed else ''}"


def tell_pointers(lead: Lead, names: Mapping[str, str]) -> str:
    """The sources in whose lists a lead stands, each with the page.

    Args:
        lead: The lead.
        names: The sources as the writer is told of them, by id.
    """
    told = dict.fromkeys(
        f"{names.get(one.source, one.source)}{f', p. {one.page}' if one.page else ''}" for one in lead.pointers
    )
    return "; ".join(told)


def tell_found(leads: int, mined: Mapping[str, int], left: int = 0) -> str:
    """How many leads there are, from how many reference lists, in a sentence or two.

    Args:
        leads: How many are still to be looked at.
        mined: How many references were found in each source, by its id.
        left: How many sources were not looked through yet.
    """
    if left:
        return f"{count_of(len(mined), 'source')} looked through so far, {left} still to come."
    if not mined:
        return "No text of a source is at hand yet: leads are read off the reference lists of the sources’ texts."
    lists = sum(1 for count in mined.values() if count)
    if not lists:
        return f"No reference list was found in the {count_of(len(mined), 'source text')} at hand."
    where = f"{count_of(lists, 'reference list')} in {count_of(len(mined), 'source text')}"
    return f"{count_of(leads, 'lead')} from {where}, the most needed first."
