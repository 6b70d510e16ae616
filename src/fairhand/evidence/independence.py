"""Whether two sources that carry one point are independent of each other.

Two reports of one study are one witness. What can be seen from the records and the texts is that they share an
author, that they print one text, that one rests on the other, or that both report one study; whether they are
independent is the writer's judgement.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import combinations
from typing import Literal

from fairhand.evidence.mentioning import find_mentions
from fairhand.evidence.passage import Passage, cut_passage
from fairhand.evidence.reprinting import find_reprint
from fairhand.evidence.resting import find_what_rests
from fairhand.evidence.same_study import find_same_study
from fairhand.language.folding import fold
from fairhand.model.entry import Entry, Name
from fairhand.model.source import SourceText


@dataclass(frozen=True, slots=True)
class Dependence:
    """Two sources that may be one witness, and how that shows."""

    first: str
    """Id of the source that rests on the other, or of either where neither does."""
    second: str
    kind: Literal["shared-author", "reprint", "rests", "same-study", "cites", "writer"]
    """``cites``: the one merely cites the other, and they count as two."""
    why: str
    """The evidence: the name of the shared author or study, the words that cite, or the writer's own reason."""
    here: Passage | None = None
    """What shows it in the first."""
    there: Passage | None = None
    """What shows it in the second."""

    @property
    def pair(self) -> frozenset[str]:
        """The two of them, in no order."""
        return frozenset((self.first, self.second))

    @property
    def shown(self) -> tuple[tuple[str, Passage], ...]:
        """The passages that show it, each with the id of its source; the one that cites first."""
        cites = [(self.first, Passage(self.why))] if self.kind == "rests" and self.there else []
        ends = ((self.first, self.here), (self.second, self.there))
        return (*cites, *((source, passage) for source, passage in ends if passage))


def find_dependences(
    ids: Sequence[str], entries: Mapping[str, Entry], texts: Mapping[str, SourceText]
) -> tuple[Dependence, ...]:
    """Every pair among ``ids`` that may be one witness.

    Args:
        ids: The sources of one point; unknown ids are passed over.
        entries: Entries by id.
        texts: Source texts by id; of a source without text only its author can be seen.

    Returns:
        At most one dependence a pair: a shared author, else one text printed twice, else that one rests on the other,
        else one study.

    **Source**: common practice (two publications of one author, text or study count as one witness).
    """
    known = [entries[i] for i in dict.fromkeys(ids) if i in entries]
    shared = Counter(fold(entry.authors[0].surname) for entry in entries.values() if entry.authors)
    namesakes = frozenset(name for name, times in shared.items() if times > 1)
    found = (_tie(a, b, texts, namesakes) for a, b in combinations(known, 2))
    return tuple(tie for tie in found if tie is not None)


def find_citations(
    ids: Sequence[str], entries: Mapping[str, Entry], texts: Mapping[str, SourceText]
) -> tuple[Dependence, ...]:
    """Every pair among ``ids`` of which one cites the other, at its first place; that alone makes no one witness."""
    known = [entries[i] for i in dict.fromkeys(ids) if i in entries]
    found = (_cite(*pair, texts) for a, b in combinations(known, 2) for pair in ((a, b), (b, a)))
    return tuple(tie for tie in found if tie is not None)


def _cite(citing: Entry, cited: Entry, texts: Mapping[str, SourceText]) -> Dependence | None:
    text = texts.get(citing.id)
    place = next(find_mentions(text, cited), None) if text else None
    if text is None or place is None:
        return None
    here = cut_passage(text, *place)
    return Dependence(citing.id, cited.id, "cites", here.words, here)


def _tie(a: Entry, b: Entry, texts: Mapping[str, SourceText], namesakes: Collection[str]) -> Dependence | None:
    """How two sources may be one witness, or None."""
    author = _shared_author(a, b)
    if author is not None:
        return Dependence(a.id, b.id, "shared-author", author)
    one, other = texts.get(a.id), texts.get(b.id)
    if one is not None and other is not None and (printed := find_reprint(one, other)):
        return Dependence(a.id, b.id, "reprint", "", *printed)
    for citing, cited in ((a, b), (b, a)):
        text = texts.get(citing.id)
        rests = find_what_rests(text, cited, texts.get(cited.id), namesakes) if text else None
        if rests is not None:
            return Dependence(citing.id, cited.id, "rests", rests.cites.words, rests.here or rests.cites, rests.there)
    if one is not None and other is not None and (study := find_same_study(one, other)):
        return Dependence(a.id, b.id, "same-study", *study)
    return None


def count_independent(ids: Collection[str], dependences: Sequence[Dependence]) -> tuple[str, ...]:
    """The largest choice of sources no two of which depend on each other: a maximum independent set, exactly.

    >>> count_independent(["a", "b", "c"], [Dependence("a", "b", "cites", "")])
    ('a', 'c')
    """
    ties = {d.pair for d in dependences}
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
    """The name of an author of both, or None; of an unsigned work the body that issued it is the author."""
    for name in a.authors or _issuer(a):
        if any(_same_person(name, other) for other in b.authors or _issuer(b)) and (a.authors or b.authors):
            return f"{name.given} {name.surname}".strip()
    return None


def _issuer(entry: Entry) -> tuple[Name, ...]:
    """The body that issued an unsigned work, which may be another work's author."""
    return (Name(literal=entry.publisher),) if entry.publisher else ()


def _same_person(a: Name, b: Name) -> bool:
    """Whether two names may be one person's: surnames equal, and the given names equal or one the other's initials."""
    if fold(a.surname) != fold(b.surname) or not a.surname:
        return False
    first, second = fold(a.given).replace(".", " ").split(), fold(b.given).replace(".", " ").split()
    return all(x.startswith(y) or y.startswith(x) for x, y in zip(first, second, strict=False))
