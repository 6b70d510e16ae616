"""Rhythm: how long the sentences are, what follows itself, what weighs; asked, never told.

**Source**: common practice of editing: long sentences, nouns in a row, openings repeated, passives that hide who acts,
and *this* with no noun beside it are places to look at, no faults.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from fairhand.copyedit.around import KINDS, Token, read_tokens
from fairhand.copyedit.in_place import quote_span
from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.copyedit.pointing import find_pointing
from fairhand.copyedit.readability import count_syllables, flesch, flesch_kincaid, smog
from fairhand.language.words import words
from fairhand.model.span import Span

LONG = 40
"""Words of a sentence from which on it is worth reading aloud."""
CHAIN = 4
"""Nouns in a row, or held together by *of*, from which on they are told."""
OPENINGS = 3
"""Sentences running that open with the same word, from which on it is told."""
MOST = 80
"""Code points of a sentence that are shown, to know it by."""
FEWEST_SENTENCES = 30
"""Sentences from which on SMOG may be reckoned."""
_BE = frozenset("is are was were be been being".split())
_BETWEEN = frozenset("not never often also then always still soon already all both".split())
_GENERAL = frozenset("can could may might cannot".split())
_STATES = frozenset(
    """known born based located situated called named titled used supposed lost gone done found seen remembered
    interested concerned involved related connected limited composed married filled covered surrounded crowded tired
    worried pleased surprised satisfied convinced inclined accustomed needed required meant due bound left""".split()
)
"""Participles that tell a state, or of which it seldom matters who brought it about."""
KINDS_OF_LOOK = ("long sentence", "nouns in a row", "same opening", "passive", "this alone")
_ABSTRACT = re.compile(r"(?:tion|sion|ment|ness|ity|ance|ence|ism|ology)s?\Z")


@dataclass(frozen=True, slots=True)
class Look:
    """A place to look at."""

    kind: str
    """One of ``KINDS_OF_LOOK``."""
    span: Span
    """Its place in the draft."""
    asks: str


@dataclass(frozen=True, slots=True)
class Figure:
    """One readability figure."""

    name: str
    value: float
    formula: str
    tells: str
    """Its range, and what prose of this kind has."""


@dataclass(frozen=True, slots=True)
class Ease:
    """How a draft reads, as far as it can be counted."""

    paragraphs: tuple[tuple[int, tuple[int, ...]], ...]
    """Where each paragraph begins in the draft, and the words of each of its sentences, in order."""
    looks: tuple[Look, ...]
    figures: tuple[Figure, ...]

    @property
    def lengths(self) -> tuple[int, ...]:
        """Words of each sentence, in order."""
        return tuple(length for _, lengths in self.paragraphs for length in lengths)

    @property
    def by_kind(self) -> Mapping[str, tuple[Look, ...]]:
        """The places to look at by their kind, the kinds in the order of ``KINDS_OF_LOOK``."""
        found = {kind: tuple(look for look in self.looks if look.kind == kind) for kind in KINDS_OF_LOOK}
        return {kind: looks for kind, looks in found.items() if looks}


def measure_ease(paragraphs: Sequence[OwnParagraph]) -> Ease:
    """Sentence lengths, places to look at, and readability figures of the writer's own prose.

    >>> ease = measure_ease([OwnParagraph("It rained. The boats were sold.", 0, (Span(0, 10), Span(11, 31)))])
    >>> ease.lengths, [look.kind for look in ease.looks]
    ((2, 4), ['passive'])
    """
    lengths: list[tuple[int, tuple[int, ...]]] = []
    looks: list[Look] = []
    counted = [0, 0]
    for paragraph in paragraphs:
        sentences = [s for s in paragraph.sentences if any(w.text[0].isalpha() for w in words(s.of(paragraph.text)))]
        own = []
        for span in sentences:
            found = [word.text for word in words(span.of(paragraph.text)) if word.text[0].isalpha()]
            syllables = [count_syllables(word) for word in found]
            own.append(len(found))
            counted[0] += sum(syllables)
            counted[1] += sum(each > 2 for each in syllables)
            looks += [
                _moved(look, span.start + paragraph.start) for look in _look_at(span.of(paragraph.text), len(found))
            ]
        looks += [_moved(look, paragraph.start) for look in _same_openings(paragraph.text, sentences)]
        looks += [_moved(look, paragraph.start) for look in _this_alone(paragraph.text, sentences, own)]
        if own:
            lengths.append((paragraph.start, tuple(own)))
    looks.sort(key=lambda look: look.span)
    every = [length for _, own in lengths for length in own]
    return Ease(tuple(lengths), tuple(looks), _figures(sum(every), len(every), *counted))


def _figures(number: int, sentences: int, syllables: int, long_words: int) -> tuple[Figure, ...]:
    if not number:
        return ()
    figures = [
        Figure(
            "Flesch reading ease",
            flesch(number, sentences, syllables),
            "206.835 − 1.015 × words/sentences − 84.6 × syllables/words",
            "from 100, very easy, to 0; academic prose mostly 10 to 50",
        ),
        Figure(
            "Flesch–Kincaid grade",
            flesch_kincaid(number, sentences, syllables),
            "0.39 × words/sentences + 11.8 × syllables/words − 15.59",
            "years of American schooling; academic prose mostly 12 to 18",
        ),
    ]
    if sentences >= FEWEST_SENTENCES:
        figures.append(
            Figure(
                "SMOG grade",
                smog(long_words, sentences),
                "1.0430 × √(words of three syllables or more × 30/sentences) + 3.1291",
                "years of American schooling; academic prose mostly 12 to 18",
            )
        )
    return tuple(figures)


def _look_at(sentence: str, length: int) -> list[Look]:
    """What is to be asked of one sentence."""
    looks = []
    if length >= LONG:
        looks.append(Look("long sentence", Span(0, len(sentence)), f"{length} words: can it be read in one breath?"))
    tokens = read_tokens(sentence)
    looks += _chains(tokens)
    return looks + _passives(tokens)


def _passives(tokens: Sequence[Token]) -> list[Look]:
    """Passives that do not say who acts, where somebody did: no states, no general *can be seen*."""
    looks = []
    for n, one in enumerate(tokens[:-1]):
        if one.text not in _BE or (n and tokens[n - 1].text in _GENERAL):
            continue
        at = n + 1
        while at < len(tokens) - 1 and (tokens[at].text.endswith("ly") or tokens[at].text in _BETWEEN):
            at += 1
        past = tokens[at]
        if not KINDS["ED"](past.text) or past.text in _STATES:
            continue
        if not any(token.text == "by" for token in tokens[at + 1 :]):
            looks.append(Look("passive", Span(one.span.start, past.span.end), "does it matter who did it?"))
    return looks


def _chains(tokens: Sequence[Token]) -> list[Look]:
    """Runs of nouns, most of them abstract, beside each other or joined by *of*."""
    looks: list[Look] = []
    run: list[Token] = []
    for token in (*tokens, Token(".", Span(0, 0))):
        if _is_noun(token.text):
            run.append(token)
        elif token.text not in ("of", "the", "and") or not run:
            abstract = sum(_ABSTRACT.search(each.text) is not None for each in run)
            if len(run) >= CHAIN and abstract >= CHAIN - 1:
                asks = f"{len(run)} nouns held together: would a verb say it?"
                looks.append(Look("nouns in a row", Span(run[0].span.start, run[-1].span.end), asks))
            run = []
    return looks


def _is_noun(word: str) -> bool:
    return _ABSTRACT.search(word) is not None or KINDS["N1"](word) or KINDS["NS"](word)


def _same_openings(text: str, sentences: Sequence[Span]) -> list[Look]:
    """Sentences running that open with the same word."""
    looks = []
    opens = [next((word for word in words(span.of(text))), None) for span in sentences]
    run = 1
    for number, (one, other) in enumerate(pairwise([*opens, None]), 1):
        if one is not None and other is not None and one.key == other.key:
            run += 1
            continue
        if run >= OPENINGS and one is not None:
            first, last = sentences[number - run], sentences[number - 1]
            asks = f"{run} sentences running open with “{one.text}”: is that meant?"
            looks.append(Look("same opening", Span(first.start, last.start + one.span.end), asks))
        run = 1
    return looks


def _this_alone(text: str, sentences: Sequence[Span], lengths: Sequence[int]) -> list[Look]:
    """Sentences that open with *this* and a verb, after one in which several things are named."""
    asks = "“{}” what? Is it plain which thing of the sentence before is meant?"
    found = find_pointing(text, sentences, lengths)
    return [Look("this alone", one, asks.format(one.of(text).split()[0])) for one in found]


def quote_look(text: str, look: Look) -> str:
    """The words of a look in half brackets, within what stands around them; of a whole sentence, its beginning.

    >>> quote_look("Then they were taken down.", Look("passive", Span(10, 20), ""))
    'Then they ⸢were taken⸣ down.'
    """
    if look.kind in ("long sentence", "same opening"):
        words = " ".join(look.span.of(text).split())
        return f"“{words[:MOST].rpartition(' ')[0]} …”" if len(words) > MOST else f"“{words}”"
    return quote_span(text, look.span)


def _moved(look: Look, by: int) -> Look:
    return Look(look.kind, look.span.shifted(by), look.asks)
