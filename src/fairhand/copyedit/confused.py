"""Words that are good words, but not here: one of a pair stands where only the other makes sense.

**Source**: the pairs are those that A. A. Lunsford and K. J. Lunsford 2008 (*"Mistakes are a fact of life"*, College
Composition and Communication 59(4)) and handbooks list; the neighbours, in ``confusions.txt``, are ours, each so narrow
that the word as written makes no sense there, or hardly any.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files

from fairhand.copyedit.around import Pattern, read_pattern, read_tokens
from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.model.span import Span


@dataclass(frozen=True, slots=True)
class Confused:
    """One word taken for another."""

    span: Span
    """Its place."""
    word: str
    """As it was written."""
    instead: str
    """The word that was meant, with a capital where the word has one."""


def find_confused(paragraphs: Sequence[OwnParagraph]) -> Iterator[Confused]:
    """The words of the writer's own prose that were taken for others, by their neighbours in the sentence.

    >>> own = [OwnParagraph("It's roots are old. Its clear.", 0, (Span(0, 19), Span(20, 30)))]
    >>> [(each.word, each.instead) for each in find_confused(own)]
    [("It's", 'Its')]
    """
    for paragraph in paragraphs:
        for sentence in paragraph.sentences:
            for each in confused_in(sentence.of(paragraph.text)):
                yield Confused(each.span.shifted(paragraph.start + sentence.start), each.word, each.instead)


@lru_cache(maxsize=8192)
def confused_in(sentence: str) -> tuple[Confused, ...]:
    """The same of one sentence, each once, its place within it."""
    tokens = read_tokens(sentence)
    found = []
    for at, token in enumerate(tokens):
        rows = confusions().get(token.text, ())
        instead = next((instead for instead, pattern in rows if pattern.fits(tokens, at)), None)
        if instead is not None:
            word = token.span.of(sentence)
            found.append(Confused(token.span, word, _cased(instead, word)))
    return tuple(found)


@lru_cache(maxsize=1)
def confusions() -> Mapping[str, tuple[tuple[str, Pattern], ...]]:
    """By the word as written: what was meant, and the neighbours that show it.

    >>> "principal" in {instead for instead, _ in confusions()["principle"]}
    True
    """
    rows: dict[str, tuple[tuple[str, Pattern], ...]] = {}
    for line in (files("fairhand") / "copyedit" / "confusions.txt").read_text("utf-8").splitlines():
        words, _, pattern = line.partition(":")
        wrote, _, meant = words.partition(" > ")
        if meant and not line.startswith("#"):
            rows[wrote] = (*rows.get(wrote, ()), (meant, read_pattern(pattern)))
    return rows


def _cased(instead: str, word: str) -> str:
    if "’" in word:
        instead = instead.replace("'", "’")
    return instead[0].upper() + instead[1:] if word[0].isupper() else instead
