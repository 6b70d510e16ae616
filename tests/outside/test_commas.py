"""Commas and fused sentences that learners wrote: whether annotators parted the words that are told.

Source: JFLEG (C. Napoles, K. Sakaguchi and J. Tetreault 2017, *JFLEG: A Fluency Corpus and Benchmark for Grammatical
Error Correction*, EACL): sentences of learners, each written anew by four annotators.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from pathlib import Path

from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

COMMAS = (
    *("comma-opening", "fused-sentence", "comma-unneeded", "comma-nonrestrictive"),
    *("semicolon", "comma-compound"),
)
CHECKED = [check for check in CHECKS if check.name in COMMAS]
AGREED = 0.85
"""The share of the alarms where two of four annotators parted the words at the mark, at least."""


def told(text: str) -> list[Finding]:
    """What these checks say of a text, as loud as they may be."""
    return list(run_checks(Analysis(Paper("p", text, ()), lambda _: None), CHECKED))


def is_parted(words: list[str], at: int, written: list[str]) -> bool:
    """Whether two of those who wrote a sentence anew did not leave two neighbouring words as they stood."""
    pair = " ".join(words[max(0, at - 1) : at + 1])
    return sum(f" {pair} " not in f" {' '.join(each.split())} " for each in written) > 1


def test_annotators_changed_the_places_that_are_told(outside_data: Callable[[str], Path]) -> None:
    """Alarms where two of four annotators parted the two words at the mark, beside what a blind alarm would score.

    Annotators leave true faults standing, above all commas, so that the figure is a lower bound. The sentences written
    anew are told of less.
    """
    folder = outside_data("data/learner-sentences") / "dev"
    source = (folder / "dev.src").read_text("utf-8").splitlines()
    four = [(folder / f"dev.ref{number}").read_text("utf-8").splitlines() for number in range(4)]
    alarms: Counter[str] = Counter()
    agreed: Counter[str] = Counter()
    blind = [0, 0]
    for sentence, *anew in zip(source, *four, strict=True):
        words = sentence.split()
        blind = [blind[0] + sum(is_parted(words, at, anew) for at in range(1, len(words))), blind[1] + len(words)]
        for found in told(sentence):
            at = len(sentence[: found.instead[0].span.start].split())
            alarms[found.check] += 1
            agreed[found.check] += is_parted(words, at, anew)
    after = sum(len(told(sentence)) for written in four for sentence in written) / 4
    print(f"\na blind alarm: {blind[0] / blind[1]:.2f} of the neighbouring words were parted by two of four")
    for check in COMMAS:
        print(f"{check}: {agreed[check]} of {alarms[check]} alarms where two of four parted the words")
    print(f"alarms on the source {alarms.total()}, on a sentence written anew {after:.1f} of {len(source)}")
    assert agreed.total() >= AGREED * alarms.total()
    assert after <= 0.5 * alarms.total()
