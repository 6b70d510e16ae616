"""The same work in the list twice, noticed and told with its reason; whether it is so, only the writer says.

One DOI is one work; so are one ISBN of a whole book, and one PMID. Without these, two records are likely to be of one
work where their titles agree but for a slip, their years differ by at most one (online and in print), and they share
an author. **Source**: common practice of library catalogues; the tolerances are ours.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from fairhand.citing.identifiers import plain_doi, plain_isbn
from fairhand.citing.names import name_key
from fairhand.language.folding import fold
from fairhand.model.entry import Entry

_LIKE = 0.92
"""Likeness of two titles, by letters in order, from which they may be one with a slip."""
_LEAST_WORDS = 3
"""Shorter titles must agree to the letter: many works are called “Introduction”."""
_IN_PARTS = frozenset(("chapter", "entry-encyclopedia", "entry-dictionary", "paper-conference"))
"""Types that share the ISBN of their book."""
_STANDING_FOR_SEVERAL = 60
"""A word in more titles than that tells none from another."""


@dataclass(frozen=True, slots=True)
class Double:
    """Two records that are likely to be of one work."""

    new: str
    """The id of the one that came later in the list."""
    there: str
    """The id of the one that was there before."""
    why: str
    """What they have in common, in words."""


def find_doubles(entries: Sequence[Entry], new: Iterable[str] | None = None) -> tuple[Double, ...]:
    """The entries that are likely to be of one work with an earlier one, each told once, with the surest reason.

    Args:
        entries: The list of sources, in its order.
        new: The ids that are asked about; all, where it is None.

    >>> from fairhand.model.entry import Issued, Name
    >>> lind = (Name("Lind", "Ada"),)
    >>> salt = Entry("a", "book", title="The Salt Roads", authors=lind, issued=Issued(2001))
    >>> again = Entry("b", "book", title="The salt roads.", authors=(Name("Lind", "A."),), issued=Issued(2002))
    >>> find_doubles([salt, again])
    (Double(new='b', there='a', why='the same title and author'),)
    """
    asked = None if new is None else frozenset(new)
    found: dict[int, tuple[int, str]] = {}
    for kind, number_of in (("DOI", plain_doi), ("ISBN", _isbn), ("PMID", _pmid)):
        first: dict[str, int] = {}
        for place, number in enumerate(map(number_of, entries)):
            before = first.setdefault(number, place) if number else place
            if before != place:
                found.setdefault(place, (before, f"the same {kind}"))
    for later, before in sorted(_alike(entries)):
        found.setdefault(later, (before, "the same title and author"))
    return tuple(
        Double(entries[later].id, entries[before].id, why)
        for later, (before, why) in sorted(found.items())
        if asked is None or entries[later].id in asked or entries[before].id in asked
    )


def _isbn(entry: Entry) -> str:
    said = str(entry.csl.get("ISBN", ""))
    return "" if entry.type in _IN_PARTS else plain_isbn(said) or plain_isbn(said.partition(" ")[0])


def _pmid(entry: Entry) -> str:
    return str(entry.csl.get("PMID", "")).strip()


def _alike(entries: Sequence[Entry]) -> Iterator[tuple[int, int]]:
    """Pairs whose titles agree but for a slip, whose years do not differ, and who share an author."""
    from rapidfuzz.distance import Indel

    titles = ["".join(c if c.isalnum() else " " for c in fold(entry.title)).split() for entry in entries]
    by_word: dict[str, list[int]] = defaultdict(list)
    for place, words in enumerate(titles):
        for word in dict.fromkeys(sorted(words, key=len, reverse=True)[:4]):
            by_word[word].append(place)
    looked = set()
    for places in by_word.values():
        for at, later in enumerate(places if len(places) <= _STANDING_FOR_SEVERAL else ()):
            for before in places[:at]:
                if (later, before) in looked:
                    continue
                looked.add((later, before))
                one, other = titles[before], titles[later]
                like = Indel.normalized_similarity(" ".join(one), " ".join(other))
                short = min(len(one), len(other)) < _LEAST_WORDS
                same = one == other if short else like >= _LIKE and _figures(one) == _figures(other)
                if same and _may_be_one(entries[before], entries[later]):
                    yield later, before


def _figures(words: Sequence[str]) -> list[str]:
    """The numbers in a title: a second volume is not the first with a slip."""
    return [word for word in words if word.isdigit() or set(word) <= set("ivx")]


def _may_be_one(one: Entry, other: Entry) -> bool:
    dois, isbns = {plain_doi(one), plain_doi(other)}, {_isbn(one), _isbn(other)} - {""}
    if "" not in dois and len(dois) > 1 and one.type == other.type:
        return False
    years = [entry.issued.year for entry in (one, other) if entry.issued and entry.issued.year]
    if len(years) == 2 and abs(years[0] - years[1]) > 1:
        return False
    if len(isbns) > 1 and len(years) == 2 and years[0] != years[1]:
        return False
    authors = [{name_key(name.surname) for name in entry.authors or entry.editors} for entry in (one, other)]
    if not all(authors):
        return one.title.casefold() == other.title.casefold()
    return bool(authors[0] & authors[1])
