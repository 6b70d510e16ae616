"""What the sources hold: the figures of each of their sentences, and where a fact of the draft stands in them."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from fairhand.language.content_words import list_stems
from fairhand.language.sentences import split_sentences
from fairhand.model.source import SourceText
from fairhand.reading.labels import labels_in
from fairhand.revision.figures import Figure, holds, list_figures, said_as

_ROUGHLY = re.compile(
    r"\b(?:about|around|some|nearly|almost|roughly|approximately|more than|over|under|fewer than|less than|close to"
    r"|at least|up to|just)\s*$",
    re.IGNORECASE,
)
FEWEST_SHARED_PLAIN = 4
"""The same, where the figure is one that many texts have."""
_NUMBER = re.compile(r"\d+")
FEWEST_SHARED = 2
"""Telling words, besides the figure, that a sentence of a source must share with the draft's (from trial)."""


@dataclass(frozen=True, slots=True)
class HeldSentence:
    """A sentence of a source that has a figure in it, with the words that stand around it."""

    source: str
    label: str | None
    """The page's label; None where the source has no pages."""
    figures: tuple[Figure, ...]
    stems: frozenset[str]
    """Of the sentence and the one before it, which often says what is counted."""


@dataclass(frozen=True, slots=True)
class Fact:
    """What a sentence of the draft states: its figures, and the words that say of what."""

    text: str
    figures: tuple[Figure, ...]

    @property
    def stems(self) -> frozenset[str]:
        """The words that say what it is about, without its numbers."""
        return _stems_of(self.text)

    def is_rough(self, figure: Figure) -> bool:
        """Whether the draft gives this figure as a rough one."""
        return _ROUGHLY.search(self.text[: figure.span.start]) is not None


@lru_cache(maxsize=16384)
def _stems_of(text: str) -> frozenset[str]:
    return frozenset(stem for stem in list_stems(text) if not _NUMBER.fullmatch(stem))


@lru_cache(maxsize=4096)
def _read_page(source: str, label: str | None, text: str) -> tuple[HeldSentence, ...]:
    held = []
    before: frozenset[str] = frozenset()
    plain = " ".join(text.split())
    for span in split_sentences(plain):
        sentence = span.of(plain)
        stems = frozenset(list_stems(sentence))
        figures = list_figures(sentence)
        if figures:
            held.append(HeldSentence(source, label, figures, stems | before))
        before = stems
    return tuple(held)


@dataclass(frozen=True, eq=False)
class _Held:
    """The sentences of one source that have figures; known by itself, so that what was looked for is remembered."""

    labels: tuple[str | None, ...]
    """Of its pages; none where it has no pages."""
    is_empty: bool

    all_: tuple[HeldSentence, ...]
    by_page: Mapping[str | None, Sequence[HeldSentence]]
    by_value: Mapping[float, Sequence[HeldSentence]]
    """By the values that a figure of theirs may be written as."""


@lru_cache(maxsize=512)
def _read_source(text: SourceText) -> _Held:
    """What a source holds; one whose text has not changed is not read again."""
    found: list[HeldSentence] = []
    by_page: dict[str | None, list[HeldSentence]] = {}
    by_value: dict[float, list[HeldSentence]] = {}
    for page in text.pages:
        for held in _read_page(text.id, page.label if text.paged else None, page.text):
            found.append(held)
            by_page.setdefault(held.label, []).append(held)
            for value in {round(value, 6) for figure in held.figures for value in said_as(figure)}:
                by_value.setdefault(value, []).append(held)
    labels = tuple(page.label for page in text.pages) if text.paged else ()
    return _Held(labels, not any(page.text for page in text.pages), tuple(found), by_page, by_value)


def _near(labels: Sequence[str | None], pages: str) -> frozenset[str | None] | None:
    """The labels of the pages cited and of those beside them; None where the citation tells no page of this text."""
    at = [labels.index(label) for label in labels_in(pages) if label in labels] if labels and pages else []
    return frozenset(label for place in at for label in labels[max(0, place - 1) : place + 2]) if at else None


@lru_cache(maxsize=32768)
def _is_held(held: _Held, fact: Fact, pages: str) -> bool:
    """Whether a source has one of the fact's figures, at these pages or beside them, with a word about it."""
    near, about = _near(held.labels, pages), fact.stems
    rough = [fact.is_rough(figure) for figure in fact.figures]
    sentences = held.all_ if near is None else [one for label in near for one in held.by_page.get(label, ())]
    return any(
        holds(one.figures, figure, roughly) and about & one.stems
        for one in sentences
        for figure, roughly in zip(fact.figures, rough, strict=True)
    )


@lru_cache(maxsize=32768)
def _find_in(held: _Held, fact: Fact) -> tuple[int, HeldSentence] | None:
    """The sentence of a source that states the fact, and how much speaks for it."""
    best: tuple[int, HeldSentence] | None = None
    about = fact.stems
    values = {round(value, 6) for figure in fact.figures for value in said_as(figure)}
    for one in (one for value in values for one in held.by_value.get(value, ())):
        same = [figure for figure in fact.figures if holds(one.figures, figure)]
        shared = len(about & one.stems)
        telling = any(figure.is_telling for figure in same)
        if not same or shared < (FEWEST_SHARED if telling else FEWEST_SHARED_PLAIN):
            continue
        if best is None or shared + 2 * len(same) > best[0]:
            best = shared + 2 * len(same), one
    return best


class Holdings:
    """The sources of a paper, ready to be asked whether they hold a fact."""

    def __init__(self, texts: Mapping[str, SourceText]) -> None:
        """The sources' texts by id; those of which no text is at hand are not in it."""
        self._texts = texts
        self._read: dict[str, _Held] = {}

    def _held(self, source: str) -> _Held:
        if source not in self._read:
            self._read[source] = _read_source(self._texts[source])
        return self._read[source]

    def holds(self, source: str | None, fact: Fact, pages: str = "") -> bool | None:
        """Whether a source has one of the fact's figures, in whatever words; None where its text is not at hand.

        Args:
            source: The source's id.
            fact: The fact.
            pages: The pages at which it is cited; those next to them are looked at too. All of it where there are none.

        >>> from fairhand.model.source import Page
        >>> text = SourceText("quay", (Page("7", "Of the men 640 were permanent."),), paged=True)
        >>> sentence = "Some 640 men held a badge."
        >>> Holdings({"quay": text}).holds("quay", Fact(sentence, list_figures(sentence)))
        True
        """
        if source is None or source not in self._texts:
            return None
        held = self._held(source)
        return None if held.is_empty else _is_held(held, fact, pages)

    def find(self, fact: Fact, besides: Collection[str] = ()) -> HeldSentence | None:
        """The sentence of a source that states the fact: one of its figures, exactly, and words about it.

        Args:
            fact: The fact.
            besides: Ids of sources that are not looked into.
        """
        found = [_find_in(self._held(source), fact) for source in self._texts if source not in besides]
        best = max((one for one in found if one is not None), key=lambda one: one[0], default=None)
        return best[1] if best else None
