"""Points that rest on two published articles: pairs as they are, and one in ten made to depend on each other."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass, replace

from fairhand.language.folding import fold
from fairhand.model.entry import Entry, Name
from fairhand.model.paper import Paper
from fairhand.model.point import Point, Points, Support
from fairhand.model.source import Page, SourceText
from measuring.corpora import Article, articles
from measuring.tally import Spoiled, Tally, judge_paper

ONE_IN = 10
A_PAPER = 6
"""Points in each paper."""
_CITES = (
    "As {names} ({year}) have shown, this need not be so.",
    "The figures are those of an earlier study ({names}, {year}).",
    "We rely on the tables in {names} ({year}, p. 12) throughout.",
    "{last}. ({year}). {title}. A journal, 4, 1–12.",
    "The point is argued in “{title}.”",
)


@dataclass(frozen=True, slots=True)
class Witness:
    """An article with its text."""

    entry: Entry
    text: SourceText
    references: tuple[str, ...]

    def cites(self, other: Witness) -> bool:
        """Whether its list of references has the other's title."""
        title = fold(other.entry.title)
        return any(title in fold(one) for one in self.references)


def measure_witnesses(tally: Tally, papers: int, seed: int = 4) -> None:
    """What ``point-dependent`` says of so many papers, made from the seed alone."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    witnesses = [_witness(article) for article in articles() if article.entry.authors and article.entry.issued]
    for number in range(papers):
        points, entries, texts, spoiled = [], {}, {}, []
        for at in range(A_PAPER):
            first, second = rng.sample(witnesses, 2)
            tied = rng.random() < 1 / ONE_IN
            if tied:
                first, second = _tie(first, second, rng)
            first, second = _shelve(first, f"{at}a"), _shelve(second, f"{at}b")
            for one in (first, second):
                entries[one.entry.id], texts[one.entry.id] = one.entry, one.text
            support = (Support(first.entry.id), Support(second.entry.id))
            points.append(Point(f"p{at}", "Something is so.", "main", support))
            shared = {a for a in first.entry.authors if len(a.given) > 2} & set(second.entry.authors)
            if tied or shared or first.cites(second) or second.cites(first):
                spoiled.append(Spoiled("point-dependent", None, f"p{at}"))
        paper = Paper("made", "A paper.", tuple(entries.values()), texts, Points("", tuple(points)))
        judge_paper(tally, f"points {seed}.{number}", paper, spoiled)


def _witness(article: Article) -> Witness:
    shelved = article.shelved(1)
    return Witness(shelved.entry, shelved.source(), article.references)


def _shelve(witness: Witness, id_: str) -> Witness:
    return replace(witness, entry=replace(witness.entry, id=id_), text=replace(witness.text, id=id_))


def _tie(first: Witness, second: Witness, rng: random.Random) -> tuple[Witness, Witness]:
    """The two with a plain tie: an author in common, or the first citing the second."""
    entry = second.entry
    if rng.random() < 0.5:
        shared = rng.choice(first.entry.authors)
        if rng.random() < 0.5:
            shared = Name(shared.family, f"{shared.given[:1]}.")
        authors = list(entry.authors)
        authors[rng.randrange(len(authors))] = shared
        return first, replace(second, entry=replace(entry, authors=tuple(authors)))
    way = rng.choice(_CITES if len(entry.title.split()) > 3 else _CITES[:3])
    year = entry.issued.year if entry.issued else ""
    words = way.format(names=_named(entry.authors), last=entry.authors[0].family, year=year, title=entry.title)
    at = rng.randrange(len(first.text.pages))
    pages = [Page(p.label, f"{p.text} {words}") if n == at else p for n, p in enumerate(first.text.pages)]
    return replace(first, text=replace(first.text, pages=tuple(pages))), second


def _named(authors: Sequence[Name]) -> str:
    if len(authors) > 2:
        return f"{authors[0].family} et al."
    return " and ".join(name.family for name in authors)
