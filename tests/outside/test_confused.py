"""Words taken for one another: those that found prose has, and those that are set into it.

Sources: real-word errors mined from the history of an encyclopedia, each with its sentence and the right word (T. Zesch
2012, *Measuring Contextual Fitness Using Error Contexts Extracted from the Wikipedia Revision History*, EACL); the
academic prose and textbooks of GUM (A. Zeldes and others), as published and with one word of a pair set for the other.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from fairhand.copyedit.around import read_tokens
from fairhand.copyedit.words.confused import confused_in, confusions
from fairhand.copyedit.words.confused_model import read_model
from fairhand.copyedit.words.confused_topics import topics

MOST_EACH = 20
"""Words of a pair that are set for each other, at most."""
FOUND, SET_IN = 0.4, 0.45
"""The share of the errors of our pairs that is told, at least: found ones, and such as were set in."""
OF_HANDBOOKS = 0.64
"""The same of the pairs that handbooks list."""
HANDBOOKS = frozenset(
    "accept except adverse averse advice advise affect effect affects effects allusion illusion beside besides capital"
    " capitol cite site sight complement compliment conscience conscious council counsel defiantly definitely desert"
    " dessert discreet discrete elicit illicit eminent imminent ensure insure farther further fewer less its it's lead"
    " led loose lose passed past precede proceed principal principle stationary stationery than then their there"
    " they're weather whether whose who's your you're to too were where of off".split()
)
"""Most of the pairs often confused, as usage handbooks have them."""
WORDS_TO_AN_ALARM = 10_000
"""Words of published prose in which one alarm at most is heard."""


@pytest.fixture(scope="module")
def sentences(outside_data: Callable[[str], Path]) -> list[str]:
    """The sentences of GUM as they read."""
    files = sorted(outside_data("data/sentences").glob("GUM_*.conllu"))
    lines = (line for file in files for line in file.read_text("utf-8").splitlines())
    return [line.removeprefix("# text = ") for line in lines if line.startswith("# text = ")]


def read_errors(path: Path) -> Iterator[tuple[str, str, str]]:
    """Each error of a list: the word as written, the right word, the sentence."""
    lines = path.read_text("utf-8").splitlines()
    for at in range(0, len(lines) - 5, 7):
        yield lines[at + 2], lines[at + 3], lines[at + 5]


def ours() -> set[tuple[str, str]]:
    """The words that are told for others, with what was meant, by whichever of the ways."""
    rows = {(wrote, row.meant) for wrote, of in confusions().items() for row in of if row.country is None}
    learnt = {(wrote, meant) for wrote, of in read_model().bars.items() for meant in of}
    told = rows | learnt | {(wrote, topic.meant) for wrote, of in topics().items() for topic in of}
    return {(wrote, meant) for wrote, meant in told if wrote != meant}  # not those that a row lets be


def test_found_errors_of_our_pairs_are_told(outside_data: Callable[[str], Path]) -> None:
    """By pair: how many were told, and no right sentence is taken for wrong."""
    told: Counter[str] = Counter()
    of: Counter[str] = Counter()
    wrong = 0
    asked = ours()
    for wrote, right, sentence in read_errors(outside_data("data/real-word-errors/en_natural_train.txt")):
        wrong += bool(confused_in(sentence.replace(wrote, right)))
        if (wrote.lower(), right.lower()) in asked:
            pair = f"{wrote.lower()} for {right.lower()}"
            of[pair] += 1
            told[pair] += any(each.word == wrote and each.instead == right for each in confused_in(sentence))
    for pair, number in sorted(of.items()):
        print(f"{pair}: {told[pair]} of {number}")
    print(f"all pairs of ours: {told.total()} of {of.total()}; right sentences with an alarm: {wrong} of 136")
    assert told.total() >= FOUND * of.total()
    assert wrong <= 1


def test_published_prose_is_let_be(sentences: list[str]) -> None:
    """An alarm in ten thousand words at most."""
    alarms = [(each.word, each.instead, sentence) for sentence in sentences for each in confused_in(sentence)]
    words = sum(len(sentence.split()) for sentence in sentences)
    print(f"\n{len(alarms)} alarms in {words:,} words", *alarms, sep="\n")
    assert len(alarms) <= words / WORDS_TO_AN_ALARM


def test_errors_set_into_published_prose(sentences: list[str]) -> None:
    """By pair: how many of the words that were set for the right ones are told, with the right ones."""
    taken = defaultdict(set)
    for wrote, meant in ours():
        taken[meant].add(wrote)
    told: Counter[str] = Counter()
    of: Counter[str] = Counter()
    for sentence in sentences:
        for token in read_tokens(sentence):
            for wrote in sorted(taken.get(token.text, ())):
                pair = f"{wrote} for {token.text}"
                if of[pair] < MOST_EACH:
                    of[pair] += 1
                    spoilt = sentence[: token.span.start] + wrote + sentence[token.span.end :]
                    found = confused_in(spoilt)
                    told[pair] += any(e.span.start == token.span.start and e.instead == token.text for e in found)
    for pair, number in sorted(of.items()):
        print(f"{pair}: {told[pair]} of {number}")
    print(f"all pairs: {told.total()} of {of.total()}, {told.total() / of.total():.3f}")
    of_handbooks = [pair for pair in of if pair.split(" for ")[0] in HANDBOOKS and pair.split(" for ")[1] in HANDBOOKS]
    seen, all_of = sum(told[pair] for pair in of_handbooks), sum(of[pair] for pair in of_handbooks)
    print(f"those that handbooks list: {seen} of {all_of}, {seen / all_of:.3f}")
    assert seen >= OF_HANDBOOKS * all_of
    assert told.total() >= SET_IN * of.total()
