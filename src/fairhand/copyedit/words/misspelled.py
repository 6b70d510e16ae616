"""Unknown words that are slips, told from words of the field, names and other languages."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.copyedit.words.spelling import Unknown, find_unknown, names_in
from fairhand.copyedit.words.suggestions import counterpart, suggest_words, weight_of
from fairhand.language.lexicon import Country
from fairhand.language.sounding import sound_of
from fairhand.language.words import words
from fairhand.model.span import Span

SLIGHT = 1.4
"""The heaviest slip that is taken for one, by ``suggestions``; a heavier one may be a word that no list has."""
SLIGHT_TO_THE_EAR = 1.9
"""The same where the two words sound alike."""
SLIGHTER, SLIGHTEST = 0.8, 0.5
"""The same for a word of five letters or one that stands twice, and for one of four letters or that stands often: it is
the field's own unless a slip makes it very easily."""
FREQUENT, VERY_FREQUENT = 55, 80
"""``Lexeme.weight`` from which on a word is likely to have been meant, and from which on it is for a short word, or for
one with a capital."""


@dataclass(frozen=True, slots=True)
class Misspelled:
    """One slip."""

    span: Span
    """Its place in the draft."""
    word: str
    instead: tuple[str, ...]
    """What was meant, the likeliest first."""


@dataclass(frozen=True, slots=True)
class Spelling:
    """What the words of a draft are held against."""

    country: Country
    keeps_to_one: bool = True
    """Whether words of the other country's spelling are told."""
    own: frozenset[str] = frozenset()
    """Words, in small letters, that the writer or the list of sources knows."""
    is_at_hand: Callable[[str], bool] = lambda _: False
    """Whether a word in small letters stands in a source."""


def find_misspelled(paragraphs: Sequence[OwnParagraph], against: Spelling) -> Iterator[Misspelled]:
    """The slips of spelling in the writer's own prose, in order.

    >>> own = [OwnParagraph("The comittee of aldermen met seperately.", 0, ())]
    >>> [(each.word, each.instead[0]) for each in find_misspelled(own, Spelling("US"))]
    [('comittee', 'committee'), ('seperately', 'separately')]
    """
    unknown = _not_own(paragraphs, against, other=False)
    often = Counter(_key(each) for _, each in unknown)
    names = frozenset().union(*(names_in(p.text) for p in paragraphs))
    for paragraph, each in unknown:
        if each.word.text in names or against.is_at_hand(_key(each)):
            continue
        meant = _meant(paragraph.text, each, against.country)
        if is_slight(each, meant, often[_key(each)]):
            yield Misspelled(each.word.span.shifted(paragraph.start), each.word.text, tuple(word for word, _ in meant))


def find_other_country(paragraphs: Sequence[OwnParagraph], against: Spelling) -> Iterator[Misspelled]:
    """The words, each once, that the other country spells so and this one otherwise.

    >>> own = [OwnParagraph("The colour of a tumour, its colour.", 0, ())]
    >>> [(each.word, each.instead[0]) for each in find_other_country(own, Spelling("US"))]
    [('colour', 'color'), ('tumour', 'tumor')]
    """
    told = set()
    for paragraph, each in _not_own(paragraphs, against, other=True):
        if _key(each) in told:
            continue
        told.add(_key(each))
        mine = counterpart(each.word.text, against.country)
        if mine:
            yield Misspelled(each.word.span.shifted(paragraph.start), each.word.text, (mine,))


def _not_own(
    paragraphs: Sequence[OwnParagraph], against: Spelling, *, other: bool
) -> list[tuple[OwnParagraph, Unknown]]:
    return [
        (paragraph, each)
        for paragraph in paragraphs
        for each in unknown_in(paragraph.text, against.country, paragraph.sentences)
        if each.other == other and _key(each) not in against.own
    ]


@lru_cache(maxsize=8192)
def unknown_in(text: str, country: Country, sentences: tuple[Span, ...] = ()) -> tuple[Unknown, ...]:
    """The unknown words of a paragraph; two beside each other are taken for another language, or a name, and let be."""
    found = tuple(find_unknown(text, country, sentences))
    spans = [each.word.span for each in found]
    beside = {index for index, (a, b) in enumerate(pairwise(spans)) if not text[a.end : b.start].strip(" -’'")}
    return tuple(each for index, each in enumerate(found) if each.other or not {index, index - 1} & beside)


def country_written(paragraphs: Sequence[OwnParagraph]) -> Country | None:
    """The country whose spelling the draft has more of; None where it has neither, or as much of both.

    >>> country_written([OwnParagraph("The colour of the harbour is a labor.", 0, ())])
    'GB'
    """
    american = sum(each.other for p in paragraphs for each in unknown_in(p.text, "GB"))
    british = sum(each.other for p in paragraphs for each in unknown_in(p.text, "US"))
    return None if american == british else "US" if american > british else "GB"


def is_slight(unknown: Unknown, meant: Sequence[tuple[str, float]], often: int) -> bool:
    """Whether the likeliest word is so near that the unknown one must be a slip."""
    if not meant:
        return False
    best, slip = meant[0]
    counted = max(map(weight_of, best.split()))
    long = len(unknown.word.text)
    if long < 4 or counted < (VERY_FREQUENT if unknown.opens or long == 4 else FREQUENT):
        return False
    most = SLIGHTEST if often > 2 else SLIGHTER if often == 2 or long <= 5 or unknown.opens else SLIGHT
    if most == SLIGHT and sound_of(unknown.word.text) == sound_of(best):
        most = SLIGHT_TO_THE_EAR
    return slip <= most


def _key(unknown: Unknown) -> str:
    return unknown.word.text.casefold().replace("’", "'")


def _meant(text: str, unknown: Unknown, country: Country) -> tuple[tuple[str, float], ...]:
    span = unknown.word.span
    before, after = words(text[max(0, span.start - 40) : span.start]), words(text[span.end : span.end + 40])
    return suggest_words(unknown.word.text, country, before[-1].key if before else "", after[0].key if after else "")
