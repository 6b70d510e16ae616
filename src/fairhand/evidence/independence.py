"""Whether two sources that carry one point are independent of each other.

Two reports of one study are one witness. What can be seen from the records and the texts is that they share an
author, or that one rests on the other; whether they are independent is the writer's judgement.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import combinations
from typing import Literal

from fairhand.language.folding import fold
from fairhand.model.entry import Entry, Name
from fairhand.model.source import SourceText
from fairhand.model.span import Span

NEAR = 60
"""How far, in characters, a year may stand from a surname to be read as one citation."""

_INITIALS_AFTER = re.compile(r",?\s(?P<first>[^\W\d_a-z])(?:\.|[^\W\d_a-z]{1,2}(?!\w)|(?=\s?[,;(\d]))")
_INITIALS_BEFORE = re.compile(r"(?<!\w)(?P<first>[^\W\d_a-z])\.\s?(?:[^\W\d_a-z]\.\s?){0,2}\Z")


@dataclass(frozen=True, slots=True)
class Dependence:
    """Two sources that may be one witness, and how that shows."""

    first: str
    """Id of the source that rests on the other, or of either where they share an author."""
    second: str
    kind: Literal["shared-author", "cites", "writer"]
    why: str
    """The evidence: the name of the shared author, the words that cite, or the writer's own reason."""


def find_dependences(
    ids: Sequence[str], entries: Mapping[str, Entry], texts: Mapping[str, SourceText]
) -> tuple[Dependence, ...]:
    """Every pair among ``ids`` that shares an author, or of which one plainly cites the other.

    Args:
        ids: The sources of one point; unknown ids are passed over.
        entries: Entries by id.
        texts: Source texts by id; a source without text cannot be seen to cite.

    Returns:
        At most one dependence a pair, shared authors first.

    Source: common practice (two publications of one author or study count as one witness).
    """
    known = [entries[i] for i in dict.fromkeys(ids) if i in entries]
    out = []
    for a, b in combinations(known, 2):
        shared = _shared_author(a, b)
        if shared is not None:
            out.append(Dependence(a.id, b.id, "shared-author", shared))
            continue
        for citing, cited in ((a, b), (b, a)):
            words = citation_words(citing, cited, texts)
            if words:
                out.append(Dependence(citing.id, cited.id, "cites", words))
                break
    return tuple(out)


def citation_words(citing: Entry, cited: Entry, texts: Mapping[str, SourceText]) -> str:
    """The words in which ``citing`` cites ``cited``, or an empty string.

    A surname with the year of publication near by, or the whole title, counts as a plain citation.
    """
    text = texts.get(citing.id)
    if text is None:
        return ""
    for page in text.pages:
        found = _citation_in(page.text, cited)
        if found is not None:
            return _words_around(page.text, found.start, found.end)
    return ""


def _citation_in(text: str, cited: Entry) -> Span | None:
    """The first place of a page that cites: the surname with its year, or the whole title."""
    folded = fold(text)
    by_name, by_title = _citation_patterns(cited)
    for found in by_name.finditer(folded) if by_name else ():
        if not _is_anothers(text, Span(*found.span("surname")), cited.authors[0]):
            return Span(found.start(), found.end("to"))
    titled = by_title.search(folded) if by_title else None
    return Span(*titled.span()) if titled else None


def _is_anothers(text: str, surname: Span, author: Name) -> bool:
    """Whether the initials beside a surname are another's: *K. L. Reid*, or in a list *Reid, K. L.*, *Reid KL*."""
    beside = _INITIALS_AFTER.match(text, surname.end) or _INITIALS_BEFORE.search(
        text, max(0, surname.start - 12), surname.start
    )
    return beside is not None and bool(author.given) and fold(beside["first"]) != fold(author.given[0])


def _words_around(text: str, start: int, end: int, most: int = 60) -> str:
    """The citing words with a few of their neighbours on either side, on one line."""
    first = text.rfind(" ", 0, max(0, start - most)) + 1 if start > most else 0
    last = text.find(" ", min(len(text), end + most))
    words = " ".join(text[first : last if last > 0 else len(text)].split())
    return f"{'… ' if first else ''}{words}{' …' if last > 0 else ''}"


def count_independent(ids: Collection[str], dependences: Sequence[Dependence]) -> tuple[str, ...]:
    """The largest choice of sources no two of which depend on each other: a maximum independent set, exactly.

    >>> count_independent(["a", "b", "c"], [Dependence("a", "b", "cites", "")])
    ('a', 'c')
    """
    ties = {frozenset((d.first, d.second)) for d in dependences}
    order = tuple(dict.fromkeys(ids))

    @cache
    def best(left: tuple[str, ...]) -> tuple[str, ...]:
        if not left:
            return ()
        head, rest = left[0], left[1:]
        with_head = (head, *best(tuple(i for i in rest if frozenset((head, i)) not in ties)))
        if len(with_head) == len(left):
            return with_head
        without = best(rest)
        return with_head if len(with_head) >= len(without) else without

    return best(order)


def _shared_author(a: Entry, b: Entry) -> str | None:
    """The name of an author of both, or None."""
    for name in a.authors:
        if any(_same_person(name, other) for other in b.authors):
            return f"{name.given} {name.surname}".strip()
    return None


def _same_person(a: Name, b: Name) -> bool:
    """Whether two names may be one person's: surnames equal, and the given names equal or one the other's initials."""
    if fold(a.surname) != fold(b.surname) or not a.surname:
        return False
    first, second = fold(a.given).replace(".", " ").split(), fold(b.given).replace(".", " ").split()
    return all(x.startswith(y) or y.startswith(x) for x, y in zip(first, second, strict=False))


@lru_cache(maxsize=512)
def _citation_patterns(cited: Entry) -> tuple[re.Pattern[str] | None, re.Pattern[str] | None]:
    """What a plain citation of ``cited`` looks like in folded text, by its first author's name and by its title."""
    by_name = by_title = None
    year = cited.issued.year if cited.issued else None
    surname = fold(cited.authors[0].surname) if cited.authors else ""
    if surname and year:
        by_name = re.compile(
            rf"(?<![\w-])(?P<surname>{re.escape(surname)})(?![\w-])(?=(?P<to>[^;]{{0,{NEAR}}}?\b{year}[a-z]?\b))"
        )
    words = fold(cited.title).split()
    if len(words) > 3:
        by_title = re.compile(r"\s+".join(map(re.escape, words)))
    return by_name, by_title
