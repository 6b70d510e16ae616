"""Words that are good words, but not here: one of a pair stands where only the other makes sense.

**Source**: the pairs are those that A. A. Lunsford and K. J. Lunsford 2008 (*"Mistakes are a fact of life"*, College
Composition and Communication 59(4)) and handbooks list; the neighbours, in ``confusions.txt``, are ours, each so narrow
that the word as written makes no sense there, or hardly any.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files

from fairhand.copyedit.around import Pattern, Token, read_pattern, read_tokens
from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.copyedit.words.confused_features import see
from fairhand.copyedit.words.confused_model import read_model
from fairhand.copyedit.words.confused_topics import topics
from fairhand.language.lexicon import Country
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


def find_confused(paragraphs: Sequence[OwnParagraph], country: Country | None = None) -> Iterator[Confused]:
    """The words of the writer's own prose that were taken for others, by what stands around them.

    Args:
        paragraphs: The prose.
        country: Whose spelling it keeps to; some words are told apart in one country alone.

    >>> own = [OwnParagraph("It's roots are old. Its clear.", 0, (Span(0, 19), Span(20, 30)))]
    >>> [(each.word, each.instead) for each in find_confused(own)]
    [("It's", 'Its')]
    """
    of_paper = _by_paper(paragraphs)
    for paragraph in paragraphs:
        for sentence in paragraph.sentences:
            text = sentence.of(paragraph.text)
            for each in sorted({*confused_in(text, country), *_told(text, of_paper)}, key=lambda found: found.span):
                yield Confused(each.span.shifted(paragraph.start + sentence.start), each.word, each.instead)


@lru_cache(maxsize=8192)
def confused_in(sentence: str, country: Country | None = None) -> tuple[Confused, ...]:
    """The same of one sentence by itself, each once, its place within it."""
    tokens = read_tokens(sentence)
    words = frozenset(token.text for token in tokens)
    model = read_model()
    seen = see(tokens, model.known)
    found = []
    for at, token in enumerate(tokens):
        instead = _by_neighbours(tokens, at, country) or _by_topic(token.text, words)
        if instead is None and not _is_name(token.span.of(sentence)):
            instead = model.meant_at(tokens, at, seen)
        if instead is not None and instead != token.text:
            word = token.span.of(sentence)
            found.append(Confused(token.span, word, _cased(instead, word)))
    return tuple(found)


def _is_name(word: str) -> bool:
    return len(word) > 1 and word.isupper()


def _by_neighbours(tokens: Sequence[Token], at: int, country: Country | None) -> str | None:
    for row in confusions().get(tokens[at].text, ()):
        if row.country in (None, country) and row.pattern.fits(tokens, at):
            return row.meant
    return None


def _by_topic(word: str, sentence: AbstractSet[str]) -> str | None:
    of_sentence = (topic for topic in topics().get(word, ()) if not topic.of_paper)
    return next((topic.meant for topic in of_sentence if topic.holds(sentence, frozenset())), None)


def _by_paper(paragraphs: Sequence[OwnParagraph]) -> Mapping[str, str]:
    """The words that the whole paper shows to be taken for others."""
    words = {token.text for paragraph in paragraphs for token in read_tokens(paragraph.text)}
    return {
        wrote: topic.meant
        for wrote, rows in topics().items()
        for topic in rows
        if topic.of_paper and wrote in words and topic.holds(frozenset(), words)
    }


def _told(sentence: str, of_paper: Mapping[str, str]) -> Iterator[Confused]:
    for token in read_tokens(sentence) if of_paper else ():
        if token.text in of_paper:
            word = token.span.of(sentence)
            yield Confused(token.span, word, _cased(of_paper[token.text], word))


@dataclass(frozen=True, slots=True)
class Row:
    """Neighbours that show what was meant."""

    meant: str
    pattern: Pattern
    country: Country | None = None
    """Where alone the words are told apart so."""


@lru_cache(maxsize=1)
def confusions() -> Mapping[str, tuple[Row, ...]]:
    """By the word as written: what was meant, and the neighbours that show it; first those that let it be.

    >>> "principal" in {row.meant for row in confusions()["principle"]}
    True
    """
    rows: dict[str, tuple[Row, ...]] = {}
    for line in (files("fairhand") / "copyedit" / "words" / "confusions.txt").read_text("utf-8").splitlines():
        words, _, pattern = line.partition(":")
        wrote, _, meant = words.removeprefix("GB ").partition(" > ")
        if meant and not line.startswith("#"):
            row = Row(meant, read_pattern(pattern), "GB" if line.startswith("GB ") else None)
            known = rows.get(wrote, ())
            rows[wrote] = (row, *known) if meant == wrote else (*known, row)
    return rows


def _cased(instead: str, word: str) -> str:
    if "’" in word:
        instead = instead.replace("'", "’")
    return instead[0].upper() + instead[1:] if word[0].isupper() else instead
