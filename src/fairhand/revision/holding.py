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
from fairhand.revision.figures import Figure, holds, list_figures

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
        return frozenset(stem for stem in list_stems(self.text) if not _NUMBER.fullmatch(stem))

    def is_rough(self, figure: Figure) -> bool:
        """Whether the draft gives this figure as a rough one."""
        return _ROUGHLY.search(self.text[: figure.span.start]) is not None


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


def _near(text: SourceText, pages: str) -> frozenset[str | None] | None:
    """The labels of the pages cited and of those beside them; None where the citation tells no page of this text."""
    labels = [page.label for page in text.pages]
    at = [labels.index(label) for label in labels_in(pages) if label in labels] if text.paged and pages else []
    return frozenset(label for place in at for label in labels[max(0, place - 1) : place + 2]) if at else None


class Holdings:
    """The sources of a paper, ready to be asked whether they hold a fact."""

    def __init__(self, texts: Mapping[str, SourceText]) -> None:
        """The sources' texts by id; those of which no text is at hand are not in it."""
        self._texts = texts
        self._read: dict[str, Sequence[HeldSentence]] = {}

    def of(self, source: str) -> Sequence[HeldSentence]:
        """The sentences of a source that have figures."""
        if source not in self._read:
            text = self._texts.get(source)
            self._read[source] = [
                held
                for page in (text.pages if text else ())
                for held in _read_page(source, page.label if text and text.paged else None, page.text)
            ]
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
        text = self._texts.get(source) if source is not None else None
        if source is None or text is None or not any(page.text for page in text.pages):
            return None
        near = _near(text, pages)
        about = fact.stems
        return any(
            holds(held.figures, figure, fact.is_rough(figure)) and about & held.stems
            for held in self.of(source)
            if near is None or held.label in near
            for figure in fact.figures
        )

    def find(self, fact: Fact, besides: Collection[str] = ()) -> HeldSentence | None:
        """The sentence of a source that states the fact: one of its figures, exactly, and words about it.

        Args:
            fact: The fact.
            besides: Ids of sources that are not looked into.
        """
        best: tuple[int, HeldSentence] | None = None
        about = fact.stems
        for source in self._texts:
            for held in self.of(source) if source not in besides else ():
                same = [figure for figure in fact.figures if holds(held.figures, figure)]
                shared = len(about & held.stems)
                telling = any(figure.is_telling for figure in same)
                if not same or shared < (FEWEST_SHARED if telling else FEWEST_SHARED_PLAIN):
                    continue
                if best is None or shared + 2 * len(same) > best[0]:
                    best = shared + 2 * len(same), held
        return best[1] if best else None
