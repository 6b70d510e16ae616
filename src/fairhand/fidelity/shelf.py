"""The sources of a paper, made ready to be asked which of their words in a row stand in a passage."""

from __future__ import annotations

from array import array
from bisect import bisect_right
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import chain

from fairhand.fidelity.prepared import PreparedSource
from fairhand.language.content_words import JOINING
from fairhand.language.stems import stem

COMMON = 64
"""A few words in a row that stand so often in the sources are a common phrase."""
REPEATED = 8
"""The same, for a passage that repeats itself."""
APART = 6
"""How many words may lie between two shared runs that belong together."""
DRIFT = 4
"""How many words more or fewer the source may have between them."""

BITS = 20
"""Of a word's number. Past a million words two shingles may be taken for one, until their words are compared."""

Hit = tuple[int, int]
"""The place of a shared shingle in the passage, and in the index."""


@dataclass(frozen=True, eq=False)
class ShingleIndex:
    """Where each shingle of some texts stands; places count through all of them."""

    size: int
    """Words in a shingle."""
    numbers: dict[str, int]
    """A number for each word."""
    first: dict[int, int]
    """Where each shingle stands last."""
    before: array[int]
    """For each place, the place before it of the same shingle, or -1."""
    starts: tuple[int, ...]
    """The place of the first word of each text."""

    def text_at(self, place: int) -> tuple[int, int]:
        """The number of the text at a place, and the place in it."""
        number = bisect_right(self.starts, place) - 1
        return number, place - self.starts[number]

    def hits(self, words: Sequence[str]) -> Iterator[Hit]:
        """Every shingle of ``words`` that stands in the texts, common ones left out."""
        keys = _keys([self.numbers.get(word, -1) for word in words], self.size)
        often = Counter(keys)
        for at, key in enumerate(keys):
            place = self.first.get(key, -1) if often[key] <= REPEATED else -1
            found: list[Hit] = []
            while place >= 0 and len(found) <= COMMON:
                found.append((at, place))
                place = self.before[place]
            if len(found) <= COMMON:
                yield from found

    def chains(self, words: Sequence[str]) -> list[list[Hit]]:
        """The hits that follow one another in both, in the order of the texts."""
        chains: list[list[Hit]] = []
        waiting: list[list[Hit]] = []
        reach = self.size + APART
        for at, place in sorted(self.hits(words), key=lambda hit: (hit[1], hit[0])):
            waiting = [one for one in waiting if place - one[-1][1] <= reach]
            fitting = [
                one
                for one in waiting
                if 0 < at - one[-1][0] <= reach
                and place > one[-1][1]
                and abs((place - one[-1][1]) - (at - one[-1][0])) <= DRIFT
            ]
            if fitting:
                min(fitting, key=lambda one: abs((place - one[-1][1]) - (at - one[-1][0]))).append((at, place))
            else:
                chains.append([(at, place)])
                waiting.append(chains[-1])
        return chains


def _keys(numbers: Sequence[int], size: int) -> list[int]:
    """One number for each shingle; a negative one where a word is not known."""
    keys = list(numbers)
    for further in range(1, size):
        keys = [key << BITS | number for key, number in zip(keys, numbers[further:], strict=False)]
    return keys


def index_texts(texts: Sequence[Sequence[str]], size: int) -> ShingleIndex:
    """The index of some texts, each given by its words."""
    numbers: dict[str, int] = {}
    for word in chain.from_iterable(texts):
        numbers.setdefault(word, len(numbers))
    first: dict[int, int] = {}
    before = array("i")
    starts = []
    for text in texts:
        place = len(before)
        starts.append(place)
        earlier = []
        for key in _keys([numbers[word] for word in text], size):
            earlier.append(first.get(key, -1))
            first[key] = place
            place += 1
        before.extend(earlier)
        before.extend([-1] * (size + APART + size))
    return ShingleIndex(size, numbers, first, before, tuple(starts))


@dataclass(frozen=True, eq=False)
class Shelf:
    """The sources together."""

    sources: tuple[PreparedSource, ...]

    @cached_property
    def words(self) -> ShingleIndex:
        """Three words in a row: with one word in four changed, some are left whole."""
        return index_texts([source.words for source in self.sources], 3)

    @cached_property
    def content(self) -> tuple[Content, ...]:
        """The content words of each source."""
        return tuple(content_of(source.words) for source in self.sources)

    @cached_property
    def word_stems(self) -> tuple[tuple[str, ...], ...]:
        """Every word of each source by its stem."""
        return tuple(tuple(map(stem, source.words)) for source in self.sources)

    @cached_property
    def stems(self) -> ShingleIndex:
        """Two content words in a row, by their stems: what is left of a sentence put in other words."""
        return index_texts([content.stems for content in self.content], 2)


@dataclass(frozen=True, slots=True)
class Content:
    """The words of a text that say what it is about."""

    stems: tuple[str, ...]
    places: tuple[int, ...]
    """Which words of the text they are."""


def content_of(words: Sequence[str]) -> Content:
    """The stems of the content words, and where they stand.

    >>> content_of("the moorings of the quay".split()).places
    (1, 4)
    """
    places = tuple(at for at, word in enumerate(words) if word not in JOINING)
    return Content(tuple(stem(words[at]) for at in places), places)


@lru_cache(maxsize=4)
def shelve(sources: tuple[PreparedSource, ...]) -> Shelf:
    """The sources together; the same are indexed once."""
    return Shelf(sources)
