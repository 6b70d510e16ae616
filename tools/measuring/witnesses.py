"""Points that rest on two published articles: pairs as they are, one in ten tied, one in ten merely citing."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass, replace

from fairhand.model.entry import Entry, Name
from fairhand.model.paper import Paper
from fairhand.model.point import Point, Points, Support
from fairhand.model.source import Page, SourceText
from measuring.corpora import Article, articles
from measuring.tally import Spoiled, Tally, judge_paper

ONE_IN = 10
A_PAPER = 6
"""Points in each paper."""
_MERELY = (
    "As {names} ({year}) have shown, this need not be so.",
    "{last}. ({year}). {title}. A journal, 4, 1–12.",
    "The point is argued in “{title}.”",
    "Unlike {names} ({year}), we do not rest our case on the data of a single season.",
    "The method is that of {names} ({year}), with two small changes.",
)
"""Citations in passing: they tie nothing."""
_RELIES = (
    "The figures are those of an earlier study ({names}, {year}).",
    "We rely on the tables in {names} ({year}, p. 12) throughout.",
    "Our estimates are drawn from the counts that {names} ({year}) made, and share their limits.",
    "This report reanalyses the data of {names} ({year}) and adds no new measurements.",
    "All the numbers given here were taken from {names} ({year}).",
)
"""Sentences that say in so many words whose matter is taken over."""


@dataclass(frozen=True, slots=True)
class Witness:
    """An article with its text."""

    entry: Entry
    text: SourceText


def measure_witnesses(tally: Tally, papers: int, seed: int = 4) -> None:
    """What ``point-dependent`` says of so many papers, made from the seed alone."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    witnesses = [_witness(article) for article in articles() if article.entry.authors and article.entry.issued]
    for number in range(papers):
        points, entries, texts, spoiled = [], {}, {}, []
        for at in range(A_PAPER):
            first, second = rng.sample(witnesses, 2)
            drawn = rng.random() * ONE_IN
            tied = drawn < 1
            if tied:
                first, second = rng.choice((_share_author, _rely, _take_words, _reprint, _register))(first, second, rng)
            elif drawn < 2:
                first = _cite(first, second, rng, _MERELY)
            first, second = _shelve(first, f"{at}a"), _shelve(second, f"{at}b")
            for one in (first, second):
                entries[one.entry.id], texts[one.entry.id] = one.entry, one.text
            support = (Support(first.entry.id), Support(second.entry.id))
            points.append(Point(f"p{at}", "Something is so.", "main", support))
            shared = {a for a in first.entry.authors if len(a.given) > 2} & set(second.entry.authors)
            if tied or shared:
                spoiled.append(Spoiled("point-dependent", None, f"p{at}"))
        paper = Paper("made", "A paper.", tuple(entries.values()), texts, Points("", tuple(points)))
        judge_paper(tally, f"points {seed}.{number}", paper, spoiled)


def _witness(article: Article) -> Witness:
    shelved = article.shelved(1)
    return Witness(shelved.entry, shelved.source())


def _shelve(witness: Witness, id_: str) -> Witness:
    return replace(witness, entry=replace(witness.entry, id=id_), text=replace(witness.text, id=id_))


def _share_author(first: Witness, second: Witness, rng: random.Random) -> tuple[Witness, Witness]:
    """The two with an author in common, by name or initial."""
    shared = rng.choice(first.entry.authors)
    if rng.random() < 0.5:
        shared = Name(shared.family, f"{shared.given[:1]}.")
    authors = list(second.entry.authors)
    authors[rng.randrange(len(authors))] = shared
    return first, replace(second, entry=replace(second.entry, authors=tuple(authors)))


def _rely(first: Witness, second: Witness, rng: random.Random) -> tuple[Witness, Witness]:
    """The first says that it rests on the second."""
    return _cite(first, second, rng, _RELIES), second


def _take_words(first: Witness, second: Witness, rng: random.Random) -> tuple[Witness, Witness]:
    """The first cites the second in passing, and has twenty of its words in a row elsewhere."""
    page = rng.choice(second.text.pages[: max(1, len(second.text.pages) // 2)]).text.split()
    at = rng.randrange(max(1, len(page) - 20))
    return _add(_cite(first, second, rng, _MERELY), " ".join(page[at : at + 20]) + ".", rng), second


def _reprint(first: Witness, second: Witness, rng: random.Random) -> tuple[Witness, Witness]:
    """The second prints half of the first's pages, under its own name."""
    pages = first.text.pages
    kept = [page for page in pages if rng.random() < 0.5] or [pages[0]]
    return first, replace(second, text=replace(second.text, pages=tuple(kept)))


def _register(first: Witness, second: Witness, rng: random.Random) -> tuple[Witness, Witness]:
    """Both name the number under which one trial is registered."""
    words = f"The trial is registered as NCT{rng.randrange(10**7, 10**8)}."
    return _add(first, words, rng), _add(second, words, rng)


def _cite(first: Witness, second: Witness, rng: random.Random, ways: Sequence[str]) -> Witness:
    """The first with a sentence that cites the second."""
    entry = second.entry
    way = rng.choice([one for one in ways if "{names}" in one or len(entry.title.split()) > 3])
    year = entry.issued.year if entry.issued else ""
    words = way.format(names=_named(entry.authors), last=entry.authors[0].family, year=year, title=entry.title)
    return _add(first, words, rng)


def _add(witness: Witness, words: str, rng: random.Random) -> Witness:
    """The article with some words more, on a page of its earlier half."""
    at = rng.randrange(max(1, len(witness.text.pages) // 2))
    pages = [Page(p.label, f"{p.text} {words}") if n == at else p for n, p in enumerate(witness.text.pages)]
    return replace(witness, text=replace(witness.text, pages=tuple(pages)))


def _named(authors: Sequence[Name]) -> str:
    if len(authors) > 2:
        return f"{authors[0].family} et al."
    return " and ".join(name.family for name in authors)
