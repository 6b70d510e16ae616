"""Readability formulas, against worked examples and a reference library.

Sources: check-values 6.10 (Flesch 1948, Kincaid and others 1975, McLaughlin 1969, Dale and Chall 1948, worked by hand);
``textstat`` 0.7.4, which rounds, on the prose of GUM.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from textstat import textstat

from fairhand.copyedit.readability import count_syllables, dale_chall, flesch, flesch_kincaid, smog
from fairhand.language.words import words

ROUNDING, ROUNDING_TENTH = 0.006, 0.06
SYLLABLES_OFF = 0.08
"""By how much of them our syllables may differ from the library's, which divides words where a line may end, so that
it counts too few."""


def test_the_worked_examples() -> None:
    """As reckoned by hand."""
    assert round(flesch(600, 30, 960), 1) == 51.2
    assert round(flesch_kincaid(600, 30, 960), 1) == 11.1
    assert round(smog(67, 30), 2) == 11.67
    assert round(dale_chall(12.5, 20), 2) == 6.60


def read_prose(outside_data: Callable[[str], Path]) -> list[str]:
    """The documents of GUM, each as one text."""
    texts = []
    for file in sorted(outside_data("data/sentences").glob("GUM_*.conllu")):
        lines = file.read_text("utf-8").splitlines()
        texts.append(" ".join(line.removeprefix("# text = ") for line in lines if line.startswith("# text = ")))
    return texts


def test_the_formulas_are_the_librarys(outside_data: Callable[[str], Path]) -> None:
    """On the library's own averages, which it rounds, each figure is the library's to a hundredth."""
    for text in read_prose(outside_data):
        long, heavy = textstat.avg_sentence_length(text), textstat.avg_syllables_per_word(text)
        assert abs(flesch(1, 1 / long, heavy) - textstat.flesch_reading_ease(text)) <= ROUNDING
        assert abs(flesch_kincaid(1, 1 / long, heavy) - textstat.flesch_kincaid_grade(text)) <= ROUNDING_TENTH
        number, sentences = textstat.polysyllabcount(text), textstat.sentence_count(text)
        assert abs(smog(number, sentences) - textstat.smog_index(text)) <= ROUNDING_TENTH


def test_syllables_are_nearly_the_librarys(outside_data: Callable[[str], Path]) -> None:
    """Over whole texts, by a few in a hundred."""
    ours = library = 0
    for text in read_prose(outside_data):
        found = [word.text for word in words(text) if word.text.isalpha()]
        ours += sum(map(count_syllables, found))
        library += sum(textstat.syllable_count(word) for word in found)
    print(f"\nsyllables: ours {ours}, the library's {library}, {ours / library - 1:+.3f}")
    assert abs(ours / library - 1) <= SYLLABLES_OFF
