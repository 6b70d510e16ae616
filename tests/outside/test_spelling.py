"""What is offered for a misspelled word, beside what a spelling library offers for the same word in the same run.

Sources: the lists of misspellings collected by R. Mitton (Wikipedia's, Aspell's and the Birkbeck corpus, 1985-2010);
the library is Hunspell 1.7 by way of ``chunspell``, with the dictionary that our words are made from. A word counts
where Hunspell says that it is misspelled; right is any word that the list says was meant.
"""

from __future__ import annotations

import random
from collections.abc import Callable
from importlib.metadata import distribution
from pathlib import Path

import pytest

from fairhand.copyedit.words.suggestions import suggest_words
from fairhand.language.lexicon import spelled_words

SAMPLE = 200
"""Misspellings of each list; Hunspell takes a tenth of a second over each."""
NEAR_ALL = 0.01
"""Within five words both are right nearly always on Wikipedia's list: two words of a sample."""
FLOORS = {"wikipedia.dat": 0.05, "aspell.dat": 0.05, "missp.dat": 0.05}
"""By how much more often ours is right at the first word."""


def read_list(path: Path) -> dict[str, set[str]]:
    """What was meant by each misspelling."""
    meant: dict[str, set[str]] = {}
    right = ""
    for line in path.read_text("latin-1").splitlines():
        if line.startswith("$"):
            right = line[1:].replace("_", " ")
        elif line.strip():
            meant.setdefault(line.strip(), set()).add(right)
    return meant


@pytest.mark.parametrize("name", FLOORS)
def test_what_was_meant_is_offered_first(name: str, outside_data: Callable[[str], Path]) -> None:
    """More often at the first word, and within five, than the library alone."""
    hunspell = pytest.importorskip("hunspell", reason="no wheel of chunspell for this machine")
    meant = read_list(outside_data(f"data/misspellings/{name}"))
    folder = str(distribution("chunspell").locate_file("hunspell/dictionaries"))
    library = hunspell.Hunspell("en_US", hunspell_data_dir=folder)
    known = set(spelled_words())
    flagged = sorted(word for word in meant if "_" not in word and word not in known and not library.spell(word))
    sample = random.Random(80).sample(flagged, min(SAMPLE, len(flagged)))  # noqa: S311 - a sample
    rates = {}
    for said, suggest in (
        ("the library", lambda word: library.suggest(word)[:5]),
        ("ours", lambda word: [each for each, _ in suggest_words(word, "US")]),
    ):
        offered = {word: list(suggest(word)) for word in sample}
        first = sum(bool(meant[word] & set(offered[word][:1])) for word in sample) / len(sample)
        five = sum(bool(meant[word] & set(offered[word])) for word in sample) / len(sample)
        rates[said] = first, five
        print(f"\n{name}, {len(sample)} words, {said}: right at the first {first:.3f}, within five {five:.3f}")
    assert rates["ours"][0] >= rates["the library"][0] + FLOORS[name]
    assert rates["ours"][1] > rates["the library"][1] - NEAR_ALL
